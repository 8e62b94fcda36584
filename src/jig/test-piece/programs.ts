import type { Face, Job } from '../../job/job.ts';
import { limitsOf } from '../../num/spread-of.ts';
import type { Point } from '../../plane/point.ts';
import { blankInLayout } from '../../setup/place.ts';
import type { Placing } from '../../setup/placing.ts';
import type { Placings } from '../../sweep/clearances.ts';
import { breakThroughMm } from '../../sweep/numbers.ts';
import { figure, made, type Step } from '../answer.ts';
import { feedsOf, type Feeds } from '../program/feeds.ts';
import type { Move, Program } from '../program/program.ts';
import { noRoomOverBlank } from '../program/room-over-blank.ts';
import { CAUTIONS } from '../program/words.ts';
import type { StopPart } from '../stop-part.ts';
import { bodiesOf } from '../stops.ts';
import { cutBox, cutLine, type Box } from './cut-boxes.ts';
import { testNumbers, type TestPiece, type Tongue } from './test-piece.ts';

const SAFE_OVER_MM = 5;
const WITNESS_MM = 2;

/** The two programs of a test piece, one for each placing, from the zeros of the job itself. */
export function testPrograms(
  job: Job,
  placings: Placings,
  stops: readonly StopPart[],
  piece: TestPiece,
  cutIn: 'a board of its own' | 'the first part' = 'a board of its own',
): Step<readonly Program[]> {
  const feeds = feedsOf(piece.cutter);
  if (feeds.kind === 'cannot') return feeds;
  const { thickMm } = job.blank;
  const lowMm = throughMm(job);
  const low = noRoomOverBlank(job, piece.cutter, lowMm, 'test-piece');
  if (low !== null) return low;
  const tops = stops.flatMap(bodiesOf).map((body) => body.highMm);
  const highestMm = Math.max(thickMm, ...tops);
  return made(
    [placings.frontUp, placings.backUp].map((placing) =>
      programOf(job, placing, piece, feeds.value, lowMm, highestMm, cutIn),
    ),
  );
}

/** Where the tip goes to cut through, below the spoilboard's surface, mm. */
function throughMm(job: Job): number {
  const onTop = job.zero.frontUp.z.on === 'top' || job.zero.backUp.z.on === 'top';
  const thicker = Math.max(0, limitsOf(job.blank.thickSpread.distribution)[1]);
  return -breakThroughMm - (onTop ? thicker : 0);
}

function programOf(
  job: Job,
  placing: Placing,
  piece: TestPiece,
  feeds: Feeds,
  lowMm: number,
  highestMm: number,
  cutIn: 'a board of its own' | 'the first part',
): Program {
  const { thickMm } = job.blank;
  const face = placing.faceUp;
  const zero = face === 'front' ? job.zero.frontUp : job.zero.backUp;
  const isOwn = cutIn === 'a board of its own';
  const name = `${isOwn ? 'test piece' : 'combs in the waste'}, ${face} up`;
  const words = placing.order === 'first' ? 'first' : 'second';
  return {
    name,
    jobName: job.name,
    header: [
      isOwn
        ? `For: the ${words} placing of the test piece, ${face} up.`
        : `For: combs in the waste of the first part, ${words} placing, ${face} up. Run it before the program of the part, in the same clamping.`,
      `On the bed: ${job.locating === 'stops' ? 'the stops' : 'what locates the blank'}, and ${isOwn ? 'a board of the size of the blank' : 'the blank'}, ${figure(job.blank.widthMm)} by ${figure(job.blank.heightMm)} by ${figure(thickMm)}${isOwn ? ', laid and turned over as the blank will be' : ''}.`,
      `Edges: ${placing.base.edge} edge ${placing.base.side}, ${placing.end.edge} edge ${placing.end.side}; marked: ${job.blank.marked.join(' and ')}.`,
      'X and Y zero: as the bench sheet says for this placing, just as for the part.',
      `Z zero: ${zero.z.on === 'top' ? 'top of the board' : 'surface of the spoilboard'}.`,
      'Put scrap of even thickness under it or accept shallow cuts in the spoilboard.',
    ],
    cautions: [
      ...CAUTIONS,
      ...(isOwn
        ? ['Hold the board down clear of all cuts; look at the card for where they are.']
        : [
            'The waste must still be fast when its second combs are cut: see to tabs, screws or clamps on it.',
          ]),
      ...(piece.cutter.fluteMm !== null && piece.cutter.fluteMm < thickMm - lowMm
        ? [
            'The flutes are shorter than the board is thick: the shank must not be thicker than they are.',
          ]
        : [
            'The waste must still be fast when its second combs are cut: see to tabs, screws or clamps on it.',
          ]),
    ],
    cutter: feeds.cutter,
    zeroAt: placing.zero,
    zeroHighMm: zero.z.on === 'top' ? thickMm : 0,
    highestMm,
    safeMm: highestMm + SAFE_OVER_MM,
    witness: {
      at: { x: 0, y: 0, z: highestMm + WITNESS_MM },
      over: 'X0 Y0 as the bench sheet shows it',
    },
    spindle: 'turns',
    moves: movesOf(job, placing, piece, feeds, lowMm),
  };
}

function movesOf(
  job: Job,
  placing: Placing,
  piece: TestPiece,
  feeds: Feeds,
  lowMm: number,
): readonly Move[] {
  const { thickMm } = job.blank;
  const n = testNumbers;
  const face: Face = placing.faceUp;
  const fluteMm = piece.cutter.fluteMm ?? Infinity;
  const at = (p: Point<'blank'>): { x: number; y: number } => {
    const there = blankInLayout(job, placing.mirror, p);
    return { x: there.x - placing.zero.x, y: there.y - placing.zero.y };
  };
  const box = (low: Point<'blank'>, high: Point<'blank'>): Box => {
    const [a, b] = [at(low), at(high)];
    return {
      lowX: Math.min(a.x, b.x),
      lowY: Math.min(a.y, b.y),
      highX: Math.max(a.x, b.x),
      highY: Math.max(a.y, b.y),
    };
  };
  const cut = (one: Box, bottomMm: number): readonly Move[] =>
    cutBox(one, thickMm, bottomMm, n.finishMm, fluteMm, feeds);
  const note = (words: string): Move => ({ kind: 'note', words });
  const isSecond = placing.order === 'second';
  return [
    ...piece.tongues.flatMap((tongue) => {
      const open = openedBox(job, tongue, feeds.radiusMm);
      return [
        note(`tongue ${tongue.name}`),
        ...cut(box(open.low, open.high), (thickMm + n.webMm) / 2),
      ];
    }),
    ...piece.verniers.flatMap(({ axis, recess, slots }) => [
      note(`vernier for ${axis}`),
      ...(isSecond ? cut(box(recess.low, recess.high), n.tongueMm) : []),
      ...slots
        .filter((slot) => slot.face === face)
        .flatMap(({ from, to }) =>
          isSecond
            ? cutLine(at(from), at(to), n.tongueMm, lowMm, feeds)
            : cutLine(at(from), at(to), thickMm, thickMm - n.tongueMm - breakThroughMm, feeds),
        ),
    ]),
    ...piece.combs.flatMap(({ number, slots }) => [
      note(`comb ${number}`),
      ...slots
        .filter((slot) => slot.face === face)
        .flatMap(({ low, high }) => cut(box(low, high), lowMm)),
    ]),
  ];
}

/** The rebate goes on past the edge it lies on, so that it is as deep at the edge as inside. */
function openedBox(
  job: Job,
  { low, high }: Tongue,
  radiusMm: number,
): Pick<Tongue, 'low' | 'high'> {
  const by = radiusMm + 1;
  const { widthMm, heightMm } = job.blank;
  return {
    low: { x: low.x === 0 ? -by : low.x, y: low.y === 0 ? -by : low.y },
    high: {
      x: high.x === widthMm ? widthMm + by : high.x,
      y: high.y === heightMm ? heightMm + by : high.y,
    },
  };
}
