import type { Job, Units } from '../job/job.ts';
import { chanceText, deviationText, intervalText, lengthText, shareText } from '../sheet/words.ts';
import type { Figures, NeedPrediction, Prediction, SourceLine } from '../stackup/prediction.ts';
import { columns, wrapped } from './lines.ts';

/** What makes one need: the three biggest sources, worst case, first order, what a gauge would do. */
export function makers(job: Job, prediction: Prediction, need: NeedPrediction): string[] {
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
  return [
    `${need.name}: what makes it`,
    ...(need.moments !== 'known'
      ? wrapped(`  ${FEW_READINGS[need.moments]}`, '  ')
      : prediction.leftOut.includes('shares')
        ? ['  not worked out, since it was stopped']
        : rows.length === 0
          ? ['  nothing is off']
          : columns(rows, [0]).flatMap((row) => wrapped(row, '        '))),
    ...togetherLines(prediction, need),
    ...wrapped(
      `  ${worstWords(prediction, need, job.shop.units)} ${straightWords(prediction, need)}`.trimEnd(),
      '  ',
    ),
    ...measuredLines(need, job.shop.units),
  ];
}

/** What acts together, and what would mend the bad parts most. */
function togetherLines(prediction: Prediction, need: NeedPrediction): string[] {
  if (need.moments !== 'known') return [];
  const mending = need.shares
    .flatMap(({ source, bad }) => (bad === null || bad.share < 0.2 ? [] : [{ source, ...bad }]))
    .sort((a, b) => b.share - a.share)[0];
  const words = (id: string): string =>
    prediction.sources.find(({ name }) => name === id)?.words ?? id;
  const said = [
    need.together?.isFelt === true
      ? ['Some of these act together, so the parts add up to more than all.']
      : [],
    mending === undefined || need.chance > 0.9999
      ? []
      : [
          `Of the bad parts ${shareText(mending.share)} would be good with another draw of one thing alone: ${words(mending.source)}.`,
        ],
  ].flat();
  return said.length === 0 ? [] : wrapped(`  ${said.join(' ')}`, '  ');
}

/** What measuring every part would let through and throw out. */
function measuredLines({ measured, limits }: NeedPrediction, units: Units): string[] {
  if (measured === null) return [];
  const { asIs, guarded, guardMm } = measured;
  const until = [
    limits.low === null ? [] : [`at least ${lengthText(limits.low + guardMm, units)}`],
    limits.high === null ? [] : [`at most ${lengthText(limits.high - guardMm, units)}`],
  ].flat();
  return wrapped(
    `  Measured with that gauge, ${rareText(asIs.falseAccept)} of all parts are bad and pass, ${rareText(asIs.falseReject)} are good and thrown out; when only what reads ${until.join(' and ')} passes, ${rareText(guarded.falseAccept)} and ${rareText(guarded.falseReject)}.`,
    '  ',
  );
}

/** A share that may be small, to two digits: `0.42 %`, `under 0.01 %`. */
const rareText = (share: number): string =>
  share < 1e-4 ? 'under 0.01 %' : `${Number((100 * share).toPrecision(2))} %`;

/** Whether a straight-line sum would have done, and in what it fails where it does. */
function straightWords({ sources }: Prediction, need: NeedPrediction): string {
  const { agrees, chance, timesBad, switching } = need.firstOrder;
  const words = switching
    .slice(0, 2)
    .map((id) => sources.find(({ name }) => name === id)?.words ?? id)
    .join(', ');
  const why =
    words === ''
      ? ''
      : ` What touches, or what counts, switches with ${words}, which it cannot see.`;
  if (timesBad !== null)
    return `A straight-line estimate would say ${chanceText(chance)} good: there are at least ${timesText(timesBad)} times as many bad parts as that. Do not rely on one here.${why}`;
  return agrees
    ? 'A straight-line estimate would do here.'
    : `A straight-line estimate is off in its 95 % ends: do not rely on one here.${why}`;
}

const timesText = (times: number): string =>
  times < 3 ? (Math.floor(times * 2) / 2).toFixed(1) : String(Math.floor(times));

/** What the search came to, which is never more than the truth, and the sum of what each does by itself. */
function worstWords({ leftOut }: Prediction, need: NeedPrediction, units: Units): string {
  const words = (worst: Figures['worst'], largest: Figures['worst']): string =>
    need.shape === 'radial'
      ? deviationText(worst[1], units)
      : intervalText([worst[0], largest[1]], units);
  const largest = need.shape === 'plain' ? (need.largest ?? need) : need;
  const found = words(need.worst, largest.worst);
  const summed = words(need.worstLinear, largest.worstLinear);
  const how = leftOut.includes('worst case')
    ? 'at one corner of the limits, not searched for'
    : 'found within all limits';
  return `Worst case ${how}: ${found} (a straight sum says ${summed}).`;
}

const FEW_READINGS = {
  'no sd':
    'three readings of something have no standard deviation: trust the interval and the chance',
  'no mean': 'two readings of something have no mean: trust the interval and the chance',
} as const;
