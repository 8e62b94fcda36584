import type { Corner, Edge, Feature, StopsJob, Need, Zero } from '../../src/job/job.ts';
import type { Off } from './misalign.ts';

type Axis = 'x' | 'y';
interface At {
  readonly x: number;
  readonly y: number;
}

const SWAPS: Readonly<Record<Axis, Readonly<Record<string, string>>>> = {
  x: { left: 'right', right: 'left' },
  y: { lower: 'upper', upper: 'lower', near: 'far', far: 'near' },
};

const swapped =
  (axis: Axis) =>
  <T extends string>(words: T): T =>
    words.replace(/lower|upper|left|right|near|far/g, (word) => SWAPS[axis][word] ?? word) as T;

const sizeOf = ({ blank }: StopsJob, axis: Axis): number =>
  axis === 'x' ? blank.widthMm : blank.heightMm;

/** A place, on the bed or the blank, after left and right (`x`) or near and far (`y`) have changed places. */
const placeIn =
  (job: StopsJob, axis: Axis) =>
  <T extends At>(at: T): T => ({ ...at, [axis]: sizeOf(job, axis) - at[axis] });

/** The whole job as it looks in a mirror; feature names must not hold words of direction. */
export function mirroredJob(job: StopsJob, axis: Axis): StopsJob {
  const word = swapped(axis);
  const place = placeIn(job, axis);
  const zero = (one: Zero): Zero => {
    const { xy, z } = one;
    return {
      xy: 'at' in xy && xy.at !== null ? { ...xy, at: place(xy.at) } : xy,
      z: { ...z, at: z.at === null ? null : place(z.at) },
    };
  };
  const { blank, stops } = job;
  return {
    ...job,
    blank: {
      ...blank,
      widthAtYMm: axis === 'y' ? blank.heightMm - blank.widthAtYMm : blank.widthAtYMm,
      heightAtXMm: axis === 'x' ? blank.widthMm - blank.heightAtXMm : blank.heightAtXMm,
    },
    features: job.features.map((feature) => ({
      ...mirroredShape(feature, axis),
      at: place(feature.at),
      turnedRad: -feature.turnedRad,
    })),
    stops: {
      ...stops,
      corner: {
        frontUp: word<Corner>(stops.corner.frontUp),
        backUp: word<Corner>(stops.corner.backUp),
      },
      fence: word<Edge>(stops.fence),
    },
    zero: { frontUp: zero(job.zero.frontUp), backUp: zero(job.zero.backUp) },
    needs: job.needs.map((need): Need => {
      if (need.kind === 'wall' && need.to !== null) return { ...need, to: word<Edge>(need.to) };
      return need.kind === 'misalignment' ? { ...need, at: place(need.at) } : need;
    }),
  };
}

/** Of polygons the vertices; circles, rectangles and slots are their own mirror images. */
function mirroredShape(feature: Feature, axis: Axis): Feature {
  const { shape } = feature;
  if (shape.kind === 'outline') throw new Error('outlines are not mirrored here');
  if (shape.kind !== 'polygon') return feature;
  const vertices = shape.vertices.map((at) => ({ ...at, [axis]: -at[axis] })).toReversed();
  return { ...feature, shape: { kind: 'polygon', vertices } };
}

/**
 * The same blank and bench off by the same, told of the mirrored job. The blank's own frame hangs on its
 * lower edge and lower-left corner, so a mirrored blank is told from another edge or corner: the two
 * descriptions differ by the square of what is off.
 */
export function mirroredOff(job: StopsJob, off: Off, axis: Axis): Off {
  const word = swapped(axis);
  const across = axis === 'x' ? 'y' : 'x';
  const mirrored: Record<string, number> = {};
  for (const [key, value] of Object.entries(off)) {
    const [kind = '', ...rest] = key.split('/');
    const to = [kind, ...rest.map((one) => word(one))];
    if (kind === 'bump') {
      const isAlong = (rest[0] === 'lower' || rest[0] === 'upper') === (axis === 'x');
      if (isAlong) to[2] = String(sizeOf(job, axis) - Number(rest[1]));
    }
    if (kind === 'bed-height') {
      const at = placeIn(job, axis)({ x: Number(rest[0]), y: Number(rest[1]) });
      to.splice(1, 2, String(at.x), String(at.y));
    }
    mirrored[to.join('/')] = isReversed(kind, rest, axis) ? -value : value;
  }
  // The edge that the others are told from is now another, which leans by the taper.
  const { square, [`taper/${across}`]: taper } = off;
  if (square !== undefined) mirrored['square'] = -(square + (off[`taper/${axis}`] ?? 0));
  if (taper !== undefined) mirrored[`taper/${across}`] = -taper;
  return mirrored;
}

/** Turns and leans in the plane change their sense; so does what lies along the axis, unless it is told from a stop. */
function isReversed(kind: string, rest: readonly string[], axis: Axis): boolean {
  if (kind === 'machine-lean' || kind === 'fence-angle') return true;
  const along = rest.at(-1) === axis;
  return (
    along &&
    /^(cutter-lean|repeatability|lost-motion|zero-return|bed-lean|thickness-taper)$/.test(kind)
  );
}
