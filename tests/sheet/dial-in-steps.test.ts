import { describe, expect, it } from 'vitest';
import type { StopsJob } from '../../src/job/job.ts';
import { dialInSteps } from '../../src/sheet/dial-in-steps.ts';
import { plainJob } from '../setup/plain-job.ts';

const wordsOf = (job: StopsJob): readonly string[] =>
  dialInSteps(job).map(({ words }) => words.html.replace(/<[^>]*>/g, '').replace(/\s+/g, ' '));

const axis = { offsetMm: 0.15, half95Mm: 0.04, readingMm: 0.02, calipered: null };
const told = {
  at: { x: 140, y: 90 },
  x: axis,
  y: null,
  turns: 3,
  measured: '2026-11-21',
  file: 'jobs/a.correction.yaml',
};

describe('what the sheet says of dialling in', () => {
  const same = plainJob();
  const opposite = plainJob({
    stops: { ...same.stops, corner: { frontUp: 'near-left', backUp: 'near-right' } },
  });

  it('is which length to caliper where, and by how much the zero moves, with sign and example', () => {
    // Source: registration.md section 2: same corner, W long by d gives (+d, 0); turned about Y the back then
    // lies d too far right on the blank, which is left on the machine: the zero moves right by d.
    const [words, ...more] = wordsOf(same);
    expect(more).toEqual([]);
    expect(words).toMatch(/caliper it along X, 90 mm from its lower edge/);
    expect(words).toMatch(/move the X zero of this placing by \(measured − 280 mm\)/);
    expect(words).toMatch(/280\.3 mm measured: \+0\.30 mm/);
  });

  it('is nothing where the length drops out and nothing was measured', () => {
    expect(wordsOf(opposite)).toEqual([]);
  });

  it('is the offset kept from a test piece, and the length beside only where that was taken out', () => {
    const [stored, ...none] = wordsOf({ ...same, dialled: told });
    expect(stored).toMatch(
      /by X \+0\.15 mm; X positive to the right[^]*kept in a\.correction\.yaml/,
    );
    expect(none).toEqual([]);
    const calipered = { ...told, x: { ...axis, calipered: 0.02 } };
    const both = wordsOf({ ...same, dialled: calipered });
    expect(both[1]).toMatch(/And this blank's own length: caliper it along X/);
  });
});
