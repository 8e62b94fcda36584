import { invariant } from '../../../src/num/invariant.ts';
import type { Edge, Job } from '../../../src/job/job.ts';
import { cornerAt, frontUpCorner } from '../../../src/setup/place.ts';
import type { LyingEdge, Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank, type Lie } from '../second-model/lie.ts';
import { acrossOf, alongOf, type RealBlank } from '../second-model/real-blank.ts';
import { rootOf } from '../second-model/roots.ts';
import type { XY } from '../second-model/vectors.ts';
import { ownZero, type Zero } from './machine.ts';

type Axis = 'x' | 'y';
const PROBE_MM = 1e-3;
const OPPOSITE: Record<Edge, Edge> = {
  lower: 'upper',
  upper: 'lower',
  left: 'right',
  right: 'left',
};

export interface Laid {
  readonly job: Job;
  readonly off: Off;
  readonly placing: Placing;
  readonly blank: RealBlank;
  readonly lie: Lie;
}

/** The zero of one placing; `first` is the first placing's, for one that is kept. */
export function zeroOf(laid: Laid, first: Zero | null): Zero {
  const { job, off, placing } = laid;
  const { xy } = placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp;
  const touch = (axis: Axis, which: 1 | 2): number =>
    off[`zero-touch/${placing.faceUp}-up/${axis}/${which}`] ?? 0;
  const heightMm = job.blank.thickMm / 2;
  const nominal = placing.zero;
  switch (xy.kind) {
    case 'kept': {
      const more = (axis: Axis): number => off[`zero-return/${axis}`] ?? 0;
      return { ...first!, at: { x: first!.at.x + more('x'), y: first!.at.y + more('y') } };
    }
    case 'dowels':
      return ownZero(cornerAt(job, frontUpCorner(job)), 0);
    case 'nest':
      invariant(job.locating === 'nest', 'a zero of a nest');
      return ownZero(cornerAt(job, frontUpCorner(job)), job.nest.wallMm);
    case 'edges': {
      const met = xy.at === null ? cornerOf(laid) : metAt(laid, xy.at, (lying) => lying.edge);
      const out = (axis: Axis): number => outward(placing, axis) * touch(axis, 1);
      return {
        at: { x: met.x + out('x'), y: met.y + out('y') },
        nominal,
        yTouchedMm: (xy.at ?? nominal).y,
        heightMm,
      };
    }
    case 'middle': {
      const at = xy.at ?? nominal;
      const near = metAt(laid, at, (lying) => lying.edge);
      const far = metAt(laid, at, (lying) => OPPOSITE[lying.edge]);
      const mid = (axis: Axis): number =>
        (near[axis] + far[axis] + outward(placing, axis) * (touch(axis, 1) - touch(axis, 2))) / 2;
      return { at: { x: mid('x'), y: mid('y') }, nominal, yTouchedMm: at.y, heightMm };
    }
    case 'stops':
    case 'milled-stops':
    case 'hole':
      throw new Error(`this second model has no zero on ${xy.kind}`);
  }
}

/** The edge from which an axis is measured: of the base and the end, the one that stands across it. */
function across({ base, end }: Placing, axis: Axis): LyingEdge {
  const isX = base.side === 'left' || base.side === 'right';
  return (axis === 'x') === isX ? base : end;
}

const outward = (placing: Placing, axis: Axis): 1 | -1 => {
  const { side } = across(placing, axis);
  return side === 'left' || side === 'near' ? -1 : 1;
};

/** X where an edge is met along the machine's y = at.y, Y where another is along x = at.x. */
function metAt({ placing, blank, lie }: Laid, at: XY, edgeOf: (lying: LyingEdge) => Edge): XY {
  const nominal = inBlank({ ...lie, turnRad: 0, shift: { x: 0, y: 0 } }, at);
  const met = (axis: Axis): number => {
    const edge = edgeOf(across(placing, axis));
    const sag = blank.sagNowMm(edge, nominal[alongOf(edge)]);
    return rootOf(
      (value) => blank.beyond(edge, inBlank(lie, { ...at, [axis]: value }), sag),
      at[axis],
      PROBE_MM,
    );
  };
  return { x: met('x'), y: met('y') };
}

/** Where the lines of the two edges meet, by going to and fro between them. */
function cornerOf({ placing, blank, lie }: Laid): XY {
  let at: XY = placing.zero;
  for (let count = 0; count < 14; count++)
    for (const { edge } of [placing.base, placing.end]) {
      const axis = acrossOf(edge);
      const from = at;
      const value = rootOf(
        (mm) => blank.beyond(edge, inBlank(lie, { ...from, [axis]: mm }), 0),
        from[axis],
        PROBE_MM,
      );
      at = { ...at, [axis]: value };
    }
  return at;
}
