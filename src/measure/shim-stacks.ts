import type { Shim } from './shims.ts';

/** Shims that lie on each other under one screw, thickest first. */
export interface Stack {
  readonly pieces: readonly string[];
  readonly thickMm: number;
  readonly sdMm: number;
}

/** More pieces on each other lie like a spring (common practice, no source). */
const MOST_PIECES = 3;
/** Stacks closer than this are one; the one of fewer pieces is kept. */
const SAME_MM = 0.002;

/** Every stack of up to three pieces of the stock and up to `mostMm` thick; the first is empty. */
export function stacksOf(stock: readonly Shim[], mostMm: number): readonly Stack[] {
  const empty: Stack = { pieces: [], thickMm: 0, sdMm: 0 };
  const all: Stack[] = [empty];
  const sorted = [...stock].sort((a, b) => b.thickMm - a.thickMm);
  const add = (from: number, below: Stack): void => {
    if (below.pieces.length === MOST_PIECES) return;
    sorted.slice(from).forEach((shim, k) => {
      const thickMm = below.thickMm + shim.thickMm;
      const used = below.pieces.filter((name) => name === shim.name).length;
      if (thickMm > mostMm || (shim.count !== null && used >= shim.count)) return;
      const stack = {
        pieces: [...below.pieces, shim.name],
        thickMm,
        sdMm: Math.hypot(below.sdMm, shim.sdMm),
      };
      all.push(stack);
      add(from + k, stack);
    });
  };
  add(0, empty);
  const fewest = all.sort(
    (a, b) => a.pieces.length - b.pieces.length || a.thickMm - b.thickMm || a.sdMm - b.sdMm,
  );
  const kept: Stack[] = [];
  for (const stack of fewest)
    if (!kept.some(({ thickMm }) => Math.abs(thickMm - stack.thickMm) < SAME_MM)) kept.push(stack);
  return kept;
}

/** How many pieces of one kind some stacks take together. */
export const usesOf = (stacks: readonly Stack[], name: string): number =>
  stacks.reduce((sum, { pieces }) => sum + pieces.filter((piece) => piece === name).length, 0);
