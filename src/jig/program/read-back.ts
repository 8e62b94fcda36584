import type { Cutter, Job } from '../../job/job.ts';
import type { Point } from '../../plane/point.ts';
import type { Body } from '../../sweep/body.ts';
import { placesAlong } from '../../sweep/program/along.ts';
import type { Move, Program as ReadProgram, Spot } from '../../sweep/program/program.ts';
import { cannot, mm, type Cannot } from '../answer.ts';
import { stopNumbers } from '../numbers.ts';
import { legsClash, wayOf, type Leg } from './check.ts';
import type { Program } from './program.ts';

/** Words of a program are rounded: to 5 decimals of an inch at the coarsest, twice over for arcs, mm. */
const ROUNDING_MM = 0.002;

/**
 * Why the text of a program must not be handed out, or null. `read` is what a reader that knows nothing
 * of the writer makes of it: every line must be understood and sound, the way as far as planned, no
 * fast move below the safe height but straight up, and nothing on the bed or beyond the travel in it.
 */
export function writtenClash(
  job: Job,
  program: Program,
  cutter: Cutter,
  bodies: readonly Body[],
  read: ReadProgram,
): Cannot | null {
  const ours = (what: string): Cannot =>
    cannot(`${program.name}: the written program ${what}`, 'no change of yours: please report it');
  // Up to its safe height and over the witness it comes from wherever the cutter was left.
  const firstLine = read.moves[0]?.line ?? 0;
  const finding = read.findings.find(({ kind, line }) => kind !== 'beware' || line > firstLine);
  if (finding !== undefined) return ours(`has in line ${finding.line}: ${finding.message}`);
  const onBed = (p: Spot): Spot => ({
    x: p.x + program.zeroAt.x,
    y: p.y + program.zeroAt.y,
    z: p.z + program.zeroHighMm,
  });
  const low = read.moves.find((move) => isLowRapid(move, program.safeMm - program.zeroHighMm));
  if (low !== undefined) return ours(`goes fast below its safe height in line ${low.line}`);
  const way = read.moves.flatMap((move) => placesAlong(move, stopNumbers.chordMm).map(onBed));
  const planned = wayOf(program).map((p) => ({
    x: p.x + program.zeroAt.x,
    y: p.y + program.zeroAt.y,
    z: p.z,
  }));
  for (const axis of ['x', 'y', 'z'] as const)
    for (const sign of [1, -1]) {
      const offMm = Math.abs(farthest(way, axis, sign) - farthest(planned, axis, sign));
      if (!(offMm <= ROUNDING_MM + stopNumbers.chordMm))
        return ours(`reaches ${mm(offMm)} off its plan along ${axis.toUpperCase()}`);
    }
  return legsClash(job, program, legsOf(way), cutter, bodies, ROUNDING_MM);
}

function isLowRapid({ kind, from, to }: Move, safeMm: number): boolean {
  if (kind !== 'rapid') return false;
  if (to.z < safeMm - ROUNDING_MM) return true;
  const goesAside = from !== null && (from.x !== to.x || from.y !== to.y);
  return goesAside && from.z < safeMm - ROUNDING_MM;
}

const farthest = (way: readonly Spot[], axis: keyof Spot, sign: number): number =>
  way.reduce((most, p) => Math.max(most, sign * p[axis]), -Infinity);

function legsOf(way: readonly Spot[]): readonly Leg[] {
  const at = ({ x, y }: Spot): Point<'layout'> => ({ x, y });
  return way.slice(1).map((to, i) => ({
    from: at(way[i]!),
    to: at(to),
    lowMm: Math.min(way[i]!.z, to.z),
  }));
}
