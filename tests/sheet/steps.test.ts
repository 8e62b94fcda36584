import { describe, expect, it } from 'vitest';
import type { StopsJob, Zero } from '../../src/job/job.ts';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import { clock, clockPlain, flat3, paper } from './a-job.ts';
import { inputFor } from './an-input.ts';
import { someJobs } from './some-jobs.ts';

/** The words of the order of work, without markup. */
function workOf(job: StopsJob): string {
  const page = benchSheet(inputFor(job));
  return page
    .slice(page.indexOf('At the machine'))
    .replace(/<[^>]*>/g, ' ')
    .replace(/[\s\u00a0]+/g, ' ');
}

const withBackZero = (xy: Zero['xy']): StopsJob => ({
  ...clockPlain,
  zero: { ...clockPlain.zero, backUp: { ...clockPlain.zero.backUp, xy } },
});

describe('the order of work', () => {
  it('mills the stops before the blank is laid, and then guards the zero', () => {
    const work = workOf(clock);
    expect(work.indexOf('Mill the contact faces')).toBeGreaterThan(0);
    expect(work.indexOf('Mill the contact faces')).toBeLessThan(work.indexOf('Lay the blank down'));
    expect(work).toContain('From now on do not touch X and Y zero');
    expect(workOf(clockPlain)).not.toContain('Mill the contact faces');
    expect(workOf(clockPlain)).toContain('tap the fence');
    expect(workOf(someJobs['small lid, about X, far right, inch']!)).toContain('onto the pins');
  });

  it('touches the bed under the blank before the blank is laid', () => {
    const second = workOf(clock).split('Second placing')[1]!;
    const touch = second.indexOf('Z zero now, before the blank is laid');
    expect(touch).toBeGreaterThan(0);
    expect(touch).toBeLessThan(second.indexOf('Lay the blank down'));
    expect(second).not.toContain('touch Z again');
  });

  it('says what to do with the power for each way of keeping the zero', () => {
    const kept = (how: 'held' | 're-homed' | 'power-off'): string =>
      workOf(withBackZero({ kind: 'kept', how, extra: null }));
    expect(kept('held')).toContain('Leave the machine switched on, do not home it');
    expect(kept('re-homed')).toContain('Home the machine once more now');
    expect(kept('power-off')).toContain('The machine may be switched off here');
    const touched = workOf(withBackZero({ kind: 'stops', at: null, tool: paper }));
    expect(touched).toContain('touched again on the stops');
  });

  it('finds the middle by halving two touches', () => {
    const work = workOf(withBackZero({ kind: 'middle', at: null, tool: paper }));
    expect(work).toContain('half of their sum is X zero');
  });

  it('starts with the face that the job cuts first', () => {
    expect(workOf(clock)).toContain('First placing: front up');
    const { frontUp, backUp } = clock.zero;
    const swapped = { frontUp: backUp, backUp: frontUp };
    expect(workOf({ ...clock, first: 'back', zero: swapped })).toContain('First placing: back up');
  });

  it('tells which edges change places, and where the M goes', () => {
    expect(workOf(clock)).toContain('Left and right edges change places ; near stays near');
    expect(workOf(clock)).toContain('M goes from the near-left to the near-right');
    const tall = workOf(someJobs['tall panel about X']!);
    expect(tall).toContain('Near and far edges change places');
    expect(tall).toContain('M goes from the far-left to the near-left');
  });

  // The nominal blank fills the same rectangle both times: M is 280 mm along X after the turn about Y.
  it('jogs to the M corner as each program counts it', () => {
    const [, first, second] = workOf(clock).split(/First placing|Second placing/);
    expect(first).toContain('jog to X 0 mm, Y 0 mm');
    expect(second).toContain('jog to X 280 mm, Y 0 mm');
  });

  it('presses against the fence first and then slides to the side stop that counts', () => {
    const [, first, second] = workOf(clock).split(/First placing|Second placing/);
    expect(first).toContain('slide it to the left until its left edge touches the first side stop');
    expect(second).toContain(
      'slide it to the right until its left edge touches the second side stop',
    );
    expect(workOf(clockPlain)).not.toContain('second side stop');
  });

  it('sets a second cutter elsewhere when the first cuts the touched place away', () => {
    const [recess, hole, pocket] = clock.features;
    const job = { ...clockPlain, features: [recess!, { ...hole!, cutter: flat3 }, pocket!] };
    expect(workOf(job)).toContain('Set the next cutter (flat 3) to this height there');
    expect(workOf(clockPlain)).not.toContain('Set the next cutter');
  });

  it('warns where two profiles meet inside the wood, in the placing that breaks through', () => {
    const base = clockPlain.features[0]!;
    const profile = (
      name: string,
      face: 'front' | 'back',
      depthMm: number,
    ): StopsJob['features'][number] => ({
      ...base,
      name,
      face,
      cut: 'profile-outside',
      shape: { kind: 'circle', diameterMm: 100 },
      depthMm,
      through: false,
    });
    const both = (front: number, back: number): string =>
      workOf({
        ...clockPlain,
        features: [profile('upper half', 'front', front), profile('lower half', 'back', back)],
      });
    const met = both(12, 13);
    expect(met.match(/This cut sets a piece free/g)).toHaveLength(1);
    expect(met.indexOf('This cut sets a piece free')).toBeGreaterThan(
      met.indexOf('Second placing'),
    );
    expect(both(5, 6)).not.toContain('This cut sets a piece free');
  });

  it('feels what must touch: buttons at each, an arm on the side at one end at least', () => {
    expect(workOf(clock)).toContain('At the side stop it must not go in.');
    expect(workOf(clockPlain)).toContain(
      'Along the side stop it must not go in at one end at least.',
    );
  });

  it('looks for lost steps over the M corner, not at a display', () => {
    expect(workOf(clock)).toContain('It must stand over the M corner as it did before');
    expect(workOf(clock)).not.toContain('go back to X and Y zero');
  });

  it('has sizes measured at half thickness, as the model means them', () => {
    expect(workOf(clockPlain)).toContain('both at half the thickness, 12 mm from either face');
  });

  it('warns before a cut that sets a piece free', () => {
    const page = benchSheet(inputFor(someJobs['small lid, about X, far right, inch']!));
    expect(page).toContain('Loose pieces:');
    expect(page).toContain('This cut sets a piece free');
    expect(benchSheet(inputFor(clock))).not.toContain('piece free');
  });
});
