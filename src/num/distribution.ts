/**
 * How a deviation is spread, in the unit of whatever it belongs to (mm, a tangent, radians).
 * Source: JCGM 101:2008 table 1 and clause 6.4; GUM 4.3.
 */
export type Distribution =
  | { readonly kind: 'exactly'; readonly value: number }
  | { readonly kind: 'rectangular'; readonly low: number; readonly high: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly high: number }
  | { readonly kind: 'arcsine'; readonly low: number; readonly high: number }
  | { readonly kind: 'normal'; readonly mean: number; readonly sd: number }
  | { readonly kind: 'half-normal'; readonly sigma: number }
  | { readonly kind: 'either'; readonly low: number; readonly high: number }
  | {
      readonly kind: 'scaled-t';
      readonly mean: number;
      readonly scale: number;
      readonly dof: number;
    };
