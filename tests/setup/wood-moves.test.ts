// Derived: a strain of lambda along x moves a point by lambda times its distance from what holds it (the first table of the
// registration model, "wood swells by lambda along x"); one change of moisture makes both strains.
import { describe, expect, it } from 'vitest';
import { onDowels } from './loose-job.ts';
import { keysOf, misalign } from './misalign.ts';
import { plainJob, spread } from './plain-job.ts';

const triangular = (high: number) => spread({ kind: 'triangular', low: -high, high });

describe('wood that moves with its moisture', () => {
  const plain = onDowels({
    at: [
      { x: 140, y: 90 - 40 },
      { x: 140, y: 90 + 40 },
    ],
  });
  const job = {
    ...plain,
    blank: {
      ...plain.blank,
      movementX: triangular(2e-5),
      movementY: triangular(8e-5),
      movesTogether: true,
    },
  };

  it('moves along both axes by one draw, each by its own share', () => {
    const [x, y] = misalign(job, { 'movement/both': 4e-5 }, { x: 40, y: 10 });
    expect(x).toBeCloseTo(-1e-5 * (40 - 140), 6);
    expect(y).toBeCloseTo(-4e-5 * (10 - 90), 6);
    expect(keysOf(job).filter((key) => key.startsWith('movement'))).toEqual(['movement/both']);
  });

  it('does not move at all where it takes up none', () => {
    const dry = plainJob({ blank: { ...plain.blank, movesTogether: true } });
    expect(Math.hypot(...misalign(dry, { 'movement/both': 1 }, { x: 40, y: 10 }))).toBe(0);
  });

  it('moves each way by itself when the strains are stated', () => {
    expect(keysOf(plain).filter((key) => key.startsWith('movement'))).toEqual([
      'movement/x',
      'movement/y',
    ]);
  });
});
