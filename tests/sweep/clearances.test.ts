import { describe, expect, it } from 'vitest';
import { moved } from '../../src/plane/move.ts';
import { rectangleOutline } from '../../src/plane/outline.ts';
import type { Body } from '../../src/sweep/body.ts';
import { clearancesOf, lowestOver } from '../../src/sweep/clearances.ts';
import type { Clearance } from '../../src/sweep/clearance.ts';
import { spread } from '../setup/plain-job.ts';
import { aFeature, aJob, placed } from '../jig/a-job.ts';

/** A block 20 x 20 about a place, 10 high. */
const block = (x: number, y: number): Body => ({
  name: 'block',
  outline: moved(rectangleOutline(20, 20, 0, 0.01), { x, y }),
  lowMm: 0,
  highMm: 10,
});

function at(
  clearances: readonly Clearance[],
  placing: Clearance['placing'],
  what: Clearance['what'],
): Clearance {
  return clearances.find((c) => c.placing === placing && c.what === what)!;
}

/** Chords of the axis' way stray 0.02 and insets are 0.001 short: nothing is judged finer. */
const drawnWithinMm = 0.025;

describe('what passes over a body', () => {
  // Blank 280 x 180 x 24; nut radius 10 from 30, spindle 33 from 45, shoe 110 x 90 from 12.
  const drill = aFeature({
    name: 'dowel hole',
    shape: { kind: 'circle', diameterMm: 6 },
    at: { x: 30, y: 90 },
    cut: 'drill',
    depthMm: 10,
  });
  const job = aJob({ features: [drill] });
  const placings = placed(job);

  it('is measured from the tip: blank 24 less 10 deep, plus where each thing begins', () => {
    const found = clearancesOf(job, placings, [block(30, 90)]);
    expect(at(found, 'front-up', 'cutter').lowestMm).toBe(14);
    expect(at(found, 'front-up', 'collet nut').lowestMm).toBe(44);
    expect(at(found, 'front-up', 'spindle').lowestMm).toBe(59);
    expect(at(found, 'front-up', 'dust shoe').lowestMm).toBe(26);
    expect(at(found, 'front-up', 'dust shoe').feature).toBe('dowel hole');
  });

  it('goes by the thinnest blank where Z is touched on top, by the drawing where it is the bed', () => {
    const thin = {
      ...job.blank,
      thickSpread: spread({ kind: 'rectangular', low: -0.3, high: 0.2 }),
    };
    const on = (z: 'top' | 'bed'): typeof job => ({
      ...job,
      blank: thin,
      zero: { ...job.zero, frontUp: { ...job.zero.frontUp, z: { ...job.zero.frontUp.z, on: z } } },
    });
    const cutterOf = (which: typeof job): number | null =>
      at(clearancesOf(which, placings, [block(30, 90)]), 'front-up', 'cutter').lowestMm;
    expect(cutterOf(on('top'))).toBeCloseTo(13.7, 9);
    expect(cutterOf(on('bed'))).toBe(14);
  });

  it('comes down with a cutter that sticks out less than the nut is said to hang above', () => {
    const short = { ...drill, cutter: { ...drill.cutter, stickOutMm: 26 } };
    const found = clearancesOf({ ...job, features: [short] }, placings, [block(30, 90)]);
    expect(at(found, 'front-up', 'collet nut').lowestMm).toBe(40);
    expect(at(found, 'front-up', 'dust shoe').lowestMm).toBe(22);
    expect(at(found, 'front-up', 'cutter').lowestMm).toBe(14);
  });

  it('says nothing of a face that is not up', () => {
    const found = clearancesOf(job, placings, [block(30, 90)]);
    expect(found.filter((c) => c.placing === 'back-up')).toEqual([]);
  });

  it('is told beside the body where it does not come over it, to its nearest wall', () => {
    // The block's near wall is 30 from the drill: cutter 3, nut 10 short of it, spindle 33 over it.
    const found = clearancesOf(job, placings, [block(70, 90)]);
    expect(at(found, 'front-up', 'cutter')).toMatchObject({ lowestMm: null, besideMm: 27 });
    expect(at(found, 'front-up', 'collet nut')).toMatchObject({ lowestMm: null, besideMm: 20 });
    expect(at(found, 'front-up', 'spindle')).toMatchObject({ lowestMm: 59, besideMm: 0 });
    expect(at(found, 'front-up', 'dust shoe')).toMatchObject({ lowestMm: 26, besideMm: 0 });
  });

  it('goes by the shoe along each axis by itself: half of 110 in x, half of 90 in y', () => {
    const beside = (x: number, y: number): number =>
      at(clearancesOf(job, placings, [block(x, y)]), 'front-up', 'dust shoe').besideMm;
    expect(beside(30 + 10 + 55 + 2, 90)).toBeCloseTo(2, 5);
    expect(beside(30, 90 + 10 + 45 + 2)).toBeCloseTo(2, 5);
    // Corner to corner: 3 and 4 beyond give 5.
    expect(beside(30 + 10 + 55 + 3, 90 + 10 + 45 + 4)).toBeCloseTo(5, 5);
  });

  it('finds a back feature where the turned blank carries it: x becomes 280 - x about Y', () => {
    const back = aJob({ features: [{ ...drill, face: 'back' }] });
    const found = clearancesOf(back, placed(back), [block(250, 90)]);
    expect(at(found, 'back-up', 'cutter').lowestMm).toBe(14);
    expect(
      at(clearancesOf(back, placed(back), [block(30, 90)]), 'back-up', 'cutter'),
    ).toMatchObject({ lowestMm: null, besideMm: 207 });
  });

  it('keeps a pocket cutter inside its outline: beside by the outline itself', () => {
    const pocket = aJob({ features: [aFeature()] });
    // The recess reaches x = 80; the block's wall is at 70.
    const found = clearancesOf(pocket, placed(pocket), [block(60, 90)]);
    expect(Math.abs(at(found, 'front-up', 'cutter').besideMm - 10)).toBeLessThan(drawnWithinMm);
  });

  it('sends a cutter outside an outline by its whole diameter, and through the bed by half a mm', () => {
    const outer = aJob({
      features: [
        aFeature({
          name: 'outline',
          shape: { kind: 'rectangle', widthMm: 200, heightMm: 100, cornerRadiusMm: 5 },
          cut: 'profile-outside',
          through: true,
          depthMm: 24,
        }),
      ],
    });
    // The outline's left wall is at x = 40, the cutter reaches 34, the block 32.
    const found = clearancesOf(outer, placed(outer), [block(22, 90)]);
    expect(Math.abs(at(found, 'front-up', 'cutter').besideMm - 2)).toBeLessThan(drawnWithinMm);
    expect(at(found, 'front-up', 'collet nut').lowestMm).toBe(29.5);
    expect(lowestOver(outer, placed(outer), block(22, 90).outline)).toMatchObject({
      what: 'dust shoe',
      feature: 'outline',
      heightMm: 11.5,
    });
  });

  it('does not send the cutter over what lies in the middle of a profile', () => {
    const outer = aJob({
      features: [
        aFeature({
          shape: { kind: 'rectangle', widthMm: 200, heightMm: 160, cornerRadiusMm: 5 },
          cut: 'profile-outside',
        }),
      ],
    });
    expect(
      at(clearancesOf(outer, placed(outer), [block(140, 90)]), 'front-up', 'spindle').lowestMm,
    ).toBeNull();
  });

  it('counts bodies of one name as one, as high as the highest', () => {
    const low = { ...block(30, 90), highMm: 5 };
    const found = clearancesOf(job, placings, [low, block(200, 90)]);
    expect(found).toHaveLength(4);
    expect(at(found, 'front-up', 'cutter')).toMatchObject({ lowestMm: 14, bodyTopMm: 10 });
  });
});
