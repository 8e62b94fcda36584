import type { DowelHoles, Job } from '../job/job.ts';
import type { Point } from '../plane/point.ts';
import type { Columns } from './columns.ts';
import type { Axis } from './deviation.ts';
import { newPairs, type Pairs } from './disc-play.ts';
import { landingOn, type Laid } from './landing.ts';
import { blankInLayout, cornerAt, frontUpCorner } from './place.ts';
import { inFrame } from './seat-frame.ts';
import { strikeOf } from './strike.ts';
import type { Strains } from './wood-moves.ts';

/** Holes of a blank and dowels of the bed as they really are in a trial, and how they meet in each placing. */
export interface DowelPlaces {
  /** Reads how the holes were drilled; where the zero of the first placing is found already, if they were drilled there. */
  readonly drill: (draws: Float64Array, i: number) => void;
  /** Pairs of a placing, in its seat frame; `meet` fills them. */
  readonly in: (laid: Laid) => Meeting;
}

export interface Meeting {
  readonly pairs: Pairs;
  /** Nominal direction from the first dowel to the one farthest from it, a unit vector. */
  readonly line: readonly [number, number];
  readonly meet: (draws: Float64Array, i: number) => void;
}

/** Nominal places that are nearer are one place. */
export const SAME_DOWEL_MM = 0.01;

/**
 * Drilled with the blank, each hole and its dowel are where the machine drilled them in the first placing, at half the
 * thickness, as one feature each (rules 7 and 17). Drilled separately, the dowels stand where this machine drilled the bed from the
 * zero of its own, and each hole is off in the blank by its own error. Before the second placing the blank swells.
 */
export function dowelPlaces(
  job: Job,
  holes: DowelHoles,
  first: Laid,
  strains: Strains,
  columns: Columns,
): DowelPlaces {
  const places = holes.at.map((at) => blankInLayout(job, first.placing.mirror, at));
  const corner = cornerAt(job, frontUpCorner(job));
  const own = {
    anchor: { x: corner.x, xAtY: corner.y, y: corner.y, heightMm: 0 },
    found: { dx: 0, dy: 0 },
  };
  const isWithBlank = holes.drilled === 'with-the-blank';
  const striking = isWithBlank ? first : own;
  const thick = columns.of({ kind: 'thickness' });
  const dowels = places.map((place, k) => {
    const { anchor, found } = striking;
    return strikeOf(job, { anchor, found, cut: dowelName(k) }, place, columns);
  });
  const inBlank = holes.at.map((at, k) =>
    isWithBlank
      ? landingOn(job, first, { cut: dowelName(k), at, height: 'half', strains: null }, columns)
      : drilledApart(k, columns),
  );
  const playOf = clearances(holes, columns);

  const meetingIn = (laid: Laid): Meeting => {
    const { placing, frame } = laid;
    const pairs = newPairs(places.length);
    const isSecond = laid !== first;
    const met = holes.at.map((at, hole) => {
      const lies = blankInLayout(job, placing.mirror, at);
      return { hole, dowel: nearestTo(lies, places), at, inFrame: inFrame(frame, lies) };
    });
    const alongX = frame.along === 'x';
    return {
      pairs,
      line: lineOf(met.map((one) => one.inFrame)),
      meet: (draws, i) => {
        for (let k = 0; k < met.length; k++) {
          const { hole, dowel, at, inFrame: nominal } = met[k]!;
          const growX = isSecond ? strains.x : 0;
          const growY = isSecond ? strains.y : 0;
          const offX = inBlank[hole]!.x() * (1 + growX) + growX * at.x;
          const offY = inBlank[hole]!.y() * (1 + growY) + growY * at.y;
          pairs.holeA[k] = nominal.a + frame.blankAlongSign * (alongX ? offX : offY);
          pairs.holeB[k] = nominal.b + frame.blankInwardSign * (alongX ? offY : offX);
          const stands = dowels[dowel]!;
          pairs.pinA[k] = nominal.a + frame.alongSign * (alongX ? stands.x() : stands.y());
          pairs.pinB[k] = nominal.b + frame.inwardSign * (alongX ? stands.y() : stands.x());
          pairs.playMm[k] = Math.max(0, playOf(draws, i, hole, dowel)) / 2;
        }
      },
    };
  };
  return {
    drill: (draws, i) => {
      const above = (job.blank.thickMm + draws[thick + i]!) / 2 - striking.anchor.heightMm;
      for (const dowel of dowels) dowel.load(draws, i, above);
      for (const hole of inBlank) hole.locate(draws, i);
    },
    in: meetingIn,
  };
}

function lineOf(places: readonly { readonly a: number; readonly b: number }[]): [number, number] {
  const [start] = places;
  let line: [number, number] = [0, 1];
  let longest = 0;
  for (const { a, b } of places) {
    const [da, db] = [a - start!.a, b - start!.b];
    const length = Math.sqrt(da * da + db * db);
    if (length <= longest) continue;
    longest = length;
    line = [da / length, db / length];
  }
  return line;
}

const dowelName = (k: number): string => `dowel ${k + 1}`;

function drilledApart(k: number, columns: Columns) {
  const error = (axis: Axis): number => columns.of({ kind: 'hole-place', dowel: k + 1, axis });
  const [atX, atY] = [error('x'), error('y')];
  let [x, y] = [0, 0];
  return {
    x: () => x,
    y: () => y,
    locate: (draws: Float64Array, i: number) => {
      x = draws[atX + i]!;
      y = draws[atY + i]!;
    },
  };
}

/** Diametral clearance of a hole on a dowel, mm; it may come out below 0. */
function clearances({ clearance, at }: DowelHoles, columns: Columns) {
  const each = (kind: 'clearance' | 'pin-size' | 'hole-size'): readonly number[] =>
    at.map((_, k) => columns.of({ kind, dowel: k + 1 }));
  if (clearance.kind === 'stated') {
    const stated = each('clearance');
    return (draws: Float64Array, i: number, hole: number): number => draws[stated[hole]! + i]!;
  }
  const [pins, holes] = [each('pin-size'), each('hole-size')];
  return (draws: Float64Array, i: number, hole: number, dowel: number): number =>
    draws[holes[hole]! + i]! - draws[pins[dowel]! + i]!;
}

function nearestTo(at: Point<'layout'>, places: readonly Point<'layout'>[]): number {
  const off = places.map(({ x, y }) => Math.max(Math.abs(x - at.x), Math.abs(y - at.y)));
  return off.indexOf(Math.min(...off));
}
