import type { Action } from '../advise/actions/action.ts';
import type { Advice, Improvement } from '../advise/actions/improve.ts';
import { editsText } from '../job/edit.ts';

/** Advice for programs; chances and gains 0..1, each with its standard error. */
export function improveJson(
  found: Improvement,
  { seed, trials }: { readonly seed: number; readonly trials: number },
): string {
  const { job, outcome, worst, hurts, isGoodEnough, singles, limit, sequence } = found;
  return JSON.stringify(
    {
      json: 1,
      job: job.name,
      seed,
      trials,
      goodEnough: job.goodEnoughShare,
      leaveItAlone: isGoodEnough,
      allGood: outcome.all,
      needs: outcome.needs.map(({ name, chance }) => ({ name, ...chance })),
      worst: {
        need: worst.name,
        ...worst.chance,
        hurts: hurts.filter(({ share }) => share > 0.001),
      },
      sequence:
        sequence === null
          ? null
          : {
              steps: sequence.steps.map(({ action, all, adds }) => ({
                ...actionJson(action),
                allGood: all,
                adds,
              })),
              edits: sequence.edits,
              write: editsText(sequence.edits),
              allGood: sequence.outcome.all,
              gain: sequence.gain,
              minutes: sequence.minutes,
              goodEnough: sequence.isGoodEnough,
            },
      singles: singles.map(adviceJson),
      otherWay: found.otherWay === null ? null : adviceJson(found.otherWay),
      limit: limit === null ? null : adviceJson(limit),
      lessThanAPoint: found.noGain.map(({ name }) => name),
      notPossible: found.notPossible.map(({ action, because }) => ({ name: action.name, because })),
    },
    null,
    2,
  );
}

const actionJson = ({ name, words, minutes, dialledTurns }: Action) => ({
  name,
  words,
  minutes,
  testPieceTurns: dialledTurns,
});

const adviceJson = ({ action, edits, outcome, gain, why, instead }: Advice) => ({
  ...actionJson(action),
  edits,
  write: editsText(edits),
  allGood: outcome.all,
  gain,
  why,
  instead: instead.map((one) => ({ ...actionJson(one.action), gain: one.gain })),
});
