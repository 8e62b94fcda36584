import type { Edit } from '../../job/edit.ts';
import type { Need } from '../../job/job.ts';
import { said } from '../../job/text/said.ts';
import type { Judgements } from '../outcome.ts';
import type { Action, Case } from './action.ts';

/**
 * The limit with which the worst need would be met often enough, when it can be told from the trials: asked of the part,
 * not of the work.
 *
 * @param judged what each need was judged by, of the job as it is.
 */
export function limitActions(
  { job, variants, outcome }: Case,
  judged: readonly Judgements[],
): readonly Action[] {
  const wanted = job.goodEnoughShare;
  const worst = outcome.needs.reduce((a, b) => (b.chance.value < a.chance.value ? b : a));
  const q = outcome.needs.indexOf(worst);
  const need = job.needs[q]!;
  const raw = rawIndex(variants.written(['needs']), need.name);
  if (raw === null) return [];
  const edit = widerLimit(need, judged[q]!, wanted);
  if (edit === null) return [];
  return [
    {
      name: 'a wider limit',
      words: `If the part can bear it, ask for less: ${need.name}, ${edit.key} ${edit.text} instead of ${edit.was}`,
      targets: ['limit'],
      edits: [{ path: ['needs', raw, edit.key], value: edit.value }],
      dialledTurns: 0,
      minutes: 0,
      changes: 'the part',
    },
  ];
}

interface Wider {
  readonly key: string;
  readonly value: NonNullable<Edit['value']>;
  readonly text: string;
  readonly was: string;
}

/** Limits are widened to what one more than the wished share of the trials keeps, rounded outwards to 0.01 mm. */
function widerLimit(need: Need, judged: Judgements, wanted: number): Wider | null {
  const share = Math.min(1, wanted + (1 - wanted) / 4);
  const upper = quantile(judged.highest, share);
  const lower = quantile(judged.lowest, 1 - share);
  const up = (mm: number): number => Math.ceil(mm * 100 - 1e-6) / 100;
  const down = (mm: number): number => Math.floor(mm * 100 + 1e-6) / 100;
  switch (need.kind) {
    case 'concentric':
    case 'misalignment':
    case 'meets':
      return inMm('within', up(upper), need.withinMm);
    case 'lip':
    case 'web':
    case 'wall':
    case 'depth':
    case 'size': {
      // Of two limits only that which is missed more often is widened.
      const { lowMm, highMm } = need.limits;
      const missedLow = lowMm === null ? 0 : shareOf(judged.lowest, (mm) => mm < lowMm);
      const missedHigh = highMm === null ? 0 : shareOf(judged.highest, (mm) => mm > highMm);
      const both = lowMm !== null && highMm !== null;
      if (both && missedLow > 0.002 && missedHigh > 0.002) return null;
      return missedLow >= missedHigh
        ? lowMm === null
          ? null
          : inMm(both ? 'from' : 'at-least', down(lower), lowMm)
        : highMm === null
          ? null
          : inMm('up-to', up(upper), highMm);
    }
    case 'parallel':
    case 'goes-on':
      return null;
  }
}

/** Asking three times less is asking for another part. */
const MOST_TIMES = 3;

const inMm = (key: string, mm: number, wasMm: number): Wider | null =>
  Number.isFinite(mm) && mm !== wasMm && (key !== 'within' || mm <= MOST_TIMES * wasMm)
    ? { key, value: mm, text: `${said(mm)} mm`, was: `${said(wasMm)} mm` }
    : null;

function quantile(column: Float64Array, share: number): number {
  const sorted = column.toSorted();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}

function shareOf(column: Float64Array, isMeant: (mm: number) => boolean): number {
  return column.filter(isMeant).length / column.length;
}

/** Copies are called after the need that is written: `rim (2,1)`. */
function rawIndex(written: unknown, name: string): number | null {
  if (!Array.isArray(written)) return null;
  const plain = name.replace(/ \(\d+,\d+\)$/, '');
  const found = (written as readonly { readonly name?: unknown }[]).findIndex(
    (one) => one.name === name || one.name === plain,
  );
  return found < 0 ? null : found;
}
