import { logOf } from './elementary.ts';

/**
 * The standard normal deviate below which a share `p` (0 < p < 1) lies, to about 1e-16 relative.
 * Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477-484.
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(CENTRE_TOP, r)) / polynomial(CENTRE_BOTTOM, r);
  }
  const tail = Math.sqrt(-logOf(q < 0 ? p : 1 - p));
  const value =
    tail <= 5
      ? polynomial(NEAR_TOP, tail - 1.6) / polynomial(NEAR_BOTTOM, tail - 1.6)
      : polynomial(FAR_TOP, tail - 5) / polynomial(FAR_BOTTOM, tail - 5);
  return q < 0 ? -value : value;
}

type Eight = readonly [number, number, number, number, number, number, number, number];

/** Coefficients from the highest power down. */
function polynomial(c: Eight, x: number): number {
  return (
    ((((((c[0] * x + c[1]) * x + c[2]) * x + c[3]) * x + c[4]) * x + c[5]) * x + c[6]) * x + c[7]
  );
}

const CENTRE_TOP: Eight = [
  2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4,
  4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3,
  1.3314166789178437745e2, 3.387132872796366608,
];
const CENTRE_BOTTOM: Eight = [
  5.226495278852854561e3, 2.8729085735721942674e4, 3.930789580009271061e4, 2.1213794301586595867e4,
  5.3941960214247511077e3, 6.871870074920579083e2, 4.2313330701600911252e1, 1,
];
const NEAR_TOP: Eight = [
  7.7454501427834140764e-4, 2.27238449892691845833e-2, 2.4178072517745061177e-1,
  1.27045825245236838258, 3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959,
  1.42343711074968357734,
];
const NEAR_BOTTOM: Eight = [
  1.05075007164441684324e-9, 5.475938084995344946e-4, 1.51986665636164571966e-2,
  1.4810397642748007459e-1, 6.8976733498510000455e-1, 1.6763848301838038494, 2.05319162663775882187,
  1,
];
const FAR_TOP: Eight = [
  2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.2426609473880784386e-3,
  2.6532189526576123093e-2, 2.9656057182850489123e-1, 1.7848265399172913358, 5.4637849111641143699,
  6.6579046435011037772,
];
const FAR_BOTTOM: Eight = [
  2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5,
  7.868691311456132591e-4, 1.48753612908506148525e-2, 1.3692988092273580531e-1,
  5.9983220655588793769e-1, 1,
];
