// Job texts that cannot be meant, of the ways of locating other than stops: what is changed, and all that is said of it.
import { describe, expect, it } from 'vitest';
import { faultsOf } from './from-disk.ts';
import { DOWELS, FENCE, NEST, PART } from './locating-cases.ts';
import { CASES, type Case, type Change } from './locating-faults.ts';
import { otherwise, SHOP } from './sound.ts';

const VEE =
  '  - {name: vee 90, kind: vee, angle: 90 deg, diameter: 12, flute: 10, stick-out: 30}\ntouch-off:';
const SECOND = '  - {name: flat 3, kind: flat, diameter: 3, flute: 12, stick-out: 30}\ntouch-off:';

const WITH_CUTTER: readonly (readonly [cutter: string, ...Case])[] = [
  [
    SECOND,
    NEST,
    [['cutter: flat 6\n  clear', 'clear']],
    'job.yaml:13:3: the nest does not say which cutter cuts it; write cutter: flat 6',
  ],
  [
    VEE,
    NEST,
    [['cutter: flat 6\n  clear', 'cutter: vee 90\n  clear']],
    'job.yaml:13:11: vee 90 is a vee cutter, which cannot mill an upright face; name a flat cutter',
  ],
  [
    SECOND,
    FENCE,
    [['made: set-by-hand', 'made: milled-in-place']],
    'job.yaml:16:9: milled-in-place does not say which cutter mills the stops; write cutter: flat 6',
  ],
  [
    VEE,
    FENCE,
    [['made: set-by-hand', 'made: milled-in-place\n  cutter: vee 90']],
    'job.yaml:17:11: vee 90 is a vee cutter, which cannot mill an upright face; name a flat cutter',
  ],
  [
    VEE,
    PART,
    [['depth: through, cutter: flat 6', 'depth: through, cutter: vee 90']],
    'job.yaml:9:120: vee 90 is a vee cutter, which leaves no upright wall, and body is cut: profile-outside; write cut: chamfer, or name a flat cutter\njob.yaml:14:11: body is cut with vee 90, whose walls are not upright; cut it with a flat cutter',
  ],
];

const changed = (job: string, changes: readonly Change[]): string =>
  changes.reduce((text, [part, instead]) => otherwise(text, part, instead), job);

describe('a way of locating', () => {
  it.each([
    ['dowels', DOWELS],
    ['a fence and a dowel', FENCE],
    ['a nest', NEST],
    ['a nest round a part', PART],
  ])('is read: %s', (_, job) => {
    expect(faultsOf(job, SHOP)).toEqual([]);
  });

  it.each(CASES)('is told what is wrong with it: %#', (job, changes, said) => {
    expect(faultsOf(changed(job, changes), SHOP).join('\n')).toBe(said);
  });

  it.each(WITH_CUTTER)(
    'is told what is wrong with its cutter: %#',
    (cutter, job, changes, said) => {
      expect(
        faultsOf(changed(job, changes), otherwise(SHOP, 'touch-off:', cutter)).join('\n'),
      ).toBe(said);
    },
  );
});
