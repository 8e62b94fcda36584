import type { Job } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import {
  chanceText,
  deviationText,
  intervalText,
  lengthText,
  levelText,
  shareText,
} from '../sheet/words.ts';
import type { NeedPrediction, Prediction, SourceLine } from '../stackup/prediction.ts';
import { metBy } from '../verdict/needs-met.ts';
import { columns, wrapped } from './lines.ts';

/** A prediction for a person at a terminal: verdict per need, what makes it, what was assumed. */
export function predictionText(job: Job, prediction: Prediction): string {
  const lines = [
    job.name,
    ...wrapped(`  ${setUpWords(job)}`, '  '),
    '',
    ...needTable(job, prediction),
    '',
    ...wrapped(
      'What makes it: parts of the variance; what acts together counts with each, so they may add up to more than 100 %.',
    ),
    '',
    ...prediction.needs.flatMap((need) => [...makers(job, prediction, need), '']),
    ...assumedLines(prediction),
    ...wrapped(
      `${prediction.trials} trials, seed ${prediction.seed}. All figures are estimates that rest on the spreads above and in the job and shop files: cut a test piece where it matters.`,
    ),
  ];
  return lines.join('\n');
}

/** How the blank is located, in one line. */
export function setUpWords(job: Job): string {
  const { frontUp, backUp } = placingsOf(job);
  const { made, corner } = job.stops;
  const where = (name: string): string => name.replace('-', ' ');
  const stops =
    corner.frontUp === corner.backUp
      ? `same corner (${where(corner.frontUp)})`
      : `${where(corner.frontUp)} corner front up, ${where(corner.backUp)} back up`;
  const first = job.first === 'front' ? frontUp : backUp;
  const firstXy = job.first === 'front' ? job.zero.frontUp.xy : job.zero.backUp.xy;
  const secondXy = job.first === 'front' ? job.zero.backUp.xy : job.zero.frontUp.xy;
  const zero =
    secondXy.kind === 'kept' ? `kept (${secondXy.how})` : `found again (${secondXy.kind})`;
  return [
    `${first.faceUp} first, turned ${job.turn.replace('-', ' ').replace(/.$/, (axis) => axis.toUpperCase())}`,
    `stops ${made.kind.replaceAll('-', ' ')}`,
    stops,
    `zero from ${firstXy.kind.replaceAll('-', ' ')}, then ${zero}`,
  ].join(' · ');
}

function needTable(job: Job, prediction: Prediction): string[] {
  const { units } = job.shop;
  const head = ['need', 'limit', 'mean', '95 % of parts', 'good parts', ''];
  const rows = prediction.needs.map((need) => [
    need.name.length > 24 ? `${need.name.slice(0, 23)}…` : need.name,
    need.limits.high === null ? '' : `≤ ${lengthText(need.limits.high, units)}`,
    need.moments === 'no mean' ? 'none' : deviationText(need.mean, units),
    intervalText(need.interval95, units),
    chanceText(need.chance),
    metBy(need, job.goodEnoughShare),
  ]);
  return [
    ...columns([head, ...rows], [2, 4]),
    `nominal is 0 mm for each; met means ${levelText(job.goodEnoughShare)} of parts or more`,
  ];
}

/** The three biggest sources of one need, in words. */
function makers(job: Job, prediction: Prediction, need: NeedPrediction): string[] {
  const lineOf = (name: string): SourceLine | undefined =>
    prediction.sources.find((source) => source.name === name);
  const rows = need.shares
    .filter(({ share }) => share > 0)
    .slice(0, 3)
    .map(({ source, share }) => {
      const line = lineOf(source);
      const note = line === undefined || line.because === null ? '' : ', assumed';
      return [`  ${shareText(share)}`, `${line?.words ?? source} (${line?.text ?? ''}${note})`];
    });
  const sure = deviationText(need.sureTo, job.shop.units);
  const straightGood = chanceText(need.firstOrder.chance);
  const straight = need.firstOrder.agrees
    ? 'A straight-line estimate agrees.'
    : straightGood === chanceText(need.chance)
      ? ''
      : `A straight-line estimate would say ${straightGood} good: do not rely on one here.`;
  return [
    `${need.name}: what makes it`,
    ...(need.moments !== 'known'
      ? wrapped(`  ${FEW_READINGS[need.moments]}`, '  ')
      : rows.length === 0
        ? ['  nothing is off']
        : columns(rows, [0]).flatMap((row) => wrapped(row, '        '))),
    ...wrapped(
      `  The 95 % ends are sure to ${sure}. Worst case, everything at its limit: ${deviationText(need.worst[1], job.shop.units)}. ${straight}`.trimEnd(),
      '  ',
    ),
  ];
}

const FEW_READINGS = {
  'no sd':
    'three readings of something have no standard deviation: trust the interval and the chance',
  'no mean': 'two readings of something have no mean: trust the interval and the chance',
} as const;

function assumedLines(prediction: Prediction): string[] {
  const assumed = prediction.sources.filter((source) => source.because !== null);
  if (assumed.length === 0) return ['Nothing was assumed: every spread was stated.', ''];
  const list = assumed.map(({ name, text }) => `${name} ${text}`).join('; ');
  return [
    ...wrapped(`Assumed, since nobody stated it (common practice, no source): ${list}.`, '  '),
    '',
  ];
}
