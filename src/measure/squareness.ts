import { unreachable } from '../num/invariant.ts';
import type { Estimate } from './estimate.ts';
import { combined, effectiveDof } from './estimate.ts';

/** A length or a dial's figure, mm, with its sd: what the gauge is good to, and how repeats scattered. */
export type Measured = Estimate;

/** One way of finding how square the axes are, or how long they measure. Commanded sizes are exact. */
export type SquareReading =
  /** Both diagonals of a commanded rectangle; `farRight` runs from its near-left corner. */
  | {
      readonly by: 'diagonals';
      readonly xMm: number;
      readonly yMm: number;
      readonly farRight: Measured;
      readonly farLeft: Measured;
    }
  /** Both diagonals and the left side, all measured. */
  | {
      readonly by: 'three-lengths';
      readonly farRight: Measured;
      readonly farLeft: Measured;
      readonly leftSide: Measured;
    }
  /**
   * A dial in the spindle run along the blade of a square that lies true to the X travel: by how much it
   * changed, near to far, positive as if the blade leaned left; and with the square turned over.
   */
  | {
      readonly by: 'square-and-dial';
      readonly alongMm: number;
      readonly change: Measured;
      readonly turned: Measured | null;
      /** Limit of the blade's own lean over that length, as an sd. */
      readonly squareSdMm: number;
    }
  /** A line cut along Y, the piece turned over on its fence, and cut again: the second line right of the first at the far end. */
  | { readonly by: 'turned-over'; readonly alongMm: number; readonly gap: Measured }
  /** Diameters of a circle that the machine cut: towards far-right (45), far-left (135), along X and along Y. */
  | {
      readonly by: 'circle';
      readonly diameterMm: number;
      readonly at45: Measured;
      readonly at135: Measured;
      readonly x: Measured | null;
      readonly y: Measured | null;
    }
  /** Between two like edges, or two centres, so that the cutter's size drops out. */
  | {
      readonly by: 'length';
      readonly along: 'x' | 'y';
      readonly commandedMm: number;
      readonly measured: Measured;
    };

/** What one reading tells, and what is mixed up in it. */
export interface Told {
  readonly what: 'lean' | 'scale-x' | 'scale-y' | 'scale-difference';
  /** A tangent or a pure number. The lean is positive when the Y axis leans right going away. */
  readonly estimate: Estimate;
  readonly mixedWith: 'the angle of the fence' | null;
}

/** Everything that a reading tells of the machine. */
export function toldBy(reading: SquareReading): readonly Told[] {
  switch (reading.by) {
    case 'diagonals':
      return [lean(byDiagonals(reading))];
    case 'three-lengths':
      return [lean(byThreeLengths(reading))];
    case 'square-and-dial':
      return [lean(bySquare(reading))];
    case 'turned-over':
      // Source: turning doubles the error (geometry.md section 5, flip test).
      return [
        {
          ...lean(combined([{ of: reading.gap, times: 1 / (2 * reading.alongMm) }])),
          mixedWith: 'the angle of the fence',
        },
      ];
    case 'circle':
      return byCircle(reading);
    case 'length': {
      const { along, commandedMm, measured } = reading;
      const times = 1 / commandedMm;
      const scale = { ...combined([{ of: measured, times }]), value: measured.value * times - 1 };
      return [{ what: along === 'x' ? 'scale-x' : 'scale-y', estimate: scale, mixedWith: null }];
    }
    default:
      return unreachable(reading);
  }
}

const lean = (estimate: Estimate): Told => ({ what: 'lean', estimate, mixedWith: null });

type By<K extends SquareReading['by']> = Extract<SquareReading, { readonly by: K }>;

/** p^2 - q^2 = 4 a b sin(skew) of a parallelogram with sides a and b. Source: geometry.md section 5. */
function byDiagonals({ xMm, yMm, farRight, farLeft }: By<'diagonals'>): Estimate {
  const [p, q] = [farRight.value, farLeft.value];
  const area = 4 * xMm * yMm;
  const sine = (p * p - q * q) / area;
  const parts = [
    { of: farRight, times: (2 * p) / area },
    { of: farLeft, times: (-2 * q) / area },
  ];
  return { ...combined(parts), value: Math.tan(Math.asin(sine)) };
}

/** By the law of cosines; the near side follows from the other three. Source: geometry.md section 5. */
function byThreeLengths({ farRight, farLeft, leftSide }: By<'three-lengths'>): Estimate {
  const parts = [farRight, farLeft, leftSide];
  const at = (values: readonly number[]): number => {
    const [ac, bd, ad] = values as [number, number, number];
    const ab = Math.sqrt(2 * ac * ac + 2 * bd * bd - 4 * ad * ad) / 2;
    return Math.tan(Math.PI / 2 - Math.acos((ac * ac - ab * ab - ad * ad) / (2 * ab * ad)));
  };
  const values = parts.map(({ value }) => value);
  const sds = parts.map(({ value, sd, dof }, k) => {
    // Central difference over a step that keeps half the digits.
    const step = value * 1e-5;
    const [up, down] = [1, -1].map((sign) =>
      at(values.map((one, j) => (j === k ? one + sign * step : one))),
    );
    return { sd: (Math.abs(up! - down!) / (2 * step)) * sd, dof };
  });
  return { value: at(values), sd: Math.hypot(...sds.map(({ sd }) => sd)), dof: effectiveDof(sds) };
}

/** Turned over, the square's own error changes sign and drops out. Source: geometry.md section 5, reversal. */
function bySquare({ alongMm, change, turned, squareSdMm }: By<'square-and-dial'>): Estimate {
  if (turned === null) {
    const square: Estimate = { value: 0, sd: squareSdMm, dof: Infinity };
    return combined([
      { of: change, times: 1 / alongMm },
      { of: square, times: 1 / alongMm },
    ]);
  }
  return combined([
    { of: change, times: 1 / (2 * alongMm) },
    { of: turned, times: 1 / (2 * alongMm) },
  ]);
}

/** D(45) - D(135) = D x lean, and D(x) - D(y) = D x the difference of the scales, to first order (ISO 230-4). */
function byCircle({ diameterMm, at45, at135, x, y }: By<'circle'>): readonly Told[] {
  const difference = (one: Measured, other: Measured): Estimate =>
    combined([
      { of: one, times: 1 / diameterMm },
      { of: other, times: -1 / diameterMm },
    ]);
  const skew = lean(difference(at45, at135));
  if (x === null || y === null) return [skew];
  return [skew, { what: 'scale-difference', estimate: difference(x, y), mixedWith: null }];
}
