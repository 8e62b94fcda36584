import { expOf, logOf } from './elementary.ts';

/**
 * Normal, beta and Student from `+ - * / sqrt` alone: what draws and chances rest on must have the same bits
 * everywhere, and a library's powers are those of the engine it runs in.
 */

const PER_ROOT = 0.3989422804014327;
/** From here on the tail comes from its continued fraction. */
const TAIL = 2.5;

/** Share of the standard normal below `z`, to about 1e-15 of it, tails too. */
export function normalShareBelow(z: number): number {
  const size = Math.abs(z);
  const density = PER_ROOT * expOf((-size * size) / 2);
  if (size > TAIL) {
    // Laplace: density / (z + 1 / (z + 2 / (z + ...))), textbook, from memory; checked in the tests.
    let rest = size;
    for (let k = 25 + Math.ceil(300 / (size * size)); k >= 1; k--) rest = size + k / rest;
    return z < 0 ? density / rest : 1 - density / rest;
  }
  // density (z + z^3 / 3 + z^5 / 15 + ...): all terms of one sign.
  let sum = size;
  let term = size;
  for (let k = 3; k < 200 && term > 1e-17 * sum; k += 2) {
    term *= (size * size) / k;
    sum += term;
  }
  return z < 0 ? 0.5 - density * sum : 0.5 + density * sum;
}

/** Student's t below which a share `p` lies, for `dof` degrees of freedom, which need not be whole. */
export function studentQuantile(p: number, dof: number): number {
  if (p === 0.5) return 0;
  // The share beyond +-t is the beta share below dof / (dof + t^2): its odds are dof / t^2.
  const beyond = 2 * Math.min(p, 1 - p);
  const logOdds =
    beyond <= 0.5 ? logOddsOfBeta(beyond, dof / 2, 0.5) : -logOddsOfBeta(1 - beyond, 0.5, dof / 2);
  const t = Math.sqrt(dof * expOf(-logOdds));
  return p < 0.5 ? -t : t;
}

/** The value, 0 to 1, below which a share `p` of a beta distribution lies. */
export function betaQuantile(p: number, a: number, b: number): number {
  const logOdds = p <= 0.5 ? logOddsOfBeta(p, a, b) : -logOddsOfBeta(1 - p, b, a);
  return 1 / (1 + expOf(-logOdds));
}

const MOST_STEPS = 60;

/**
 * Logarithm of x / (1 - x) for the x below which a share `p`, 0 < p <= 0.5, of a beta distribution lies. The
 * logarithm of the share is concave in it, so that Newton's steps come from below and cannot miss.
 */
function logOddsOfBeta(p: number, a: number, b: number): number {
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  const logP = logOf(p);
  let u = logOf(a / b);
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = 1 / (1 + expOf(-u));
    const y = 1 / (1 + expOf(u));
    const logLarger = -logOf(1 + expOf(-Math.abs(u)));
    const logSmaller = logLarger - Math.abs(u);
    const logs = u > 0 ? a * logLarger + b * logSmaller : a * logSmaller + b * logLarger;
    // The logarithm of the share's slope against u; the share itself may be too small for a number.
    const logSlope = logs - logBeta;
    const logShare =
      x * (a + b + 2) < a + 1
        ? logSlope + logOf(betaFraction(x, a, b) / a)
        : logOf(1 - (expOf(logSlope) * betaFraction(y, b, a)) / b);
    const by = (logShare - logP) * expOf(logShare - logSlope);
    u -= by;
    if (Math.abs(by) <= 1e-15 * (1 + Math.abs(u))) break;
  }
  return u;
}

const TINY = 1e-300;

/**
 * The continued fraction of the incomplete beta function, by the modified Lentz method.
 * Source: NIST Digital Library of Mathematical Functions 8.17.22, from memory; checked in the tests.
 */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / notNought(1 - ((a + b) * x) / (a + 1));
  let value = d;
  // It takes some root of the larger of a and b; ten thousand is for 1e8 trials.
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / notNought(1 + even * d);
    c = notNought(1 + even / c);
    value *= c * d;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / notNought(1 + odd * d);
    c = notNought(1 + odd / c);
    value *= c * d;
    if (Math.abs(c * d - 1) < 2e-16) break;
  }
  return value;
}

const notNought = (value: number): number => (Math.abs(value) < TINY ? TINY : value);

/** Stirling's series, from memory: 1 / 12, -1 / 360, ...; from 12 on the next term is below 1e-16. */
const STIRLING = [-691 / 360360, 1 / 1188, -1 / 1680, 1 / 1260, -1 / 360, 1 / 12];
const HALF_LOG_TWO_PI = 0.9189385332046728;

/** Logarithm of the gamma function of a positive `x`. */
export function logGamma(x: number): number {
  let product = 1;
  let far = x;
  while (far < 12) {
    product *= far;
    far += 1;
  }
  const per = 1 / (far * far);
  let sum = 0;
  for (const one of STIRLING) sum = sum * per + one;
  return (far - 0.5) * logOf(far) - far + HALF_LOG_TWO_PI + sum / far - logOf(product);
}
