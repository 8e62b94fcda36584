import type { Step } from '../jig/answer.ts';
import type { LevelledBoard } from '../jig/program/level-board.ts';
import type { Job, Units } from '../job/job.ts';
import type { BedCare } from '../job/readings/bed-care.ts';
import type { BedAdvice } from '../measure/bed-advice.ts';
import { SHIMS_GOOD_TO_MM } from '../measure/bed-advice.ts';
import type { BedHeights } from '../job/shop.ts';
import type { AcrossPart, NeedEffect, PartPlace } from '../measure/bed-effect.ts';
import type { BedSurvey } from '../measure/bed-survey.ts';
import { half95, type Estimate } from '../measure/estimate.ts';
import type { ShimAnswer } from '../measure/shims.ts';
import { THINNEST_BOARD_MM, type SkimPlan } from '../measure/skim.ts';
import { unreachable } from '../num/invariant.ts';
import { deviationText, intervalText, lengthText, shareText } from '../sheet/words.ts';
import { estimateJson } from './estimate-json.ts';
import { columns, wrapped } from './lines.ts';

/** Everything that is told of a bed. */
export interface BedFindings {
  readonly care: BedCare;
  readonly job: Job | null;
  readonly survey: BedSurvey;
  readonly shims: ShimAnswer;
  readonly skim: SkimPlan;
  /** Null without a job. */
  readonly effects: readonly NeedEffect[] | null;
  readonly across: readonly AcrossPart[] | null;
  readonly places: readonly PartPlace[] | null;
  readonly heights: BedHeights;
  readonly advice: BedAdvice;
  /** How the board is skimmed, or why no program does it. */
  readonly level: Step<LevelledBoard>;
}

/** For a person at a terminal. */
export function bedText(findings: BedFindings): string {
  const { care, survey } = findings;
  const { units } = care;
  const when = care.measured === null ? 'no date written' : `measured ${care.measured}`;
  return [
    ...wrapped(
      `${care.shop.name}: the bed, ${care.readings.length} heights of ${care.readIn}, ${when}, read with ${care.gaugeText}`,
      '  ',
    ),
    '',
    ...columns(
      [
        ['  rises to the right', per200(survey.leanX, units)],
        ['  rises away from you', per200(survey.leanY, units)],
        [
          '  out of parallel to the travel',
          `${deviationText(survey.rangeMm, units)}, highest less lowest`,
        ],
        [
          '  flatness',
          `${deviationText(survey.minimumZoneMm, units)} (off the mean plane ${deviationText(survey.leastSquaresMm, units)})`,
        ],
        ['  a flat bed read with this gauge', deviationText(survey.gaugeAloneMm, units)],
      ],
      [],
    ),
    '',
    ...effectLines(findings),
    ...shimLines(findings),
    ...skimLines(findings),
    ...wrapped(`What to do: ${adviceWords(findings.advice, units)}`),
  ].join('\n');
}

const per200 = (lean: Estimate, units: Units): string =>
  `${deviationText(200 * lean.value, units)} per 200 mm, ±${deviationText(200 * half95(lean), units)} (95 in 100)`;

function effectLines({ job, across, effects, places, care }: BedFindings): string[] {
  if (job === null || across === null || effects === null || places === null)
    return [
      ...wrapped('Name a job file instead of the shop file to see what it does to a part.'),
      '',
    ];
  const { units } = care;
  return [
    `What it does to ${job.name}, place by place:`,
    ...across.flatMap(({ faceUp, fromMm, toMm }) =>
      wrapped(
        `- ${faceUp} up: cuts come out ${intervalText([fromMm, toMm], units)} deeper over the blank than where z is touched`,
        '  ',
      ),
    ),
    ...effects.flatMap(({ need, effect, margin }) =>
      wrapped(
        `- ${need}: ${deviationText(effect.value, units)} ±${deviationText(half95(effect), units)}, of the ${lengthText(margin, units)} it may be off`,
        '  ',
      ),
    ),
    ...(effects.length === 0 ? ['  no need of this job is judged by depth'] : []),
    ...(places.length === 0
      ? []
      : [
          ...wrapped(
            'The bed where its features lie and where z is touched, over the mean of all readings:',
          ),
          ...columns(
            places.map(({ at, height }) => [
              `  at ${lengthText(at.x, units)}, ${lengthText(at.y, units)}`,
              `${deviationText(height.value, units)} ±${deviationText(half95(height), units)}`,
            ]),
            [],
          ),
        ]),
    '',
  ];
}

function shimLines({ shims, care }: BedFindings): string[] {
  const { units } = care;
  switch (shims.kind) {
    case 'no stock':
      return ['Shims: the shop file has none (shims: {paper: 0.10 ±0.005}).', ''];
    case 'no hold':
      return [
        ...wrapped(
          'Shims: the shop file does not say where at least three screws hold the board (bed: screws: [[30, 30], ...]).',
        ),
        '',
      ];
    case 'leave alone':
      return ['Shims: none at hand makes it better.', ''];
    case 'plan': {
      const { plan } = shims;
      const lifted = plan.at.filter(({ stack }) => stack.pieces.length > 0);
      const sd = Math.max(...plan.sdsMm);
      return [
        'Shims under the bed screws:',
        ...columns(
          lifted.map(({ screw, stack }) => [
            `  at ${screw.x}, ${screw.y}`,
            stack.pieces.join(' + '),
            lengthText(stack.thickMm, units),
          ]),
          [2],
        ),
        ...wrapped(
          `then: out of parallel ${deviationText(plan.expected.rangeMm, units)}, flatness ${deviationText(plan.expected.flatnessMm, units)}; each height is good to ±${deviationText(2 * sd, units)} by shims and gauge, and shims as a whole to about ${lengthText(SHIMS_GOOD_TO_MM, units)} (common practice). Measure again afterwards.`,
          '  ',
        ),
        '',
      ];
    }
    default:
      return unreachable(shims);
  }
}

function skimLines({ skim, level, care }: BedFindings): string[] {
  const { units } = care;
  const board = skim.isThickEnough
    ? `the board keeps ${lengthText(skim.thinnestMm, units)} at its thinnest`
    : `the board would keep only ${lengthText(Math.max(0, skim.thinnestMm), units)}, and less than ${lengthText(THINNEST_BOARD_MM, units)} lets go of screws`;
  const how =
    level.kind === 'made'
      ? `${level.value.passCount} ${level.value.passCount === 1 ? 'pass' : 'passes'} with ${level.value.program.cutter.name}`
      : 'no program, for the shop file has no flat cutter with speed and feed';
  return [
    ...wrapped(
      `Or skim: ${deviationText(skim.depthMm, units)} below the highest place, ${how}; ${board}. Take screws, clamps and inserts out of the cutter's way first.`,
    ),
    '',
  ];
}

function adviceWords(advice: BedAdvice, units: Units): string {
  switch (advice.kind) {
    case 'leave alone':
      return advice.because === 'parallel'
        ? `leave it alone; ${deviationText(advice.rangeMm, units)} is within what shims are good to.`
        : `leave it alone for this part; it takes at most ${shareText(advice.share)} of what a need allows.`;
    case 'shim':
      return `shim it, to ${deviationText(advice.expectedMm, units)}.`;
    case 'skim':
      return advice.shimmedMm === null
        ? `skim it, ${deviationText(advice.depthMm, units)} deep.`
        : `skim it, ${deviationText(advice.depthMm, units)} deep; shims would leave ${deviationText(advice.shimmedMm, units)}.`;
    case 'new board':
      return `a new board; this one cannot be shimmed with what is at hand and is too thin to skim.`;
    default:
      return unreachable(advice);
  }
}

/** For programs: mm and tangents. */
export function bedJson(findings: BedFindings): string {
  const { care, survey, shims, skim, effects, across, places, advice } = findings;
  return JSON.stringify(
    {
      json: 1,
      shop: care.shop.name,
      measured: care.measured,
      readings: care.readings.length,
      gauge: { sdMm: care.gaugeSdMm, text: care.gaugeText },
      leanX: estimateJson(survey.leanX),
      leanY: estimateJson(survey.leanY),
      rangeMm: survey.rangeMm,
      flatnessMm: { leastSquares: survey.leastSquaresMm, minimumZone: survey.minimumZoneMm },
      gaugeAloneMm: survey.gaugeAloneMm,
      unevenSdMm: survey.uneven.sd,
      needs:
        effects?.map(({ need, effect, margin }) => ({
          need,
          effect: estimateJson(effect),
          margin,
        })) ?? null,
      acrossPart: across,
      places: places?.map(({ at, height }) => ({ at, height: estimateJson(height) })) ?? null,
      shims: shims.kind === 'plan' ? { kind: shims.kind, ...shims.plan } : shims,
      skim,
      advice,
    },
    null,
    2,
  );
}
