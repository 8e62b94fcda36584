import { describe, expect, it } from 'vitest';
import { stopsOf } from '../../src/jig/stops.ts';
import type { StopsJob } from '../../src/job/job.ts';
import { aJob, placed } from './a-job.ts';
import { expectTrueRemedies, followed, hung, made, outline, withBand } from './remedy-laws.ts';

function refusal(job: StopsJob): { because: string; wouldFit: string } {
  const found = stopsOf(job, placed(job));
  if (found.kind === 'made') throw new Error('a stop was made');
  return { because: found.because, wouldFit: found.wouldFit };
}

describe('what would fit, when something strikes a stop', () => {
  // Tip 0.5 below the bed, shoe 15 above it: 14.5 over heads at 12.6, where 2 must be free.
  const low = hung(
    aJob({ features: [outline], stops: { band: { kind: 'plain', heightMm: 7 } } }),
    'dustShoe',
    15,
  );

  it('is a height at which the screw heads are lower too, not just the stop', () => {
    const said = refusal(low);
    expect(said.because).toBe(
      'the dust shoe passes 14.5 mm above the bed over the screw heads on the corner stop, near left (top at 12.6 mm, 5.6 mm above the stop) while cutting outline: 0.1 mm too low, with 2 mm to be kept free',
    );
    // From 7 down to 6 the heads come out as the stop goes down; under 6 they stand 7.6 on it.
    expect(said.wouldFit).toBe(
      'height: 4.5, or dust-shoe: {from: 15.1} (hung higher, or the cutter sticking out 0.1 mm further)',
    );
    expect([5, 6, 6.9].map((heightMm) => made(withBand(low, { kind: 'plain', heightMm })))).toEqual(
      [false, false, false],
    );
    expect(followed(low, said.wouldFit).map(made)).toEqual([true, true]);
  });

  it('names the worst strike, the heads rather than the stop that they stand on', () => {
    const worse = hung(low, 'dustShoe', 8);
    expect(refusal(worse).because).toContain('over the screw heads on the corner stop, near left');
  });

  it('raises everything that is too low, and says how far the cutter must stick out', () => {
    // The nut reaches 3 outside the blank, over the stop at 7 but not its heads: 7.5 where 9 is wanted.
    const both = hung(hung(low, 'dustShoe', 12), 'colletNut', 8);
    expect(refusal(both).wouldFit).toBe(
      'dust-shoe: {from: 15.1} and collet-nut: {from: 9.5} (the cutter sticking out 3.1 mm further)',
    );
  });

  it('owns up when nothing of that would do', () => {
    // The outline's cutter goes round 3 outside the blank: through whatever stands at its edge.
    const across = aJob({
      features: [
        {
          ...outline,
          shape: { kind: 'rectangle', widthMm: 280, heightMm: 180, cornerRadiusMm: 5 },
        },
      ],
    });
    const said = refusal(across);
    expect(said.because).toContain(
      "the cutter passes 0.5 mm below the bed's surface at the corner stop, near left (top at 8 mm) while",
    );
    expect(said.wouldFit).toBe(
      'neither a lower stop nor a cutter that sticks out 10 mm further clears it: keep outline further from the stop, or set the stop elsewhere (corner, fence, fence-touch, side-touch)',
    );
  });

  it('makes the stops, whichever way of it is followed', () => {
    const { hints, silent } = expectTrueRemedies(51, 10);
    expect(hints).toBeGreaterThan(5);
    expect(silent).toBeLessThan(hints);
  });
});
