import { featurePath } from '../../../src/job/feature-path.ts';
import type { Edge, Job, Nest } from '../../../src/job/job.ts';
import { blankInLayout, cornerAt, frontUpCorner } from '../../../src/setup/place.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import { inBlank, onMachine, type Lie } from '../second-model/lie.ts';
import { acrossOf, alongOf, outOf, type RealBlank } from '../second-model/real-blank.ts';
import { dot, plus, unit, type XY } from '../second-model/vectors.ts';
import { ownZero, struck, type Zero } from './machine.ts';
import type { WallFelt } from './walls.ts';

const EDGES: readonly Edge[] = ['lower', 'upper', 'left', 'right'];

export const nestZero = (job: Job, nest: Nest): Zero =>
  ownZero(cornerAt(job, frontUpCorner(job)), nest.wallMm);

/** The wall along the line through two struck places, cut further out of the nest's middle by so much. */
function wallThrough(
  one: XY,
  other: XY,
  inside: XY,
  outMm: number,
): Pick<WallFelt, 'normal' | 'limitMm'> {
  const along = unit(plus(other, one, -1));
  const side = { x: along.y, y: -along.x };
  const normal = dot(side, plus(inside, one, -1)) > 0 ? { x: -side.x, y: -side.y } : side;
  return { normal, limitMm: dot(normal, one) + outMm };
}

/** The nest round the whole blank: four walls, each felt by the edge that lies at it. */
export function blankWalls(
  job: Job,
  nest: Nest,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  unmoved: Lie,
): readonly WallFelt[] {
  const { widthMm: w, heightMm: h } = job.blank;
  const zero = nestZero(job, nest);
  const strike = (x: number, y: number): XY => struck(off, zero, 'nest', { x, y }, nest.wallMm);
  const outMm = (off['nest-clearance'] ?? 0) + (off[`cutter-radius/${nest.cutter.name}`] ?? 0);
  const middle = { x: w / 2, y: h / 2 };
  return EDGES.map((edge) => {
    // The wall at which this edge lies, by where its middle nominally is.
    const mid = onMachine(unmoved, {
      x: edge === 'left' ? 0 : edge === 'right' ? w : w / 2,
      y: edge === 'lower' ? 0 : edge === 'upper' ? h : h / 2,
    });
    const [one, other] =
      acrossOf(edge) === 'y'
        ? [strike(0, mid.y), strike(w, mid.y)]
        : [strike(mid.x, 0), strike(mid.x, h)];
    return {
      ...wallThrough(one, other, middle, outMm),
      touching: edgeFelt(job, off, placing, blank, unmoved, edge),
    };
  });
}

/** The place of an edge that is first along a direction: either end, raised by bump and gap, or the top of its bulge. */
function edgeFelt(
  job: Job,
  off: Off,
  placing: Placing,
  blank: RealBlank,
  unmoved: Lie,
  edge: Edge,
): WallFelt['touching'] {
  const [along, across] = [alongOf(edge), acrossOf(edge)];
  const lengthMm = along === 'x' ? job.blank.widthMm : job.blank.heightMm;
  const bevel = blank.bevelMm(edge);
  const placeAt = (share: number, raised: number, sag: number): XY => {
    const at = share * lengthMm * blank.stretch[along];
    const nominal = { x: 0, y: 0, [along]: at };
    const less = blank.beyond(edge, nominal, sag);
    const place = { ...nominal, [across]: outOf(edge) * (raised + bevel - less) };
    return onMachine(unmoved, place);
  };
  const ends = [1, 2].map((end) => {
    const spot = end === 1 ? 0 : lengthMm;
    const raised =
      (off[`bump/${edge}/${spot}`] ?? 0) +
      (off[`seat-gap/${placing.faceUp}-up/${edge}-${end}`] ?? 0);
    return placeAt(end - 1, Math.max(0, raised), 0);
  });
  const bulges = (off[`crook/${edge}`] ?? 0) > 0;
  return (normal) => {
    const bulge = (share: number): XY =>
      placeAt(share, 0, blank.sagNowMm(edge, share * lengthMm * blank.stretch[along]));
    const tops = bulges ? [bulge(topOf((share) => dot(normal, bulge(share))))] : [];
    return [...ends, ...tops].reduce((best, at) =>
      dot(normal, at) > dot(normal, best) ? at : best,
    );
  };
}

/** Share from 0 to 1 at which a parabola is highest: its three places tell it. */
function topOf(f: (share: number) => number): number {
  const [start, middle, end] = [f(0), f(0.5), f(1)];
  const share = 0.5 + (end - start) / (4 * (2 * middle - start - end));
  return Math.min(1, Math.max(0, share));
}

/** The nest round a part of straight sides, and the part as the first placing cut it. */
export function partWalls(
  job: Job,
  nest: Nest,
  off: Off,
  first: { readonly lie: Lie; readonly zero: Zero; readonly thickMm: number },
  second: { readonly placing: Placing; readonly blank: RealBlank; readonly unmoved: Lie },
  cutFrom: Zero,
): readonly WallFelt[] {
  const feature = job.features.find(({ name }) => name === nest.around)!;
  const cut = `feature ${feature.name}`;
  const { mirror } = second.placing;
  const drawn = featurePath(feature).map(({ at }) => at);
  const corners = drawn.map((at) => {
    const told = blankInLayout(job, first.lie.mirror, at);
    const here = inBlank(first.lie, struck(off, first.zero, cut, told, first.thickMm));
    const now = { x: here.x * second.blank.stretch.x, y: here.y * second.blank.stretch.y };
    return onMachine(second.unmoved, now);
  });
  const radius = (cutter: string): number => off[`cutter-radius/${cutter}`] ?? 0;
  const smaller = radius(feature.cutter.name) - (off[`push-off/${cut}`] ?? 0);
  const outMm = (off['nest-clearance'] ?? 0) + radius(nest.cutter.name) + smaller;
  const touching = (normal: XY): XY =>
    corners.reduce((best, at) => (dot(normal, at) > dot(normal, best) ? at : best));
  const nestCorners = drawn.map((at) =>
    struck(off, cutFrom, 'nest', blankInLayout(job, mirror, at), nest.wallMm),
  );
  const inside = blankInLayout(job, mirror, feature.at);
  return nestCorners.map((one, k) => ({
    ...wallThrough(one, nestCorners[(k + 1) % nestCorners.length]!, inside, outMm),
    touching,
  }));
}
