import { unreachable } from '../num/invariant.ts';
import type { Job, Units } from '../job/job.ts';
import { placingsOf } from '../setup/place.ts';
import { chanceText, lengthText, levelText } from '../sheet/words.ts';
import type {
  BatchPrediction,
  Figures,
  NeedPrediction,
  Prediction,
} from '../stackup/prediction.ts';
import { certainChanceText, endsText, meanText } from '../sheet/certain-words.ts';
import { metBy } from '../verdict/needs-met.ts';
import { columns, wrapped } from './lines.ts';
import { makers } from './need-text.ts';

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
      `${prediction.trials} trials, seed ${prediction.seed}${ENDED[prediction.ended]}. Numbers are shown with the digits that are certain. All figures are estimates that rest on the spreads above and in the job and shop files: cut a test piece where it matters.`,
    ),
  ];
  return lines.join('\n');
}

function locatingWords(job: Job): readonly string[] {
  const where = (name: string): string => name.replaceAll('-', ' ');
  switch (job.locating) {
    case 'stops': {
      const { made, corner } = job.stops;
      const corners =
        corner.frontUp === corner.backUp
          ? `same corner (${where(corner.frontUp)})`
          : `${where(corner.frontUp)} corner front up, ${where(corner.backUp)} back up`;
      return [`stops ${where(made.kind)}`, corners];
    }
    case 'fence-and-dowel': {
      const { made, dowel } = job.fenceAndDowel;
      return [`fence ${where(made.kind)}`, `one dowel drilled ${where(dowel.drilled)}`];
    }
    case 'dowels':
      return [`${job.dowels.at.length} dowels drilled ${where(job.dowels.drilled)}`];
    case 'nest':
      return [`in a nest round ${job.nest.around ?? 'the blank'}`];
    default:
      return unreachable(job);
  }
}

/** How the blank is located, in one line. */
export function setUpWords(job: Job): string {
  const { frontUp, backUp } = placingsOf(job);
  const first = job.first === 'front' ? frontUp : backUp;
  const firstXy = job.first === 'front' ? job.zero.frontUp.xy : job.zero.backUp.xy;
  const secondXy = job.first === 'front' ? job.zero.backUp.xy : job.zero.frontUp.xy;
  const zero =
    secondXy.kind === 'kept' ? `kept (${secondXy.how})` : `found again (${secondXy.kind})`;
  return [
    `${first.faceUp} first, turned ${job.turn.replace('-', ' ').replace(/.$/, (axis) => axis.toUpperCase())}`,
    ...locatingWords(job),
    `zero from ${firstXy.kind.replaceAll('-', ' ')}, then ${zero}`,
  ].join(' · ');
}

function needTable(job: Job, prediction: Prediction): string[] {
  const { units } = job.shop;
  const head = ['  limit', 'nominal', 'mean', '95 % of parts', 'good parts', ''];
  const rows = prediction.needs.flatMap((need) => {
    const judged = [
      certainChanceText(need, prediction.digitsAsked),
      metBy(need, job.goodEnoughShare),
    ];
    const { low, high } = need.limits;
    if (need.shape === 'radial' || need.largest === null)
      return [
        [limitWords(low, high, units), ...figureWords(need, need, prediction, units), ...judged],
      ];
    return [
      [limitWords(low, null, units), ...figureWords(need, need, prediction, units), ...judged],
      [
        limitWords(null, high, units),
        ...figureWords(need, need.largest, prediction, units),
        '',
        '',
      ],
    ];
  });
  const [first, ...lines] = columns(
    [head, ...rows.map(([limit, ...rest]) => [`  ${limit!}`, ...rest])],
    [1, 2, 4],
  );
  // Names are as long as people like, so each has a line of its own.
  const named = prediction.needs.flatMap((need) => [
    ...wrapped(need.name, '  '),
    ...lines.splice(0, need.shape === 'plain' && need.largest !== null ? 2 : 1),
  ]);
  const perHundred = prediction.needs
    .filter((need) => need.unit === 'mm per 100')
    .map(({ name }) => name);
  return [
    first!,
    ...named,
    ...(perHundred.length === 0
      ? []
      : wrapped(`over 100 ${units === 'inch' ? 'in' : 'mm'}: ${perHundred.join(', ')}`, '  ')),
    `figures in ${units === 'inch' ? 'inches' : 'mm'}; met means ${levelText(job.goodEnoughShare)} of parts or more`,
    ...batchLines(prediction.batch),
  ];
}

function figureWords(
  need: NeedPrediction,
  figures: Figures,
  { digitsAsked }: Prediction,
  units: Units,
): string[] {
  const bare = (text: string): string => text.replace(/ (mm|in)$/, '');
  return [
    bare(lengthText(figures.nominal, units)),
    need.moments === 'no mean' ? 'none' : bare(meanText(figures, digitsAsked, units)),
    bare(endsText(figures, digitsAsked, units)),
  ];
}

/** `≤ 0.2 mm`, `≥ 2.5 mm`, `60.5..61.5 mm`, `±0.1 mm`. */
export function limitWords(low: number | null, high: number | null, units: Units): string {
  if (low === null) return high === null ? '' : `≤ ${lengthText(high, units)}`;
  if (high === null) return `≥ ${lengthText(low, units)}`;
  if (low === -high) return `±${lengthText(high, units)}`;
  return `${lengthText(low, units).split(' ')[0]!}..${lengthText(high, units)}`;
}

function batchLines({ partCount, allGood, expectedBad, rest }: BatchPrediction): string[] {
  if (partCount === 1) return [];
  if (allGood === null)
    return wrapped(
      `of ${partCount} parts made with one set-up, ${Number(expectedBad.toPrecision(2))} are expected not to come out right; how they hang together was not worked out.`,
      '  ',
    );
  return wrapped(
    `of ${partCount} parts made with one set-up, all come out right with a chance of ${chanceText(allGood)}; ${Number(expectedBad.toPrecision(2))} of them are expected not to.${restWords(rest)}`,
    '  ',
  );
}

function restWords(rest: BatchPrediction['rest']): string {
  if (rest === null) return '';
  const { firstGood, firstCorrected } = rest;
  const said = [
    firstGood === null
      ? ''
      : ` With the first measured and found good, the rest come out right with ${chanceText(firstGood.chance)};`,
    firstCorrected === null
      ? ''
      : ` when every need is corrected by what the first part measures, with ${chanceText(firstCorrected.chance)}.`,
  ];
  return said.join('').replace(/;$/, '.');
}

const ENDED: Readonly<Record<Prediction['ended'], string>> = {
  digits: '',
  trials: '',
  seconds: ', stopped when the time was up',
  interrupted: ', STOPPED BEFORE ITS END: this is what was known by then',
};

function assumedLines(prediction: Prediction): string[] {
  const assumed = prediction.sources.filter((source) => source.because !== null);
  if (assumed.length === 0) return ['Nothing was assumed: every spread was stated.', ''];
  const list = assumed.map(({ name, text }) => `${name} ${text}`).join('; ');
  return [
    ...wrapped(`Assumed, since nobody stated it (common practice, no source): ${list}.`, '  '),
    '',
  ];
}
