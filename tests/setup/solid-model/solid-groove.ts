import type { Feature, StopsJob } from '../../../src/job/job.ts';
import type { Off } from '../misalign.ts';
import type { XY } from '../second-model/vectors.ts';
import { solidDepth } from './solid-depth.ts';

/** Parts of a full turn at which the cutter is looked at first. */
const LOOKS = 64;
/** Golden section narrows a part of a turn to less than what rounding leaves to see. */
const NARROWINGS = 40;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Size of a round or rectangular V groove at the face, mm, along `x` or `y`, as the trace of a cone: at each place
 * of its way the cutter opens a circle as wide as it is deep there. The machine is otherwise true.
 */
export function grooveSize(job: StopsJob, off: Off, feature: Feature, along: 'x' | 'y'): number {
  const { cutter, depthMm, at } = feature;
  const get = (key: string): number => off[key] ?? 0;
  const tangent = Math.tan(cutter.vee!.includedRad / 2);
  const wider =
    get(`cutter-radius/${cutter.name}`) -
    get(`push-off/feature ${feature.name}`) +
    get(`tip-flat/${cutter.name}`) / 2;
  const deep = solidDepth(job, off, feature);
  const reach = (turn: number, sign: 1 | -1): number => {
    const { x, y } = wayOf(feature, depthMm * tangent, turn);
    const place = { x: at.x + x, y: at.y + y };
    const opens = deep(place) * tangent + wider;
    return sign * (along === 'x' ? x : y) + opens;
  };
  return mostOf((turn) => reach(turn, 1)) + mostOf((turn) => reach(turn, -1));
}

/** Where the cutter's axis is, from the feature's place; a share of the way round from 0 to 1. */
function wayOf({ shape }: Feature, insetMm: number, share: number): XY {
  if (shape.kind === 'circle') {
    const radius = shape.diameterMm / 2 - insetMm;
    return {
      x: radius * Math.cos(2 * Math.PI * share),
      y: radius * Math.sin(2 * Math.PI * share),
    };
  }
  if (shape.kind !== 'rectangle') throw new Error('circles and rectangles only');
  const [w, h] = [shape.widthMm / 2 - insetMm, shape.heightMm / 2 - insetMm];
  const corners = [
    { x: w, y: h },
    { x: -w, y: h },
    { x: -w, y: -h },
    { x: w, y: -h },
  ];
  const side = Math.floor(4 * share) % 4;
  const [from, to] = [corners[side]!, corners[(side + 1) % 4]!];
  const part = 4 * share - Math.floor(4 * share);
  return { x: from.x + part * (to.x - from.x), y: from.y + part * (to.y - from.y) };
}

/** The most that `f` comes to over one turn. */
function mostOf(f: (share: number) => number): number {
  const looks = Array.from({ length: LOOKS }, (_, k) => f(k / LOOKS));
  const best = looks.indexOf(Math.max(...looks));
  let [from, to] = [(best - 1 + LOOKS) / LOOKS, (best + 1 + LOOKS) / LOOKS];
  for (let count = 0; count < NARROWINGS; count++) {
    const [a, b] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
    if (f(a % 1) < f(b % 1)) from = a;
    else to = b;
  }
  return Math.max(looks[best]!, f(from % 1), f(to % 1));
}
