import type { Cutter, Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { grown } from '../../plane/clip.ts';
import { boundsOf } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import type { Point } from '../../plane/point.ts';
import { bedInLayout } from '../../setup/place.ts';
import { breakThroughMm } from '../../sweep/numbers.ts';
import { cannot, figure, made, mm, type Step } from '../answer.ts';
import { roundingMm, screwNumbers } from '../numbers.ts';
import { given, unmet } from '../parts/size.ts';
import type { StopPart } from '../stop-part.ts';
import { boreMoves } from './bore-holes.ts';
import { clearPocket } from './clear-pocket.ts';
import { cutRound } from './cut-round.ts';
import { feedsOf } from './feeds.ts';
import type { Move, Program } from './program.ts';
import { CAUTIONS } from './words.ts';

const SAFE_OVER_MM = 5;
const WITNESS_MM = 2;
const CHORD_MM = 0.01;

/**
 * Cuts one stop from sheet as thick as the stop is high: seats and holes first, its outline last, held
 * by bridges. The faces are those that touch (or that are milled in place later); the chip relief under
 * them is for a hand to cut, a flat cutter from above cannot. Zero: near-left corner of the sheet, its
 * top; the sheet lies at the near-left corner of the bed.
 */
export function stopFromSheet(
  job: Job,
  stop: StopPart,
  sizes: JigSizesOf<'stops-from-sheet'>,
): Step<{ readonly program: Program; readonly cutter: Cutter }> {
  const name = `cut the ${stop.name} from sheet`;
  const thickMm = stop.body.highMm;
  const cutter = cutterFor(job, stop, name);
  if (cutter.kind === 'cannot') return cutter;
  const feeds = feedsOf(cutter.value);
  if (feeds.kind === 'cannot') return feeds;
  const [tabs, tabWideMm, tabHighMm] = [
    given(sizes.tabs),
    given(sizes['tab-wide']),
    given(sizes['tab-high']),
  ];
  const marginMm = given(sizes.margin);
  const refusal = unmet('stops-from-sheet', [
    {
      what: 'margin',
      isMm: marginMm,
      least: cutter.value.diameterMm + 5,
      because: `the cutter goes round the stop, ${figure(cutter.value.diameterMm)} wide`,
    },
    {
      what: 'tab-high',
      isMm: tabHighMm,
      most: thickMm / 2,
      because: `the sheet is ${figure(thickMm)} thick`,
    },
    { what: 'tab-wide', isMm: tabWideMm, least: 2, because: 'it would break while cutting' },
  ]);
  if (refusal !== null) return refusal;
  const { outline, seats, through } = loopsOf(stop);
  const box = boundsOf(outline);
  const by = { x: marginMm - box.lowX, y: marginMm - box.lowY };
  const onSheet = (loop: Outline<'layout'>): Outline<'layout'> =>
    loop.map((p) => ({ x: p.x + by.x, y: p.y + by.y }));
  const fluteMm = cutter.value.fluteMm ?? Infinity;
  const low = -breakThroughMm;
  const pocket = (loop: Outline<'layout'>, topMm: number, bottomMm: number): readonly Move[] =>
    clearPocket(onSheet(loop), topMm, bottomMm, fluteMm, feeds.value);
  const origin: Point<'layout'> = { x: 0, y: 0 };
  const note = (words: string): Move => ({ kind: 'note', words });
  const round = grown([onSheet(outline)], feeds.value.radiusMm, CHORD_MM);
  return made({
    cutter: cutter.value,
    program: {
      name,
      jobName: job.name,
      header: [
        `For: the ${stop.name}, out of sheet ${figure(thickMm)} mm thick: HDPE, hard plywood or MDF.`,
        `On the bed: a piece of sheet ${figure(box.highX - box.lowX + 2 * marginMm)} by ${figure(box.highY - box.lowY + 2 * marginMm)} mm or more at the near left corner, on scrap or on a bed that may be scored, screwed down outside of ${figure(marginMm - feeds.value.radiusMm * 2 - 2)} mm of its rim or taped.`,
        'X and Y zero: near left corner of the sheet. Z zero: top of the sheet.',
        `Marked edge: none. The stop lies as it stands on the bed, its top up, X to the right.`,
        `Held by ${tabs} bridges ${figure(tabWideMm)} wide and ${figure(tabHighMm)} high: saw them through, trim them with a file, never on a face that touches.`,
        'The relief under the faces is not cut: bevel the lower edge of each face 2 or 3 mm by hand, for chips.',
        ...(stop.allowanceMm === 0
          ? []
          : [`Its faces keep ${figure(stop.allowanceMm)} mm to be milled where the stop stands.`]),
      ],
      cautions: [
        ...CAUTIONS,
        'Clamps and screws of the sheet are not known to this program: keep them clear of its whole way.',
      ],
      cutter: feeds.value.cutter,
      zeroAt: bedInLayout(job, { x: 0, y: 0 }),
      zeroHighMm: thickMm,
      highestMm: thickMm,
      safeMm: thickMm + SAFE_OVER_MM,
      witness: {
        at: { x: 0, y: 0, z: thickMm + WITNESS_MM },
        over: 'the near left corner of the sheet',
      },
      spindle: 'turns',
      moves: [
        ...seats.flatMap(({ loop, deepMm }, i) => [
          note(`seat ${i + 1}`),
          ...pocket(loop, thickMm, thickMm - deepMm),
        ]),
        ...through.flatMap(({ loop, fromMm }, i) => [
          note(`hole ${i + 1}`),
          ...pocket(loop, fromMm, low),
        ]),
        ...stop.pins.flatMap((pin, i) => [
          note(`pin hole ${i + 1}`),
          ...boreMoves(
            {
              at: { x: pin.at.x + by.x, y: pin.at.y + by.y },
              diameterMm: pin.diameterMm,
              topMm: thickMm,
              bottomMm: low,
            },
            origin,
            feeds.value,
          ),
        ]),
        note('outline'),
        ...round.flatMap((loop) =>
          cutRound(
            // Clockwise round the outside climbs.
            loop.toReversed(),
            { topMm: thickMm, bottomMm: low },
            { count: tabs, wideMm: tabWideMm + 2 * feeds.value.radiusMm, highMm: tabHighMm },
            feeds.value,
          ),
        ),
      ],
    },
  });
}

interface Loops {
  readonly outline: Outline<'layout'>;
  readonly seats: readonly { readonly loop: Outline<'layout'>; readonly deepMm: number }[];
  readonly through: readonly { readonly loop: Outline<'layout'>; readonly fromMm: number }[];
}

/** What is cut, from the profile: its outline where it touches, the seats at its top, the holes below. */
function loopsOf({ profile, band, allowanceMm, screws, body }: StopPart): Loops {
  const level = profile.levels.find(
    ({ zMm }) => zMm > band.lowMm + allowanceMm - roundingMm && zMm <= band.highMm,
  )!;
  const [first, top] = [profile.levels[0]!, profile.levels.at(-1)!];
  const own = screws.map(({ counterboreMm }, i) => ({
    seat: top.holes[i]!.toReversed(),
    hole: first.holes[i]!.toReversed(),
    deepMm: counterboreMm,
  }));
  return {
    outline: level.outline,
    seats: own.flatMap(({ seat, deepMm }) => (deepMm === 0 ? [] : [{ loop: seat, deepMm }])),
    through: own.map(({ hole, deepMm }) => ({ loop: hole, fromMm: body.highMm - deepMm })),
  };
}

/** The widest flat cutter that goes into every hole and reaches through the sheet; or what would. */
function cutterFor(job: Job, stop: StopPart, name: string): Step<Cutter> {
  const thickMm = stop.body.highMm;
  const holes = [
    ...stop.screws.map(({ thread }) => screwNumbers[thread].holeMm),
    ...stop.pins.map(({ diameterMm }) => diameterMm),
  ];
  const leastMm = holes.reduce((least, hole) => Math.min(least, hole), Infinity);
  const [widest] = job.shop.cutters
    .filter(({ kind, diameterMm }) => kind === 'flat' && diameterMm <= leastMm)
    .filter(({ fluteMm, stickOutMm }) =>
      [fluteMm, stickOutMm].every(
        (mmLong) => mmLong === null || mmLong >= thickMm + breakThroughMm,
      ),
    )
    .toSorted((a, b) => b.diameterMm - a.diameterMm);
  return widest === undefined
    ? cannot(
        `${name}: no flat cutter of the shop file goes into its holes of ${mm(leastMm)} and through ${mm(thickMm)}`,
        `a flat cutter of diameter ${figure(leastMm)} or less with flutes of ${figure(thickMm + breakThroughMm)} or more`,
      )
    : made(widest);
}
