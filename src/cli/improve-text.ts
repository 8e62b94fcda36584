import type { Advice, Improvement } from '../advise/actions/improve.ts';
import { editsText } from '../job/edit.ts';
import {
  hurtsSentence,
  percentText,
  pointsText,
  paysSentence,
  whySentence,
} from '../sheet/advice-words.ts';
import { levelText } from '../sheet/words.ts';
import { flow } from './flow.ts';

/** What to do about a job, for a terminal of 80 columns. */
export function improveText(found: Improvement, trials: number, seed: number): string {
  const { job, worst, outcome, hurts, isGoodEnough } = found;
  const wanted = levelText(job.goodEnoughShare);
  const head = flow(
    `${job.name}: what to do (the same ${trials} blanks for everything, seed ${seed})`,
  );
  if (isGoodEnough)
    return [
      ...head,
      '',
      ...flow(
        `Leave it alone. Every need is met often enough: the least sure, "${worst.name}", for ${percentText(worst.chance)} of parts, and ${wanted} is wanted. What is left to do are the checks on the bench sheet.`,
      ),
    ].join('\n');
  return [
    ...head,
    '',
    ...flow(
      `As it is, ${percentText(outcome.all)} of parts come out with every need met. The worst is "${worst.name}": ${percentText(worst.chance)}, and ${wanted} is wanted. ${hurtsSentence(hurts)}`,
    ),
    ...sequenceLines(found),
    ...singleLines(found),
    ...otherWayLines(found),
    ...limitLines(found),
    ...restLines(found),
  ].join('\n');
}

function sequenceLines({ sequence, outcome, job }: Improvement): readonly string[] {
  if (sequence === null)
    return [
      '',
      ...flow(
        'Nothing that is known here gains a point. Ask less of the part, or measure what is only assumed (flipwright check lists it).',
      ),
    ];
  const { steps, minutes, isGoodEnough } = sequence;
  const last = isGoodEnough
    ? 'Then leave it alone: every need is met often enough.'
    : `Then every need is met for ${percentText(sequence.outcome.all)} of parts, which is still less than wanted.`;
  const time = `about ${minutes} minutes${batchWords(job.parts.count)}`;
  return [
    '',
    steps.length === 1 ? `Do this (${time}):` : `Do these, in this order (${time}):`,
    ...steps.flatMap(({ action, all }, k) => {
      const from = k === 0 ? outcome.all : steps[k - 1]!.all;
      return flow(
        `${action.words}: ${percentText(from)} -> ${percentText(all)}${minutesWords(action.minutes)}.`,
        `${k + 1}. `,
      );
    }),
    ...flow(last, '   '),
    ...writeLines(editsText(sequence.edits), '   '),
  ];
}

const batchWords = (count: number): string => (count === 1 ? '' : ` for all ${count} parts`);

const minutesWords = (minutes: number): string =>
  minutes === 0 ? ', no work' : `, ${minutes} min`;

const writeLines = (text: string, indent: string): readonly string[] =>
  text === '' ? [] : flow(text, `${indent}Write `, `${indent}  `);

function singleLines({ singles, sequence }: Improvement): readonly string[] {
  const [first] = singles;
  if (first === undefined) return [];
  const isTold = singles.length === 1 && sequence?.steps.length === 1;
  if (isTold && first.action.name === sequence.steps[0]!.action.name)
    return ['', ...reasonLines(first), ...insteadLines(first)];
  return ['', 'One thing at a time, what gains most first:', ...singles.flatMap(singleOf)];
}

function singleOf(advice: Advice): readonly string[] {
  const { action, gain, edits } = advice;
  return [
    ...flow(`${action.words}: ${pointsText(gain)}${minutesWords(action.minutes)}.`, '- '),
    ...reasonLines(advice),
    ...writeLines(editsText(edits), '  '),
    ...insteadLines(advice),
  ];
}

function reasonLines({ why, action }: Advice): readonly string[] {
  if (action.dialledTurns > 0)
    return flow(
      'Counted for places and for what is left between two pockets; other needs are taken as they are.',
      '  ',
    );
  return why === null ? [] : flow(`${whySentence(why)} ${paysSentence(why)}`.trim(), '  ');
}

function insteadLines({ instead }: Advice): readonly string[] {
  return instead.flatMap(({ action, gain }) =>
    flow(`Or: ${action.words}: ${pointsText(gain)}${minutesWords(action.minutes)}.`, '  '),
  );
}

function otherWayLines({ otherWay }: Improvement): readonly string[] {
  if (otherWay === null) return [];
  const { action, outcome, edits } = otherWay;
  return [
    '',
    ...flow(
      `Another way of locating it does better than these steps: ${action.words}: ${percentText(outcome.all)} (about ${action.minutes} minutes in all; flipwright compare shows every way).`,
    ),
    ...writeLines(editsText(edits), '  '),
  ];
}

function limitLines({ limit, sequence }: Improvement): readonly string[] {
  if (limit === null) return [];
  const { action, outcome } = limit;
  const when = sequence === null ? 'then' : 'then, with all of the above,';
  return [
    '',
    ...flow(`${action.words}: ${when} every need is met for ${percentText(outcome.all)} of parts.`),
  ];
}

function restLines({ noGain, notPossible }: Improvement): readonly string[] {
  const names = [...new Set(noGain.map(({ name }) => name))];
  return [
    ...(names.length === 0
      ? []
      : ['', ...flow(`Tried, and by itself worth less than a point: ${names.join('; ')}.`)]),
    ...(notPossible.length === 0 ? [] : ['', 'Not advised here:']),
    ...notPossible.flatMap(({ action, because }) => flow(`${action.name}: ${because}`, '- ')),
  ];
}
