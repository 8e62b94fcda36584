import { unreachable } from '../num/invariant.ts';
import { tooDeepMm, type CheckedProgram } from '../hold/checked-program.ts';
import type { PlacingPlan } from '../hold/placing-plan.ts';
import type { Job, Units } from '../job/job.ts';
import type { ProgramFit } from '../sweep/program-against-job.ts';
import type { HoldLine } from './hold-words.ts';
import { lengthText } from './words.ts';

/** So many findings of a program are told; how many more there are is always said. */
const TOLD = 12;

/** Whether the program is the right one, and everything in it that is wrong, doubtful or not understood. */
export function programLines(job: Job, { program }: PlacingPlan): readonly HoldLine[] {
  if (program === null) return [];
  const { file, fit } = program;
  const lines: HoldLine[] = [headLine(program)];
  if (fit !== null) lines.push(...fitLines(job, fit, file.file));
  return [...lines, ...findingLines(program)];
}

function headLine({ file, program, fit }: CheckedProgram): HoldLine {
  const { lineCount, moves } = program;
  const read = `${file.file}: ${lineCount} lines, ${moves.length} moves`;
  return fit === null
    ? {
        kind: 'bad',
        text: `${read}; IT IS NOT CHECKED, because some of it is wrong or not understood: the features of the job are looked at instead`,
      }
    : { kind: 'plain', text: `${read}, all understood` };
}

function fitLines(job: Job, fit: ProgramFit, file: string): readonly HoldLine[] {
  const { units } = job.shop;
  const against = againstLine(fit, file, units);
  return [
    against,
    ...(fit.missed.length > 0 ? [bad(`${file} leaves out ${fit.missed.join(', ')}`)] : []),
    ...(fit.lowRapids.length > 0
      ? [
          plain(
            `${file} goes sideways at rapid below the top of the blank in line ${fit.lowRapids[0]!}${fit.lowRapids.length > 1 ? ` and ${fit.lowRapids.length - 1} more` : ''}: make sure that nothing is left to cut there`,
          ),
        ]
      : []),
    ...(tooDeepMm(fit) > 0
      ? [
          bad(
            `${file} cuts ${lengthText(fit.deepestMm, units)} deep, and the job at most ${lengthText(fit.deepestWantedMm, units)}`,
          ),
        ]
      : []),
  ];
}

const bad = (text: string): HoldLine => ({ kind: 'bad', text });
const plain = (text: string): HoldLine => ({ kind: 'plain', text });

function againstLine({ against }: ProgramFit, file: string, units: Units): HoldLine {
  switch (against.kind) {
    case 'agrees':
      return plain(`${file} cuts what the job says, the right way round, from the right zero`);
    case 'agrees-either-way':
      return plain(
        `${file} cuts what the job says; the part is the same mirrored, so nobody can tell whether it was mirrored`,
      );
    case 'not-mirrored':
      return bad(
        `${file} IS NOT MIRRORED (or mirrored twice): it cuts the features as seen from the front`,
      );
    case 'mirrored':
      return bad(`${file} IS MIRRORED, and this face is not turned over`);
    case 'mirrored-other-way':
      return bad(
        `${file} is mirrored about the wrong line: the blank is turned about the other axis`,
      );
    case 'turned-half':
      return bad(`${file} is turned half round against the blank`);
    case 'wrong-zero':
      return bad(
        `${file} would fit if its zero were moved: it cuts ${lengthText(against.byMm.x, units)} along X and ${lengthText(against.byMm.y, units)} along Y off`,
      );
    case 'differs':
      return bad(
        `${file} cuts outside of all features of this face, ${Math.max(1, Math.round(against.outsideShare * 100))} % of it, first in line ${against.line}`,
      );
    case 'cuts-nothing':
      return bad(`${file} cuts nothing below the top of the blank: is its Z zero the job’s?`);
    default:
      return unreachable(against);
  }
}

function findingLines({ file, program }: CheckedProgram): readonly HoldLine[] {
  const order = ['not-understood', 'wrong', 'beware'];
  const sorted = program.findings.toSorted(
    (a, b) => order.indexOf(a.kind) - order.indexOf(b.kind) || a.line - b.line,
  );
  const told = sorted.slice(0, TOLD).map(({ kind, line, message }): HoldLine => ({
    kind: kind === 'beware' ? 'plain' : 'bad',
    text: `${file.file}, line ${line}, ${kind === 'not-understood' ? 'not understood' : kind}: ${message}`,
  }));
  const more = sorted.length - told.length;
  if (more <= 0) return told;
  const isBad = sorted.slice(TOLD).some(({ kind }) => kind !== 'beware');
  return [
    ...told,
    { kind: isBad ? 'bad' : 'plain', text: `${file.file}: ${more} more lines to look at` },
  ];
}
