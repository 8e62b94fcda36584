import type { Point } from '../plane/point.ts';
import type { Edge } from './job.ts';

/** What must come out within limits, judged as in registration.md rule 10. Lengths mm. */
export type Need =
  | {
      readonly kind: 'concentric';
      readonly name: string;
      readonly features: readonly [string, string];
      readonly withinMm: number;
    }
  | {
      readonly kind: 'misalignment';
      readonly name: string;
      readonly at: Point<'blank'>;
      readonly withinMm: number;
    }
  /** From each point of the inner outline (the smaller, whichever is named first) to the nearest of the
   * outer one: smallest and largest. */
  | {
      readonly kind: 'lip';
      readonly name: string;
      readonly features: readonly [string, string];
      readonly limits: Limits;
    }
  /** Least thickness left between a front and a back feature (in either order), over their overlap in plan. */
  | {
      readonly kind: 'web';
      readonly name: string;
      readonly features: readonly [string, string];
      readonly limits: Limits;
    }
  /** Least distance from a feature's outline to an edge of the blank, or to any edge when none is named. */
  | {
      readonly kind: 'wall';
      readonly name: string;
      readonly feature: string;
      readonly to: Edge | null;
      readonly limits: Limits;
    }
  /** Depth below the real face, at the feature's own place. */
  | {
      readonly kind: 'depth';
      readonly name: string;
      readonly feature: string;
      readonly limits: Limits;
    }
  /** Largest step between a profile cut from the front and the one that meets it from the back. */
  | {
      readonly kind: 'meets';
      readonly name: string;
      readonly features: readonly [string, string];
      readonly withinMm: number;
    }
  /** Turn of the second feature against the first, as a tangent; `within` is written per 100 mm. */
  | {
      readonly kind: 'parallel';
      readonly name: string;
      readonly features: readonly [string, string];
      readonly withinTangent: number;
    }
  /** Size of a feature along X or Y of the blank (a circle: its diameter along that axis). */
  | {
      readonly kind: 'size';
      readonly name: string;
      readonly feature: string;
      readonly along: 'x' | 'y';
      readonly limits: Limits;
    }
  | GoesOn;

/** What comes of how the blank is located, without anybody asking: it must go on its dowels or into its nest. */
export interface GoesOn {
  readonly kind: 'goes-on';
  readonly name: string;
  /** Play on each side, mm: at least none. */
  readonly limits: { readonly lowMm: 0; readonly highMm: null };
}

/** At least one of the two is given, and low is below high. */
export interface Limits {
  readonly lowMm: number | null;
  readonly highMm: number | null;
}
