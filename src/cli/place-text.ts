import { editText } from '../job/edit.ts';
import { fenceIn } from '../job/located.ts';
import type { Job, Need } from '../job/job.ts';
import { hurtsOf } from '../advise/hurts.ts';
import { LEAST_GAIN } from '../advise/numbers.ts';
import type { Better, Placed, Placing } from '../advise/place/place.ts';
import { wayWords } from '../advise/ways/words.ts';
import { hurtWords, percentText, pointsText } from '../sheet/advice-words.ts';
import { deviationText, lengthText, levelText } from '../sheet/words.ts';
import { columns, wrapped } from './lines.ts';
import { placeFigure } from './place-figure.ts';

/** What was found about the places of a job, for a terminal of 80 columns. */
export function placeText(found: Placed, trials: number, seed: number): string {
  const { asWritten, advice, looked, hindrance } = found;
  const { job } = asWritten;
  const head = `${job.name}: ${looked === 0 ? '' : `${looked} looks at other places, `}the same ${trials} blanks each (seed ${seed})`;
  return [
    ...wrapped(head),
    ...(hindrance === null ? [] : wrapped(`As it is written it cannot be made: ${hindrance}.`)),
    '',
    ...chances(found),
    '',
    ...adviceLines(found),
    ...(advice.kind === 'no places' ? [] : ['', ...picture(found)]),
  ].join('\n');
}

function chances({ asWritten, plain, advice }: Placed): readonly string[] {
  const rows: (readonly [string, Placing])[] = [['the job as it is', asWritten]];
  if (plain.kind === 'possible' && advice.kind !== 'no places') rows.push(['plain places', plain]);
  if (advice.kind === 'move') rows.push(['the best places found', advice.found]);
  return columns(
    [
      ['', 'good', 'least sure need'],
      ...rows.map(([name, { outcome }]) => {
        const worst = outcome.needs.reduce((a, b) => (b.chance.value < a.chance.value ? b : a));
        return [name, percentText(outcome.all), `${worst.name}, ${percentText(worst.chance)}`];
      }),
    ],
    [1],
  );
}

function adviceLines(found: Placed): readonly string[] {
  const { advice, asWritten, hindrance } = found;
  switch (advice.kind) {
    case 'no places':
      return wrapped('A nest has no places to move. Look at other ways with: flipwright compare.');
    case 'leave it':
      return [...leaveIt(asWritten, advice.found, hindrance), ...plainLines(found)];
    case 'move':
      return [...moveIt(asWritten, advice.found), ...plainLines(found)];
  }
}

function leaveIt(
  asWritten: Placing,
  found: Better | null,
  hindrance: string | null,
): readonly string[] {
  const { job, outcome } = asWritten;
  const isMet = outcome.needs.every(({ chance }) => chance.value >= job.goodEnoughShare);
  const tried =
    outcome.all.value > 1 - LEAST_GAIN
      ? 'No place can gain a whole point more.'
      : found === null
        ? 'Nothing that was tried is better beyond luck.'
        : `The best found gains ${pointsText(found.gain)}: not worth moving anything for.`;
  const why = isMet
    ? `Every need is met as often as wanted (${levelText(job.goodEnoughShare)}).`
    : `The places are not what is wrong with it: ask flipwright compare, or flipwright allow.${whatHurts(asWritten)}`;
  return wrapped(
    `${hindrance === null ? 'Leave the places as they are.' : 'No better place was found that can be made.'} ${tried} ${why}`,
  );
}

function whatHurts({ job, outcome }: Placing): string {
  const [worst] = outcome.needs
    .map((need, index) => ({ need, index }))
    .toSorted((a, b) => a.need.chance.value - b.need.chance.value);
  if (worst === undefined) return '';
  const words = hurtWords(hurtsOf(job, worst.index));
  return words === '' ? '' : ` The least sure need is ${worst.need.name}${words}.`;
}

function moveIt(asWritten: Placing, found: Better): readonly string[] {
  const { units } = asWritten.job.shop;
  return [
    ...gainLines(asWritten.job, found),
    '',
    ...(found.way === null ? [] : wrapped(`Lay it so: ${wayWords(found.way)}.`, '  ')),
    ...columns(
      found.moved.map(({ words, from, to }) => [
        `  ${words}`,
        lengthText(from, units),
        '->',
        lengthText(to, units),
      ]),
      [1, 3],
    ),
    '',
    'In the job file, write:',
    ...found.edits.map((edit) => `  ${editText(edit)}`),
  ];
}

function gainLines(job: Job, { gain, miss }: Better): readonly string[] {
  if (miss === null)
    return wrapped(
      `Move these. Gain: ${pointsText(gain)} in the chance that all needs are met, counted on blanks that the places were not searched with.`,
    );
  const text = missText(job.needs[miss.index]!, job);
  return wrapped(
    `No blank is good yet, but these places bring it nearer: ${miss.need} misses by ${text(miss.before)} on average now, and then by ${text(miss.after)} (${text(miss.nearer.value)} less, ± ${text(miss.nearer.se)}).`,
  );
}

/** How a figure of a need is told: a turn per 100, else a length. */
const missText =
  (need: Need, { shop: { units } }: Job) =>
  (miss: number): string =>
    need.kind === 'parallel'
      ? `${deviationText(miss * 100, units)} per 100 mm`
      : deviationText(miss, units);

function plainLines({ plain, advice }: Placed): readonly string[] {
  if (plain.kind === 'impossible')
    return wrapped(`With plain places it cannot be made: ${plain.because}.`);
  if (advice.kind !== 'move' || advice.found.gainOverPlain === null) return [];
  return [
    '',
    ...wrapped(
      `Gain over plain places (${plainWords(plain.job)}): ${pointsText(advice.found.gainOverPlain)}.`,
    ),
  ];
}

/** Where most people would put them. */
function plainWords(job: Job): string {
  const fence = fenceIn(job);
  const touches = fence === null ? [] : [fence.fenceTouch];
  const all = job.locating === 'stops' ? [...touches, job.stops.sideTouch] : touches;
  return [
    ...(all.some(({ kind }) => kind === 'buttons')
      ? [
          job.locating === 'stops'
            ? 'buttons a tenth in from the ends, one in the middle'
            : 'buttons a tenth in from the ends',
        ]
      : []),
    ...(all.some(({ kind }) => kind === 'arm') ? ['arms along the first 40 % of an edge'] : []),
    ...(fence?.band.kind === 'narrow' ? ['at half thickness'] : []),
    ...(job.locating === 'dowels' ? ['dowels far apart'] : []),
  ].join(', ');
}

function picture({ asWritten, advice }: Placed): readonly string[] {
  const then = advice.kind === 'move' ? advice.found.job : null;
  return [
    ...wrapped(
      `Front up, near edge below. x: where needs are judged; dots: cuts; o: contacts and dowels as they are${then === null ? '' : '; #: where they should be'}.`,
    ),
    ...placeFigure(asWritten.job, then),
  ];
}
