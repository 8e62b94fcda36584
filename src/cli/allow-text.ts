import { MOST, type Allowance, type Allowed } from '../advise/allow/allow.ts';
import { feelerFor, gaugeFor, type Gauge } from '../advise/allow/gauges.ts';
import { overOf, spreadTold } from '../advise/allow/told-size.ts';
import type { Wish, Yield } from '../advise/allow/yields.ts';
import type { Job } from '../job/job.ts';
import { limitsOf, sdOf } from '../num/spread-of.ts';
import { percentText } from '../sheet/advice-words.ts';
import { lengthText, levelText } from '../sheet/words.ts';
import { columns, WIDTH, wrapped } from './lines.ts';

/** A figure is told when it changes the chance by so much. */
const POINT = 0.01;

/** How good each thing must be, for a terminal of 80 columns. */
export function allowText(
  found: Allowance,
  gauges: readonly Gauge[],
  trials: number,
  seed: number,
): string {
  const { job, asIs, wish } = found;
  return [
    ...wrapped(`${job.name}: how good must it be? The same ${trials} blanks each (seed ${seed})`),
    ...wrapped(
      `Wished: ${wishWords(wish)}. As it is: ${yieldWords(found, asIs)}, so the wish is ${asIs.isMet ? 'met' : 'not met'}.`,
    ),
    ...batchLines(found),
    '',
    ...(asIs.isMet ? slackLines(found, gauges) : tightLines(found, gauges)),
    '',
    ...wrapped(
      'Each figure stands for that one thing, all others as they are now, and is rounded down. Gauges: "your" ones are from the shop file; the others, and how good they are, are common practice, no source. A gauge would do when its own error is no larger than what is allowed: measure with it, and set or sort by what it says.',
    ),
  ].join('\n');
}

function wishWords(wish: Wish): string {
  const share = levelText(wish.share);
  if (wish.kind === 'each-need') return `each need met on ${share} of the blanks`;
  return wish.partCount === 1
    ? `every need met on ${share} of the blanks`
    : `all of ${wish.partCount} blanks good in ${share} of the batches`;
}

function yieldWords({ job, wish }: Allowance, { chance, need }: Yield): string {
  const share = percentText(chance);
  if (need !== null) return `the least sure need, ${job.needs[need]!.name}, on ${share}`;
  return wish.kind === 'all-of' && wish.partCount > 1
    ? `all ${wish.partCount} are good in ${share} of the batches`
    : `every need is met on ${share}`;
}

function batchLines({ batch }: Allowance): readonly string[] {
  if (batch === null) return [];
  const { partCount, allGood, onePart } = batch;
  const strangers = onePart.value ** partCount;
  const se = partCount * onePart.value ** (partCount - 1) * onePart.se;
  return wrapped(
    `A batch of ${partCount}: all of them good in ${percentText(allGood)} of the batches, one blank by itself in ${percentText(onePart)}. What is set up once is off alike for all of them; were each blank set up anew, it would be ${percentText({ value: strangers, se })}.`,
  );
}

const byOf = ({ verdict }: Allowed): number => (verdict.kind === 'up to' ? verdict.by : Infinity);

function slackLines(found: Allowance, gauges: readonly Gauge[]): readonly string[] {
  const limited = found.each
    .filter(({ verdict }) => verdict.kind === 'up to')
    .toSorted((a, b) => byOf(a) - byOf(b));
  const any = found.each.filter(({ verdict }) => verdict.kind === 'any');
  return [
    ...(limited.length === 0 ? [] : ['May be worse, each by itself:', '']),
    ...rows(found.job, limited, gauges),
    ...(any.length === 0 ? [] : ['', ...anyLines(found.job, any)]),
    '',
    ...togetherLines(found),
  ];
}

function tightLines(found: Allowance, gauges: readonly Gauge[]): readonly string[] {
  const { job, each, asIs } = found;
  const enough = each
    .filter(({ verdict }) => verdict.kind === 'up to')
    .toSorted((a, b) => byOf(b) - byOf(a));
  const not = each.flatMap((one) =>
    one.verdict.kind === 'not enough'
      ? [{ words: one.group.words, reached: one.verdict.without }]
      : [],
  );
  const ranked = not.toSorted((a, b) => b.reached.chance.value - a.reached.chance.value);
  const worth = ranked.filter(({ reached }) => reached.chance.value - asIs.chance.value >= POINT);
  const [start] = worth;
  return [
    ...(enough.length === 0
      ? wrapped(
          'No one thing is enough: even perfect, each by itself would not do.' +
            (start === undefined
              ? ' None of them brings a point.'
              : ` Start with ${start.words}: without it ${percentText(start.reached.chance)} instead of ${percentText(asIs.chance)}.`),
        )
      : ['One of these would do by itself, all else as it is:', '', ...rows(job, enough, gauges)]),
    '',
    ...(worth.length === 0
      ? []
      : [
          `Even perfect, these by themselves would not do; ${enough.length === 0 ? 'start at the top' : 'they bring'}:`,
          '',
          ...columns(
            [
              ['', 'now', 'without it'],
              ...worth.map(({ words, reached }) => [
                `  ${words}`,
                percentText(asIs.chance),
                percentText(reached.chance),
              ]),
            ],
            [1, 2],
          ),
          '',
        ]),
    ...othersLine(not.length - worth.length),
    ...togetherLines(found),
  ];
}

const othersLine = (count: number): readonly string[] =>
  count === 0
    ? []
    : [
        ...wrapped(
          `${count === 1 ? 'One other thing' : `${count} other things`} would not bring a point even if perfect: leave ${count === 1 ? 'it' : 'them'} alone.`,
        ),
        '',
      ];

function togetherLines({ together, asIs }: Allowance): readonly string[] {
  if (together === null)
    return wrapped(
      'Even with nothing off at all it would not do: a need asks for something else than what is drawn. Look at flipwright check.',
    );
  const { by } = together;
  if (by >= MOST) return wrapped(`Everything together may be ${MOST} times as large, or more.`);
  return asIs.isMet
    ? wrapped(`Everything together may be ${timesText(by)} times as large as it is.`)
    : wrapped(
        `Or everything together ${timesText(1 / by, 'up')} times smaller (${levelText(Math.floor(by * 100) / 100)} of what it is).`,
      );
}

/** Two digits, on the safe side. */
function timesText(times: number, way: 'down' | 'up' = 'down'): string {
  const steps = times < 10 ? 10 : 1;
  const whole = way === 'down' ? Math.floor(times * steps) : Math.ceil(times * steps);
  return String(whole / steps);
}

function rows(job: Job, each: readonly Allowed[], gauges: readonly Gauge[]): readonly string[] {
  const { units } = job.shop;
  return each.flatMap((one) => {
    const [source] = one.group.sources;
    const { verdict } = one;
    if (verdict.kind !== 'up to' || source === undefined) return [];
    const now = spreadTold(source, 1, units);
    const then = spreadTold(source, verdict.by, units);
    const sure = Math.max(1, Math.ceil((100 * verdict.sure) / verdict.by));
    return [
      one.group.words,
      `    is ${now.padEnd(IS)}  up to ${then} (± ${sure} %)`,
      ...gaugeLines(job, one, gauges),
    ];
  });
}

/** Room for a spread as it is now. */
const IS = 27;

function gaugeLines(
  job: Job,
  { group, verdict }: Allowed,
  gauges: readonly Gauge[],
): readonly string[] {
  const [source] = group.sources;
  if (verdict.kind !== 'up to' || source === undefined) return [];
  const { distribution } = verdict;
  if (group.measure === 'gap') {
    // All but 1 in 20 of a half-normal gap are smaller than this; of others their end.
    const most =
      distribution.kind === 'half-normal' ? 1.96 * distribution.sigma : limitsOf(distribution)[1];
    const feeler = feelerFor(most);
    return block(
      feeler === null
        ? 'finer than any feeler shows'
        : `a feeler of ${lengthText(feeler, job.shop.units)} must not go in`,
    );
  }
  const fit = gaugeFor(gauges, group.measure, overOf(source.text), sdOf(distribution));
  if (fit === null) return [];
  const named = ({ words, goodTo }: Gauge): string => `${words} (${goodTo})`;
  const { does, doesNot } = fit;
  if (does === null) return block(`no gauge here is fine enough, not even ${named(doesNot!)}`);
  return block(
    doesNot === null
      ? `even ${named(does)} would do`
      : `${named(does)} would do; ${named(doesNot)} would not`,
  );
}

const block = (text: string): readonly string[] =>
  wrapped(text, '', WIDTH - 4).map((line) => `    ${line}`);

function anyLines(job: Job, any: readonly Allowed[]): readonly string[] {
  const { units } = job.shop;
  return [
    ...wrapped(`Could be as bad as you like (tried up to ${MOST} times as large as now):`),
    ...any.flatMap(({ group }) =>
      wrapped(`- ${group.words}: ${spreadTold(group.sources[0]!, MOST, units)}`, '  '),
    ),
  ];
}
