import type { Cutter, Job } from '../../job/job.ts';
import { bedInLayout } from '../../setup/place.ts';
import { cannot, figure, made, mm, type Step } from '../answer.ts';
import { feedsOf } from './feeds.ts';
import type { Move, Program } from './program.ts';
import { CAUTIONS } from './words.ts';

export interface SkimWish {
  readonly depthMm: number;
  /** From one lane to the next. */
  readonly laneMm: number;
}

const SAFE_MM = 10;
const WITNESS_MM = 2;

/** The widest flat cutter: the fewest lanes, and the least ridges where the spindle leans. */
export const skimmingCutter = ({ shop }: Job): Step<Cutter> => {
  const [widest] = shop.cutters
    .filter(({ kind }) => kind === 'flat')
    .toSorted((a, b) => b.diameterMm - a.diameterMm);
  return widest === undefined
    ? cannot(
        'the shop file has no flat cutter to skim the spoilboard with',
        'a cutter of kind: flat',
      )
    : made(widest);
};

/**
 * Skims the spoilboard level with the travel: lanes along X, all of one direction so that every lane
 * climbs, as far as the travel reaches. Nothing may stand on the bed.
 */
export function skim(job: Job, cutter: Cutter, wish: SkimWish): Step<Program> {
  const feeds = feedsOf(cutter);
  if (feeds.kind === 'cannot') return feeds;
  const { spoilboard } = job.shop.bed;
  const { travelMm } = job.shop.machine;
  if (wish.laneMm > cutter.diameterMm)
    return cannot(
      `lanes ${mm(wish.laneMm)} apart leave ridges behind a cutter ${mm(cutter.diameterMm)} wide`,
      `lane: ${figure(cutter.diameterMm * 0.6)} or so`,
    );
  if (wish.depthMm > spoilboard.thickMm / 2)
    return cannot(
      `skimming ${mm(wish.depthMm)} off leaves less than half of a spoilboard ${mm(spoilboard.thickMm)} thick`,
      `depth: ${figure(Math.min(1, spoilboard.thickMm / 2))} or less`,
    );
  if (wish.depthMm > feeds.value.stepMm)
    return cannot(
      `${cutter.name} takes ${mm(feeds.value.stepMm)} a pass, and ${mm(wish.depthMm)} is to come off`,
      `depth: ${figure(feeds.value.stepMm)} or less, and skim again`,
    );
  const longMm = Math.min(spoilboard.xMm, travelMm.x);
  const wideMm = Math.min(spoilboard.yMm, travelMm.y);
  const lanes = Math.ceil(wideMm / wish.laneMm) + 1;
  return made({
    name: 'skim the spoilboard',
    jobName: job.name,
    header: [
      'For: making the spoilboard level with the travel of the cutter.',
      'On the bed: nothing at all. Inserts and screws lie deeper than the cut.',
      'X and Y zero: near left corner of the spoilboard. Z zero: its highest place.',
      `Comes off: ${figure(wish.depthMm)} mm. Lanes along X from right to left, nearest first, all climb.`,
    ],
    cautions: [
      ...CAUTIONS,
      `See that no insert, screw or T-track is nearer the surface than ${figure(wish.depthMm)} mm.`,
      'Measure the bed again afterwards: what was measured before is void.',
    ],
    cutter: feeds.value.cutter,
    zeroAt: bedInLayout(job, { x: 0, y: 0 }),
    zeroHighMm: 0,
    highestMm: 0,
    safeMm: SAFE_MM,
    witness: { at: { x: 0, y: 0, z: WITNESS_MM }, over: 'the near left corner of the spoilboard' },
    spindle: 'turns',
    moves: Array.from({ length: lanes }, (_, i) => Math.min(wideMm, i * wish.laneMm)).flatMap(
      (y): readonly Move[] => [
        { kind: 'over', x: longMm, y },
        {
          kind: 'cut',
          to: { x: longMm, y, z: -wish.depthMm },
          feedMmPerMin: feeds.value.downMmPerMin,
        },
        { kind: 'cut', to: { x: 0, y, z: -wish.depthMm }, feedMmPerMin: feeds.value.alongMmPerMin },
        { kind: 'up' },
      ],
    ),
  });
}
