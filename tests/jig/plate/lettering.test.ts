import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../../src/jig/mesh.ts';
import { roundedBox } from '../../../src/jig/plate/curve.ts';
import { wordsLongMm } from '../../../src/jig/plate/lettering.ts';
import { plateFacets } from '../../../src/jig/plate/plate-solid.ts';

describe('engraved letters', () => {
  const signs = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-+>^.');
  const plate = (words: string, runs: 'right' | 'up', heightMm: number) => {
    const longMm = wordsLongMm(words, heightMm) + 8;
    const [x, y] = runs === 'right' ? [longMm, heightMm + 8] : [heightMm + 8, longMm];
    const at = runs === 'right' ? { x: 4, y: 4 } : { x: heightMm + 4, y: 4 };
    return {
      name: 'label',
      thickMm: 4,
      outline: roundedBox({ x: 0, y: 0 }, { x, y }, 2),
      holes: [],
      words: [{ words, at, runs, heightMm, strokeMm: 0.8, depthMm: 0.4 }],
    };
  };

  // Own count of edges: a letter whose floor and walls do not meet would leave some open.
  it.each(['right', 'up'] as const)('leave the skin closed, each of them, running %s', (runs) => {
    for (const sign of signs)
      for (const heightMm of [4, 5, 6])
        expect(checkMesh(plateFacets(plate(sign, runs, heightMm))).openEdgeCount, sign).toBe(0);
  });

  it('take the same out of a plate whichever way they run', () => {
    const volume = (runs: 'right' | 'up'): number =>
      checkMesh(plateFacets(plate('CASE 4 B8', runs, 5))).signedVolumeMm3;
    // Clipping keeps six decimals of a millimetre.
    expect(Math.abs(volume('right') - volume('up'))).toBeLessThan(1e-3);
  });
});
