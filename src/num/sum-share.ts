import { cosineOf, expOf, sineOf } from './elementary.ts';
import type { HermiteTable } from './hermite-table.ts';

/** One term of a sum, about its mean: a normal with its standard deviation, or an even spread with its half-width. */
export interface Term {
  readonly kind: 'normal' | 'rectangular' | 'triangular';
  readonly size: number;
}

const NODES = 512;
/** Standard deviations to either side that the table covers; a sum of normals has 1e-15 beyond. */
const REACH = 8;
const MOST_WAVES = 256;
/** Waves weaker than this are left out. */
const WEAK = 1e-10;

export const varianceOfTerm = ({ kind, size }: Term): number =>
  kind === 'normal' ? size * size : (size * size) / (kind === 'rectangular' ? 3 : 6);

/**
 * The share of a sum of independent terms, each about its mean, that lies below a value: exactly, from the
 * product of the terms' characteristic functions, a Fourier series over 16 standard deviations.
 * Source: textbook inversion of a characteristic function (from memory), checked in the tests.
 */
export function shareOfSum(terms: readonly Term[]): HermiteTable {
  const sd = Math.sqrt(terms.reduce((sum, term) => sum + varianceOfTerm(term), 0));
  const period = 2 * REACH * sd;
  const waves: number[] = [];
  for (let m = 1; m <= MOST_WAVES; m++) {
    const wave = terms.reduce(
      (product, term) => product * characteristic(term, (2 * Math.PI * m) / period),
      1,
    );
    waves.push(wave);
    if (Math.abs(wave) < WEAK && m > 8) break;
  }
  const step = period / (NODES - 1);
  const nodes = new Float64Array(2 * NODES);
  for (let k = 0; k < NODES; k++) {
    const turn = 2 * Math.PI * (k / (NODES - 1) - 0.5);
    let [share, density] = [0.5 + turn / (2 * Math.PI), 1];
    // sin m t and cos m t by turning once more each time.
    const [c, s] = [cosineOf(turn), sineOf(turn)];
    let [cosine, sine] = [1, 0];
    waves.forEach((wave, index) => {
      const next = cosine * c - sine * s;
      sine = sine * c + cosine * s;
      cosine = next;
      share += (wave * sine) / (Math.PI * (index + 1));
      density += 2 * wave * cosine;
    });
    nodes[2 * k] = share;
    nodes[2 * k + 1] = (density / period) * step;
  }
  return { from: -period / 2, step, nodes };
}

function characteristic({ kind, size }: Term, omega: number): number {
  const x = size * omega;
  if (kind === 'normal') return expOf((-x * x) / 2);
  if (kind === 'rectangular') return sinc(x);
  return sinc(x / 2) ** 2;
}

const sinc = (x: number): number => (Math.abs(x) < 1e-8 ? 1 : sineOf(x) / x);
