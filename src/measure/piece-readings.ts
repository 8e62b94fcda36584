import type { Job } from '../job/job.ts';
import type { RawTestPiece } from '../job/readings/raw-readings.ts';
import { gaugeSdOf, isRead, readOf, type GaugeSd } from '../job/readings/reading.ts';
import type { Context } from '../job/resolve/context.ts';
import { fault } from '../job/resolve/context.ts';
import { mm, pointMm } from '../job/resolve/lengths.ts';
import { said } from '../job/text/said.ts';
import type { Comb, TurnRead } from './test-piece.ts';
import type { Web } from './webs.ts';

export interface PieceRead {
  readonly turns: readonly TurnRead[];
  readonly webs: readonly Web[];
  readonly wallMm: number;
  readonly webMm: number;
  /** Of which both slots are cut; null when nobody said. */
  readonly cutter: string | null;
  /** Its own size by caliper, and the sd of each; null: nobody measured it. */
  readonly size: Readonly<Record<'x' | 'y', { readonly mm: number; readonly sd: number }>> | null;
}

/** Wall between slots and web of a tongue as they are drawn (bench practice, section 2). */
const [WALL_MM, WEB_MM] = [12, 4];
/** More than any set-up is off by, mm: a slip. */
const MOST_MM = 3;
/** Sums of the two walls of a comb differ among combs by no more than this many sd. */
const MOST_SDS = 6;

/** A test piece's readings as plain figures, with a fault for every one that cannot be. */
export function pieceReadOf(context: Context, raw: RawTestPiece, job: Job): PieceRead {
  const gauge = gaugeSdOf(context, [raw, 'gauge'], raw.gauge);
  const wallMm = raw.wall === undefined ? WALL_MM : mm(raw.wall);
  const webMm = raw.web === undefined ? WEB_MM : mm(raw.web);
  const { widthMm, heightMm } = job.blank;
  const placeOf = (holder: object, at: readonly [number | string, number | string]) => {
    const place = pointMm(at);
    if (place.x < 0 || place.y < 0 || place.x > widthMm || place.y > heightMm)
      fault(
        context,
        [holder, 'at'],
        `${said(place.x)}, ${said(place.y)} is not on the blank of ${said(widthMm)} by ${said(heightMm)}`,
        'write it seen from the front, from the lower-left corner',
      );
    return place;
  };
  const turns = raw.turns.map((turn): TurnRead => ({
    combs: turn.combs.flatMap((comb): Comb[] => {
      const at = placeOf(comb, comb.at);
      for (const key of ['t1', 't2'] as const)
        if (!isRead(comb[key]))
          fault(context, [comb, key], `${key} has no reading`, 'write the wall in mm');
      if (!isRead(comb.t1) || !isRead(comb.t2)) return [];
      const [t1, t2] = [readOf(comb.t1, gauge), readOf(comb.t2, gauge)];
      for (const [key, { value }] of [
        ['t1', t1],
        ['t2', t2],
      ] as const)
        if (Math.abs(value - wallMm) > MOST_MM)
          fault(
            context,
            [comb, key],
            `a wall of ${said(value)} mm is nowhere near the ${said(wallMm)} mm that was drawn`,
            'read it again, or write wall: as it was drawn',
          );
      return [
        { along: comb.along, at, t1Mm: t1.value, t2Mm: t2.value, sdMm: Math.max(t1.sd, t2.sd) },
      ];
    }),
  }));
  checkSums(context, raw, turns);
  const webs = raw.turns.flatMap(({ webs: written = [] }) =>
    written.flatMap((web): Web[] => {
      const at = placeOf(web, web.at);
      if (!isRead(web.web)) return [];
      const { value, sd } = readOf(web.web, gauge);
      if (Math.abs(value - webMm) > MOST_MM)
        fault(
          context,
          [web, 'web'],
          `a web of ${said(value)} mm is nowhere near the ${said(webMm)} mm that was drawn`,
          'read it again, or write web: as it was drawn',
        );
      return [{ at, webMm: value, sdMm: sd }];
    }),
  );
  const size = sizeOf(context, raw, job, gauge);
  return { turns, webs, wallMm, webMm, cutter: raw.cutter ?? null, size };
}

function sizeOf(
  context: Context,
  raw: RawTestPiece,
  { blank }: Job,
  gauge: GaugeSd,
): PieceRead['size'] {
  if (raw.size === undefined) return null;
  const [x, y] = raw.size.map(mm) as [number, number];
  for (const [measured, wanted, along] of [
    [x, blank.widthMm, 'X'],
    [y, blank.heightMm, 'Y'],
  ] as const)
    if (Math.abs(measured - wanted) > MOST_OFF_MM)
      fault(
        context,
        [raw, 'size'],
        `${said(measured)} mm along ${along} is nowhere near the blank's ${said(wanted)} mm`,
        'write what was calipered, along X and then along Y',
      );
  return { x: { mm: x, sd: gauge(x) }, y: { mm: y, sd: gauge(y) } };
}

/** More than any blank is off by, mm: a slip, or the two sizes swapped. */
const MOST_OFF_MM = 10;

/** The offset drops out of the sum of a comb's walls, so all combs of one cutter have the same: one that has not was misread. */
function checkSums(context: Context, raw: RawTestPiece, turns: readonly TurnRead[]): void {
  const combs = turns.flatMap((turn, t) =>
    turn.combs.map((comb, k) => ({ comb, raw: raw.turns[t]!.combs[k]! })),
  );
  if (context.faults.length > 0 || combs.length < 4) return;
  const sums = combs.map(({ comb }) => comb.t1Mm + comb.t2Mm).sort((a, b) => a - b);
  const median = sums[Math.floor(sums.length / 2)]!;
  for (const { comb, raw: written } of combs) {
    const off = comb.t1Mm + comb.t2Mm - median;
    if (Math.abs(off) <= MOST_SDS * Math.SQRT2 * comb.sdMm) continue;
    fault(
      context,
      [written, 't1'],
      `the two walls of this comb come to ${said(comb.t1Mm + comb.t2Mm)} mm, those of the others to ${said(median)} mm`,
      'one of the two is a slip; read both again',
    );
  }
}
