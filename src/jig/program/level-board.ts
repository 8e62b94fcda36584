import type { Cutter } from '../../job/shop.ts';
import { cannot, figure, made, mm, type Step } from '../answer.ts';
import { depthsTo, feedsOf } from './feeds.ts';
import type { Move, Program } from './program.ts';
import { CAUTIONS } from './words.ts';

/** A spoilboard that was found uneven: its size as far as the travel reaches, and how deep to cut it. */
export interface UnevenBoard {
  readonly shopName: string;
  readonly xMm: number;
  readonly yMm: number;
  /** Below its highest place. */
  readonly depthMm: number;
}

export interface LevelledBoard {
  readonly program: Program;
  readonly passCount: number;
}

/** Part of its diameter that a row is beside the last: each row laps over the next (common practice). */
const ROW_SHARE = 0.6;
/** The outermost rows stand in from the board's edge by this part of the radius, so that corners are cut too. */
const EDGE_SHARE = 0.6;
/** Deepest that one pass goes, mm: a light cut that a wide cutter takes in board (estimate). */
const PASS_MM = 0.5;
const SAFE_MM = 10;
const WITNESS_MM = 2;

/**
 * Cuts a measured board level: rows along X, there and back, from the near edge to the far one, pass by
 * pass, with the widest flat cutter that the shop file says how to drive. It never leaves the board.
 * Zero: the near-left corner of the board, Z on its highest place.
 */
export function levelBoard(board: UnevenBoard, cutters: readonly Cutter[]): Step<LevelledBoard> {
  const widest = cutters
    .filter(({ kind }) => kind === 'flat')
    .toSorted((a, b) => b.diameterMm - a.diameterMm)
    .map((cutter) => feedsOf(cutter))
    .find((feeds) => feeds.kind === 'made');
  if (widest === undefined)
    return cannot(
      'the shop file has no flat cutter with speed and feed to skim the spoilboard with',
      'a cutter of kind: flat with its speed: and feed:',
    );
  const { cutter, radiusMm, alongMmPerMin, downMmPerMin, stepMm } = widest.value;
  const inset = EDGE_SHARE * radiusMm;
  const [left, right] = [inset, Math.max(inset, board.xMm - inset)];
  const [near, far] = [inset, Math.max(inset, board.yMm - inset)];
  const between = Math.ceil((far - near) / (ROW_SHARE * cutter.diameterMm));
  const rows = Array.from({ length: between + 1 }, (_, k) =>
    between === 0 ? near : near + ((far - near) * k) / between,
  );
  const depths = depthsTo(0, -board.depthMm, Math.min(PASS_MM, stepMm));
  const pass = (z: number, k: number): readonly Move[] => [
    { kind: 'note', words: `pass ${k + 1} of ${depths.length}` },
    { kind: 'over', x: left, y: near },
    { kind: 'cut', to: { x: left, y: near, z }, feedMmPerMin: downMmPerMin },
    ...rows.flatMap((y, row): readonly Move[] => {
      const [from, to] = row % 2 === 0 ? [left, right] : [right, left];
      return [from, to].map((x) => ({
        kind: 'cut',
        to: { x, y, z },
        feedMmPerMin: alongMmPerMin,
      }));
    }),
    { kind: 'up' },
  ];
  return made({
    passCount: depths.length,
    program: {
      name: 'skim the spoilboard',
      jobName: board.shopName,
      header: [
        'For: making the spoilboard level with the travel of the cutter.',
        'On the bed: nothing at all. Take out screws, clamps and stops, or sink them below the cut.',
        'X and Y zero: near left corner of the spoilboard. Z zero: its highest place.',
        `Comes off: ${figure(board.depthMm)} mm in ${depths.length} ${depths.length === 1 ? 'pass' : 'passes'}. Rows along X, there and back, nearest first.`,
      ],
      cautions: [
        ...CAUTIONS,
        `See that no insert, screw or T-track is nearer the surface than ${mm(board.depthMm)}.`,
        'Measure the bed again afterwards: what was measured before is void.',
      ],
      cutter,
      zeroAt: { x: 0, y: 0 },
      zeroHighMm: 0,
      highestMm: 0,
      safeMm: SAFE_MM,
      witness: {
        at: { x: 0, y: 0, z: WITNESS_MM },
        over: 'the near left corner of the spoilboard',
      },
      spindle: 'turns',
      moves: depths.flatMap(pass),
    },
  });
}
