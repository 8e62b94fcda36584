import type { Job, Units } from '../job/job.ts';
import type { Correction } from '../job/readings/correction-file.ts';
import type { Offset } from '../measure/dial-in.ts';
import { half95, type Estimate } from '../measure/estimate.ts';
import type { LengthFormula } from '../measure/length-formula.ts';
import type { PieceErrors } from '../measure/piece-errors.ts';
import { schemeChanges, type Scheme } from '../measure/scheme.ts';
import type { WebField } from '../measure/webs.ts';
import { deviationText, lengthText, trueMinus } from '../sheet/words.ts';
import type { LoggedParts } from './learn-log.ts';
import { partsLines } from './learn-parts-text.ts';
import { shopLines, type ShopLearnt } from './learn-shop.ts';
import { estimateJson } from './estimate-json.ts';
import { wrapped } from './lines.ts';
import { untoldWords } from './untold-words.ts';

export interface PieceFindings {
  readonly measured: string;
  readonly errors: PieceErrors;
  readonly webs: WebField | null;
  readonly cutter: string | null;
  /** Where the offsets are worked out for, blank frame. */
  readonly at: { readonly x: number; readonly y: number };
  readonly offsets: readonly Offset[];
}

/** Everything that is told after a job's readings. */
export interface Learned {
  readonly job: Job;
  readonly piece: PieceFindings | null;
  readonly formulas: readonly LengthFormula[];
  /** The correction kept beside the job; null when there is none. */
  readonly stored: (Correction & { readonly file: string }) | null;
  readonly scheme: Scheme;
  readonly parts: LoggedParts | null;
  /** What the parts tell of the shop. */
  readonly shop: ShopLearnt | null;
}

export function learnText(learned: Learned): string {
  const { job, piece, stored, parts } = learned;
  const { units } = job.shop;
  const lines = [
    job.name,
    '',
    ...(piece === null ? [] : pieceLines(piece, units)),
    ...formulaLines(learned.formulas, job),
    ...(stored === null ? [] : storedLines(stored, learned.scheme, units)),
    ...(parts === null
      ? wrapped(
          'No finished parts are logged; after each one: flipwright learn <job> --part 1 --add "<need>=<figure>".',
        )
      : partsLines(parts, units)),
    ...(learned.shop === null ? [] : shopLines(learned.shop, units)),
  ];
  return lines.join('\n').trimEnd();
}

const pm = (one: Estimate, units: Units, times = 1): string =>
  `${deviationText(times * one.value, units)} ±${deviationText(times * half95(one), units)}`;

function pieceLines(
  { measured, errors, webs, at, offsets }: PieceFindings,
  units: Units,
): string[] {
  const { turnCount, lean, fenceAngle, growth, strange, untold } = errors;
  const item = (text: string): string[] => wrapped(`- ${text}`, '  ');
  const turns = turnCount === 1 ? 'turned over once' : `turned over ${turnCount} times`;
  return [
    `Test piece, ${turns}, measured ${measured} (± holds 95 times in 100):`,
    ...[errors.x, errors.y].flatMap((field) =>
      field === null
        ? []
        : item(
            `the back lies ${pm(field.shift, units)} off the front along ${field.axis.toUpperCase()}, in the middle of the combs`,
          ),
    ),
    ...(lean === null ? [] : item(`the Y axis leans right by ${pm(lean, units, 200)} per 200 mm`)),
    ...(fenceAngle === null
      ? []
      : item(
          `the fence is turned counter-clockwise by ${pm(fenceAngle, units, 200)} per 200 mm; turn it back by as much`,
        )),
    ...(growth === null
      ? []
      : item(
          `each wall of a slot is cut ${pm(growth, units)} further than drawn (cutter size less push-off; half the caliper's own zero is in it)`,
        )),
    ...(webs === null ? [] : webLines(webs, units)),
    ...strange.flatMap(({ axis, slope, estimate }) =>
      item(
        `strange: along ${axis.toUpperCase()} the offset grows by ${pm(estimate, units, 100)} per 100 mm of ${slope === 'perX' ? 'X' : 'Y'}, which turning over does not do: a misreading, wood that moved, or an axis that is not straight`,
      ),
    ),
    '',
    `Dial in for the second placing, for ${lengthText(at.x, units)}, ${lengthText(at.y, units)} on the blank:`,
    ...offsets.map(
      ({ axis, estimate }) =>
        `  ${axis.toUpperCase()} zero ${signed(estimate.value, units)} ±${deviationText(half95(estimate), units)}, ${axis === 'x' ? 'positive to the right' : 'positive away from you'}`,
    ),
    ...offsets
      .filter(({ calipered }) => calipered !== null)
      .flatMap(({ axis }) =>
        wrapped(
          `  along ${axis.toUpperCase()} for a blank of nominal length; to it comes what each blank measures off that, as below`,
          '  ',
        ),
      ),
    ...wrapped(
      turnCount < 2
        ? 'How far the next part may still be off cannot be told from one turn.'
        : `The next part then lies within ${offsets.map(({ axis, nextHalf95 }) => `±${deviationText(nextHalf95, units)} along ${axis.toUpperCase()}`).join(' and ')}, by these turns alone.`,
    ),
    '',
    'What these readings cannot tell apart, and what would:',
    ...untold.flatMap((one) => item(untoldWords(one))),
    '',
  ];
}

function webLines({ level, perX, perY, twistMm }: WebField, units: Units): string[] {
  const item = (text: string): string[] => wrapped(`- ${text}`, '  ');
  return [
    ...item(
      `webs are ${pm(level, units)} thicker than drawn: cut the second side that much deeper`,
    ),
    ...(perX === null
      ? []
      : item(`and thicker to the right by ${pm(perX, units, 200)} per 200 mm`)),
    ...(perY === null ? [] : item(`and thicker upwards by ${pm(perY, units, 200)} per 200 mm`)),
    ...(twistMm === null ? [] : item(`and twisted by ${pm(twistMm, units)}`)),
  ];
}

function formulaLines(formulas: readonly LengthFormula[], { shop, zero, first }: Job): string[] {
  const { units } = shop;
  if (formulas.length === 0)
    return [
      ...wrapped("Measuring each blank's length gains nothing here: in this set-up it drops out."),
      '',
    ];
  const second = first === 'front' ? zero.backUp : zero.frontUp;
  const after = second.xy.kind === 'kept' ? 'kept zero' : 'zero as found';
  return [
    ...formulas.flatMap(({ axis, factor, nominalMm, caliperAtMm, example }) => {
      const A = axis.toUpperCase();
      const edge = axis === 'x' ? 'lower' : 'left';
      const times = Math.abs(factor - 1) < 5e-4 ? '' : `${trueMinus(factor.toFixed(2))} x `;
      return [
        ...wrapped(
          `Or measure each blank and dial it in: caliper its length along ${A}, ${lengthText(caliperAtMm, units)} from its ${edge} edge, and move the ${after} of the second placing along ${A} by ${times}(measured - ${lengthText(nominalMm, units)}).`,
        ),
        ...wrapped(
          `  for example ${lengthText(example.measuredMm, units)} measured: ${A} zero ${signed(example.offsetMm, units)}.`,
          '  ',
        ),
      ];
    }),
    '',
  ];
}

function storedLines(
  { file, measured, turns, x, y, scheme }: Correction & { readonly file: string },
  now: Scheme,
  units: Units,
): string[] {
  const changes = schemeChanges(scheme, now);
  const offsets = [
    ...(x === null ? [] : [`X ${signed(x.offsetMm, units)}`]),
    ...(y === null ? [] : [`Y ${signed(y.offsetMm, units)}`]),
  ];
  return [
    ...wrapped(
      `Kept in ${file}, measured ${measured} over ${turns} ${turns === 1 ? 'turn' : 'turns'}: ${offsets.join(', ')}.`,
    ),
    ...(changes.length === 0
      ? ['It holds for the job as it stands.']
      : [
          ...wrapped('WARNING: it holds for another set-up and is void for this one:'),
          ...changes.flatMap(({ key, was, is }) =>
            wrapped(`- ${key} was ${was}, and is ${is}`, '  '),
          ),
        ]),
    '',
  ];
}

const signed = (mm: number, units: Units): string =>
  `${mm < 0 ? '' : '+'}${deviationText(mm, units)}`;

export function learnJson({ job, piece, formulas, stored, scheme, parts, shop }: Learned): string {
  const figures = (one: Estimate | null) => (one === null ? null : estimateJson(one));
  return JSON.stringify(
    {
      json: 1,
      job: job.name,
      testPiece:
        piece === null
          ? null
          : {
              measured: piece.measured,
              turns: piece.errors.turnCount,
              shiftX: figures(piece.errors.x?.shift ?? null),
              shiftY: figures(piece.errors.y?.shift ?? null),
              lean: figures(piece.errors.lean),
              fenceAngle: figures(piece.errors.fenceAngle),
              growth: figures(piece.errors.growth),
              webs:
                piece.webs === null
                  ? null
                  : {
                      level: figures(piece.webs.level),
                      perX: figures(piece.webs.perX),
                      perY: figures(piece.webs.perY),
                      twist: figures(piece.webs.twistMm),
                    },
              strange: piece.errors.strange.map(({ axis, slope, estimate }) => ({
                axis,
                slope,
                ...figures(estimate),
              })),
              untold: piece.errors.untold,
              dialIn: {
                at: piece.at,
                offsets: piece.offsets.map(({ axis, estimate, nextHalf95, calipered }) => ({
                  axis,
                  ...figures(estimate),
                  forNominalLength: calipered !== null,
                  nextHalf95: Number.isFinite(nextHalf95) ? nextHalf95 : null,
                })),
              },
            },
      byLength: formulas,
      kept: stored === null ? null : { ...stored, changes: schemeChanges(stored.scheme, scheme) },
      parts,
      shop:
        shop === null
          ? null
          : shop.told.kind !== 'learnt'
            ? { kind: shop.told.kind }
            : {
                kind: 'learnt',
                because: shop.because,
                figures: shop.told.figures.map(({ of, before, after, isTold }) => ({
                  of,
                  before,
                  ...figures(after),
                  isTold,
                })),
              },
    },
    null,
    2,
  );
}
