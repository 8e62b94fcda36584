import type { Cutter, StopsJob } from '../../job/job.ts';
import { cornerAt } from '../../setup/place.ts';
import { made, type Step } from '../answer.ts';
import type { StopPart } from '../stop-part.ts';
import { bodiesOf } from '../stops.ts';
import { cornerWords } from './corner-words.ts';
import { depthsTo, feedsOf, type Feeds } from './feeds.ts';
import { FINISH_MM, landRuns, type LandRun } from './land-runs.ts';
import type { Move, Place, Program } from './program.ts';
import { CAUTIONS, SHOE_OFF } from './words.ts';

/** Above the highest thing on the bed, mm. Common practice, no source. */
const SAFE_OVER_MM = 5;
/** The cutter comes down this far off the stock, mm. Common practice, no source. */
const OFF_STOCK_MM = 2;
/** The cutter waits this high over the witness place, mm. */
const WITNESS_MM = 2;

/**
 * Mills the faces of the stops where they stand: passes that leave a little on, then the last pass over
 * the whole height, and the same once more with nothing to take off. Every pass climbs.
 */
export function millStops(
  job: StopsJob,
  stops: readonly StopPart[],
  cutter: Cutter,
): Step<Program> {
  const feeds = feedsOf(cutter);
  if (feeds.kind === 'cannot') return feeds;
  const highestMm = Math.max(...stops.flatMap(bodiesOf).map((body) => body.highMm));
  const corner = job.stops.corner.frontUp;
  const runs = stops.flatMap((stop) =>
    landRuns(job, stop, cutter).map((run) => ({ run, name: stop.name })),
  );
  return made({
    name: 'mill the stops',
    jobName: job.name,
    header: [
      'For: milling the faces of the stops where they stand, before any blank is laid.',
      'On the bed: the stops, screwed down. No blank.',
      `X and Y zero: ${cornerWords(corner)} corner of the stops, where their finished faces meet.`,
      'Z zero: surface of the spoilboard.',
      `Passes: climb; ${FINISH_MM} mm left on, then the last pass and the same once more.`,
    ],
    cautions: [...CAUTIONS, ...shoeCaution(job, highestMm, stops)],
    cutter: feeds.value.cutter,
    zeroAt: cornerAt(job, corner),
    zeroHighMm: 0,
    highestMm,
    safeMm: highestMm + SAFE_OVER_MM,
    witness: {
      at: { x: 0, y: 0, z: highestMm + WITNESS_MM },
      over: 'X0 Y0, the corner of the finished faces',
    },
    spindle: 'turns',
    moves: runs.flatMap(({ run, name }) => [
      { kind: 'note', words: `${name}: ${run.face === 'fence' ? 'fence' : 'side stop'}` },
      ...movesOf(run, feeds.value),
    ]),
  });
}

function shoeCaution(
  job: StopsJob,
  highestMm: number,
  stops: readonly StopPart[],
): readonly string[] {
  const shoe = job.shop.machine.aboveTip.dustShoe;
  const tipMm = Math.min(...stops.map((stop) => stop.band.lowMm));
  return shoe !== null && tipMm + shoe.fromMm < highestMm + WITNESS_MM ? [SHOE_OFF] : [];
}

function movesOf(run: LandRun, feeds: Feeds): readonly Move[] {
  // Stock is left above the band only where the stop ends with it: there is nothing to pass through.
  const rough = depthsTo(run.highMm, run.lowMm, feeds.stepMm).flatMap((zMm) =>
    onePass(run, run.firstPassMm, zMm, feeds),
  );
  const last = onePass(run, run.lastPassMm, run.lowMm, feeds);
  return [...rough, ...last, ...last];
}

function onePass(run: LandRun, acrossMm: number, zMm: number, feeds: Feeds): readonly Move[] {
  const awayMm = run.offMm + OFF_STOCK_MM;
  const off = acrossMm + Math.sign(run.firstPassMm - run.lastPassMm) * awayMm;
  const at = (along: number, across: number, z: number): Place =>
    run.along === 'x' ? { x: along, y: across, z } : { x: across, y: along, z };
  const start = at(run.fromMm, off, zMm);
  const cut = (to: Place, feedMmPerMin: number): Move => ({ kind: 'cut', to, feedMmPerMin });
  return [
    { kind: 'over', x: start.x, y: start.y },
    cut(start, feeds.downMmPerMin),
    cut(at(run.fromMm, acrossMm, zMm), feeds.alongMmPerMin),
    cut(at(run.toMm, acrossMm, zMm), feeds.alongMmPerMin),
    cut(at(run.toMm, off, zMm), feeds.alongMmPerMin),
    { kind: 'up' },
  ];
}
