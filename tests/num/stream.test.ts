import { describe, expect, it } from 'vitest';
import { fillWords, idOf, streamOf, uniformOf } from '../../src/num/stream.ts';

describe('addressed streams', () => {
  it('hashes names as FNV-1a does', () => {
    // Source: test vectors of the FNV authors, values from memory.
    expect(idOf('')).toBe(0x811c9dc5);
    expect(idOf('a')).toBe(0xe40c292c);
    expect(idOf('foobar')).toBe(0xbf9cf968);
  });

  it('gives the known words of sfc32, run in by 12, one by one and by the fill', () => {
    // Computed independently, in another language with whole numbers of any size; the generator is sfc32
    // of PractRand (C. Doty-Humphrey).
    for (const [address, known] of [
      [
        [0, 0, 0, 0],
        [0xf08ed6a9, 0x514676c3, 0x08a809df, 0x30349d2b],
      ],
      [
        [1, 2, 3, 1],
        [0x736a3b41, 0xb2e53014, 0x3d56e4c7, 0xeda6a65f],
      ],
      [
        [0xffffffff, 0x811c9dc5, 7, 2],
        [0x39d3e79b, 0x07974f2a, 0x33c9ba5a, 0x871e1fa2],
      ],
    ] as const) {
      const [seed, id, batch, lane] = address;
      const stream = streamOf(seed, id, batch, lane);
      expect(known.map(() => stream())).toEqual(known);
      const words = new Int32Array(4);
      fillWords(seed, id, batch, lane, words, 4);
      expect(Array.from(words, (word) => word >>> 0)).toEqual(known);
    }
  });

  it('gives the same words for the same address and others for any other', () => {
    const words = (address: readonly [number, number, number, number]): number[] => {
      const stream = streamOf(address[0], address[1], address[2], address[3]);
      return [stream(), stream(), stream()];
    };
    expect(words([1, 2, 3, 1])).toEqual(words([1, 2, 3, 1]));
    for (const other of [
      [0, 2, 3, 1],
      [1, 0, 3, 1],
      [1, 2, 0, 1],
      [1, 2, 3, 2],
    ] as const) {
      expect(words(other)).not.toEqual(words([1, 2, 3, 1]));
    }
  });

  it('stays strictly between 0 and 1 at both ends', () => {
    expect(uniformOf(0)).toBeGreaterThan(0);
    expect(uniformOf(0xffffffff)).toBeLessThan(1);
  });

  it('fills 64 bins evenly (chi-square, four standard errors)', () => {
    const bins = new Float64Array(64);
    const stream = streamOf(5, 77, 0, 1);
    const n = 64_000;
    for (let i = 0; i < n; i++) bins[Math.floor(uniformOf(stream()) * 64)]! += 1;
    const chi2 = bins.reduce((sum, count) => sum + (count - n / 64) ** 2 / (n / 64), 0);
    expect(Math.abs(chi2 - 63)).toBeLessThan(4 * Math.sqrt(2 * 63));
  });

  it('keeps neighbouring streams unrelated (correlation within four standard errors)', () => {
    const n = 20_000;
    for (const [one, other] of [
      [streamOf(1, 10, 0, 1), streamOf(1, 11, 0, 1)],
      [streamOf(1, 10, 0, 1), streamOf(1, 10, 1, 1)],
      [streamOf(1, 10, 0, 1), streamOf(1, 10, 0, 2)],
      [streamOf(1, 10, 0, 1), streamOf(2, 10, 0, 1)],
    ] as const) {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (uniformOf(one()) - 0.5) * (uniformOf(other()) - 0.5) * 12;
      expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n));
    }
  });
});
