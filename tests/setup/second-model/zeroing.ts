import type { Edge, StopsJob } from '../../../src/job/job.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank, type Lie } from './lie.ts';
import { acrossOf, alongOf, type RealBlank } from './real-blank.ts';
import { intoBlank, type RealStops } from './real-stops.ts';
import { rootOf } from './roots.ts';
import { lineAt, meet, type XY } from './vectors.ts';

/** A work zero as found: where it truly is, and from where the machine's map acts. */
export interface Found {
  readonly at: XY;
  readonly nominal: XY;
  /** The machine's y at which X was touched, and the height above the bed. */
  readonly yTouchedMm: number;
  readonly heightMm: number;
}

export interface Laid {
  readonly job: StopsJob;
  readonly off: Off;
  readonly placing: Placing;
  readonly blank: RealBlank;
  readonly stops: RealStops;
  readonly lie: Lie;
}

type Axis = 'x' | 'y';
const PROBE_MM = 1e-3;
const OPPOSITE: Record<Edge, Edge> = {
  lower: 'upper',
  upper: 'lower',
  left: 'right',
  right: 'left',
};

/** The zero of one placing, in the machine; `first` is the first placing's, for one that is kept. */
export function foundZero(laid: Laid, first: Found | null): Found {
  const { job, off, placing } = laid;
  const zero = (placing.faceUp === 'front' ? job.zero.frontUp : job.zero.backUp).xy;
  const { band } = job.stops;
  const onStops = {
    nominal: placing.zero,
    yTouchedMm: placing.zero.y,
    heightMm: band.kind === 'plain' ? band.heightMm : band.touchHeightMm,
  };
  switch (zero.kind) {
    case 'kept':
      return { ...first!, at: moved(first!.at, (axis) => off[`zero-return/${axis}`] ?? 0) };
    case 'dowels':
    case 'nest':
    case 'hole':
      throw new Error(
        'this second model is of stops; the solid model has holes, loose-*.test.ts dowels and nests',
      );
    case 'milled-stops':
      return { ...onStops, at: laid.stops.corner };
    case 'stops':
      return {
        ...onStops,
        at: moved(onFaces(laid, zero.at), (axis) => -outward(laid, axis) * error(laid, axis, 1)),
        yTouchedMm: zero.at?.y ?? placing.zero.y,
      };
    case 'edges': {
      const out = (axis: Axis): number => outward(laid, axis) * error(laid, axis, 1);
      const at = zero.at === null ? edgeCorner(laid) : edgesAt(laid, zero.at, edgeFor);
      return {
        ...onStops,
        at: moved(at, out),
        yTouchedMm: zero.at?.y ?? placing.zero.y,
        heightMm: job.blank.thickMm / 2,
      };
    }
    case 'middle': {
      const at = zero.at ?? { x: job.blank.widthMm / 2, y: job.blank.heightMm / 2 };
      const out = (touch: 1 | 2) => (axis: Axis) =>
        (touch === 1 ? 1 : -1) * outward(laid, axis) * error(laid, axis, touch);
      const near = moved(edgesAt(laid, at, edgeFor), out(1));
      const far = moved(
        edgesAt(laid, at, (to, axis) => OPPOSITE[edgeFor(to, axis)]),
        out(2),
      );
      return {
        nominal: placing.zero,
        at: { x: (near.x + far.x) / 2, y: (near.y + far.y) / 2 },
        yTouchedMm: at.y,
        heightMm: job.blank.thickMm / 2,
      };
    }
  }
}

const moved = ({ x, y }: XY, by: (axis: Axis) => number): XY => ({
  x: x + by('x'),
  y: y + by('y'),
});

function error({ off, placing }: Laid, axis: Axis, touch: 1 | 2): number {
  return off[`zero-touch/${placing.faceUp}-up/${axis}/${touch}`] ?? 0;
}

/** Which face of the stop bounds an axis. */
const faceFor = ({ stops }: Laid, axis: Axis): 'fence' | 'side' =>
  stops.into[axis] === 0 ? 'side' : 'fence';

/** The blank's edge against that face. */
const edgeFor = (laid: Laid, axis: Axis): Edge =>
  faceFor(laid, axis) === 'fence' ? laid.placing.base.edge : laid.placing.end.edge;

/** Sign, in the machine, of the way from the blank out to the stop that bounds an axis. */
const outward = (laid: Laid, axis: Axis): number =>
  -intoBlank(laid.stops, laid.placing, faceFor(laid, axis))[axis];

function onFaces(laid: Laid, at: XY | null): XY {
  const { stops, placing } = laid;
  const side = stops.side[placing.sideStop!];
  if (at === null) return meet(stops.fence, side);
  const line = (axis: Axis) => (faceFor(laid, axis) === 'fence' ? stops.fence : side);
  return { x: lineAt(line('x'), 'y', at.y).x, y: lineAt(line('y'), 'x', at.x).y };
}

/** X where one edge is met along the machine's y = at.y, Y where another is along x = at.x. */
function edgesAt(laid: Laid, at: XY, edgeOf: (laid: Laid, axis: Axis) => Edge): XY {
  const { job, placing, blank, lie } = laid;
  const inPlan = {
    x: placing.mirror === 'x' ? job.blank.widthMm - at.x : at.x,
    y: placing.mirror === 'y' ? job.blank.heightMm - at.y : at.y,
  };
  const met = (axis: Axis): number => {
    const edge = edgeOf(laid, axis);
    const sag = blank.sagNowMm(edge, inPlan[alongOf(edge)]);
    return rootOf(
      (value) => blank.beyond(edge, inBlank(lie, { ...at, [axis]: value }), sag),
      at[axis],
      PROBE_MM,
    );
  };
  return { x: met('x'), y: met('y') };
}

/** Where the lines of the two edges against the stops meet, found by going to and fro between them. */
function edgeCorner(laid: Laid): XY {
  const { blank, lie, placing } = laid;
  const [a, b] = [placing.base.edge, placing.end.edge];
  let at: XY = placing.zero;
  for (let count = 0; count < 12; count++)
    for (const edge of [a, b]) {
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
