/**
 * A part as it is drawn for a machine that cuts sheet, with true circles and arcs: mm, x right, y up,
 * in the part's own frame.
 */
export interface Drawing {
  readonly name: string;
  readonly figures: readonly Figure[];
}

/** What is done along a line; each its own layer of a drawing. */
export type Layer = 'through' | 'pocket' | 'drill' | 'engrave' | 'mark';

export interface Xy {
  readonly x: number;
  readonly y: number;
}

export type Figure =
  | {
      readonly kind: 'circle';
      readonly layer: Layer;
      readonly at: Xy;
      readonly radiusMm: number;
      /** Below the part's top; null: all the way through, or nothing is cut. */
      readonly depthMm: number | null;
    }
  | {
      readonly kind: 'curve';
      readonly layer: Layer;
      readonly curve: Curve;
      readonly ends: 'closed' | 'open';
      readonly depthMm: number | null;
    }
  | {
      readonly kind: 'text';
      readonly layer: Layer;
      /** Where its baseline begins. */
      readonly at: Xy;
      readonly heightMm: number;
      readonly words: string;
    };

/**
 * From each vertex to the next a straight line, or an arc whose `bulge` is the tangent of a quarter of
 * its angle, positive counter-clockwise (the convention of DXF group 42). Closed ones run
 * counter-clockwise.
 */
export type Curve = readonly CurveVertex[];

export interface CurveVertex extends Xy {
  readonly bulge: number;
}
