// Scrambling is by random matrices (Matousek 1998), not by a hash, so the hash vectors of tests/reference/uncertainty.md 9
// do not apply; what any such scrambling must keep, the net, is tested instead.
import { describe, expect, it } from 'vitest';
import { directionsOf, fillScrambled, SOBOL_DIMENSIONS } from '../../src/num/sobol.ts';

/** Points of a dimension in Gray-code order, unscrambled. */
function points(dimension: number, count: number): number[] {
  const v = directionsOf(dimension - 1);
  const found: number[] = [];
  let point = 0;
  for (let i = 0; i < count; i++) {
    found.push((point >>> 0) * 2 ** -32);
    point ^= v[31 - Math.clz32((i + 1) & -(i + 1))]!;
  }
  return found;
}

describe('Sobol points', () => {
  it('are those of Joe and Kuo', () => {
    // Source: tests/reference/uncertainty.md 9 (checked there against an independent generator), Gray-code order.
    const first = [
      [0, 0, 0, 0, 0, 0],
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25, 0.25, 0.75, 0.75],
      [0.25, 0.75, 0.75, 0.75, 0.25, 0.25],
      [0.375, 0.375, 0.625, 0.875, 0.375, 0.125],
      [0.875, 0.875, 0.125, 0.375, 0.875, 0.625],
      [0.625, 0.125, 0.875, 0.625, 0.625, 0.875],
      [0.125, 0.625, 0.375, 0.125, 0.125, 0.375],
      [0.1875, 0.3125, 0.9375, 0.4375, 0.5625, 0.3125],
      [0.6875, 0.8125, 0.4375, 0.9375, 0.0625, 0.8125],
      [0.9375, 0.0625, 0.6875, 0.1875, 0.3125, 0.5625],
      [0.4375, 0.5625, 0.1875, 0.6875, 0.8125, 0.0625],
      [0.3125, 0.1875, 0.3125, 0.5625, 0.9375, 0.4375],
      [0.8125, 0.6875, 0.8125, 0.0625, 0.4375, 0.9375],
      [0.5625, 0.4375, 0.0625, 0.8125, 0.1875, 0.6875],
      [0.0625, 0.9375, 0.5625, 0.3125, 0.6875, 0.1875],
    ];
    for (let d = 1; d <= 6; d++)
      expect(points(d, first.length)).toEqual(first.map((point) => point[d - 1]));
    expect(points(21, 16)).toEqual([
      0, 0.5, 0.25, 0.75, 0.125, 0.625, 0.375, 0.875, 0.1875, 0.6875, 0.4375, 0.9375, 0.0625,
      0.5625, 0.3125, 0.8125,
    ]);
    expect(points(40, 16)).toEqual([
      0, 0.5, 0.25, 0.75, 0.875, 0.375, 0.625, 0.125, 0.5625, 0.0625, 0.8125, 0.3125, 0.4375,
      0.9375, 0.1875, 0.6875,
    ]);
  });

  it('are in natural order where a number’s Gray code is that number’s place', () => {
    // The same source: the first 8 points in natural order, the i-th of which is Gray-code point number g, g ^ g / 2 = i.
    const natural = [
      [0, 0, 0, 0, 0, 0],
      [0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
      [0.25, 0.75, 0.75, 0.75, 0.25, 0.25],
      [0.75, 0.25, 0.25, 0.25, 0.75, 0.75],
      [0.125, 0.625, 0.375, 0.125, 0.125, 0.375],
      [0.625, 0.125, 0.875, 0.625, 0.625, 0.875],
      [0.375, 0.375, 0.625, 0.875, 0.375, 0.125],
      [0.875, 0.875, 0.125, 0.375, 0.875, 0.625],
    ];
    for (let d = 1; d <= 6; d++) {
      const gray = points(d, 8);
      for (let g = 0; g < 8; g++) expect(gray[g]).toBe(natural[g ^ (g >>> 1)]![d - 1]);
    }
  });

  it('fill every one of 2^k equal steps once in each dimension, scrambled too', () => {
    const words = new Int32Array(256);
    for (let dimension = 0; dimension < SOBOL_DIMENSIONS; dimension++) {
      fillScrambled(dimension, 5, dimension, 2, words, 0, 256);
      expect(new Set(words.map((word) => word >>> 24)).size).toBe(256);
    }
  });

  it('stay a net in the plane when scrambled: one of 256 in every elementary box', () => {
    const [x, y] = [0, 1].map((dimension) => {
      const words = new Int32Array(256);
      fillScrambled(dimension, 9, dimension, 0, words, 0, 256);
      return words;
    });
    for (let bits = 0; bits <= 8; bits++) {
      const boxes = new Set(
        Array.from({ length: 256 }, (_, i) => {
          const column = bits === 0 ? 0 : x![i]! >>> (32 - bits);
          const row = bits === 8 ? 0 : y![i]! >>> (24 + bits);
          return column * 256 + row;
        }),
      );
      expect(boxes.size).toBe(256);
    }
  });

  it('beat random points by far in the mean of a smooth function, and tell by their scatter how far', () => {
    // The product of 4 uniforms' (0.5 + x), mean 1 exactly; 256 points, 20 scramblings (own expectation: > 10 times).
    const means = Array.from({ length: 20 }, (_, replicate) => {
      const columns = [0, 1, 2, 3].map((dimension) => {
        const words = new Int32Array(256);
        fillScrambled(dimension, 1, dimension + 7, replicate, words, 0, 256);
        return words;
      });
      let sum = 0;
      for (let i = 0; i < 256; i++)
        sum += columns.reduce(
          (product, words) => product * (0.5 + (words[i]! >>> 0) * 2 ** -32 + 2 ** -33),
          1,
        );
      return sum / 256;
    });
    const mean = means.reduce((sum, one) => sum + one, 0) / 20;
    const se = Math.sqrt(means.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 19 / 20);
    // Random: sd of the product, sqrt((13 / 12)^4 - 1) = 0.614, over 256 and 20.
    expect(se).toBeLessThan(0.614 / Math.sqrt(256 * 20) / 10);
    expect(Math.abs(mean - 1)).toBeLessThan(4 * se);
  });
});
