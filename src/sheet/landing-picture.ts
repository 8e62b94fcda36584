import { straightScale } from './scale.ts';
import type { Units } from '../job/job.ts';
import type { RadialPrediction } from '../stackup/prediction.ts';
import type { Html } from './html.ts';
import { markup, joined } from './html.ts';
import { scaleBar } from './scale-bar.ts';
import { ACCENT, FAINT, INK, dot, drawing, textAt } from './svg.ts';

const SIZE_MM = 70;
const TOP_MM = 8;
const BOTTOM_MM = 14;

/** Where the back lands around the front, seen from the front: one mark a trial, the limit, the 95 % ellipse. */
export function landingPicture(need: RadialPrediction, units: Units): Html {
  const limit = need.limits.high ?? 0;
  const reach = Math.max(limit, ...need.cloud.map(([x, y]) => Math.hypot(x, y))) * 1.08 || 1;
  const x = straightScale([-reach, reach], [0, SIZE_MM]);
  const y = straightScale([-reach, reach], [TOP_MM + SIZE_MM, TOP_MM]);
  const perMm = SIZE_MM / (2 * reach);
  const [middleX, middleY] = [x(0), y(0)];
  const marks = need.cloud.map(([px, py]) =>
    Math.hypot(px, py) <= limit ? landed(x(px), y(py)) : missed(x(px), y(py)),
  );
  return drawing(
    `where the back lands around the front: ${need.name}`,
    SIZE_MM,
    TOP_MM + SIZE_MM + BOTTOM_MM,
    joined([
      markup`<rect x="0.2" y="${TOP_MM}" width="${SIZE_MM - 0.4}" height="${SIZE_MM}" fill="#ffffff" stroke="${FAINT}" stroke-width="0.2"/>`,
      markup`<path d="M0 ${dot(middleY)}h${SIZE_MM}M${dot(middleX)} ${TOP_MM}v${SIZE_MM}" stroke="${FAINT}" stroke-width="0.2"/>`,
      markup`<g fill="${FAINT}" stroke="none">${marks}</g>`,
      markup`<circle cx="${dot(middleX)}" cy="${dot(middleY)}" r="${dot(limit * perMm)}" fill="none" stroke="${INK}" stroke-width="1"/>`,
      ellipse95(need, x, y, perMm),
      textAt({ x: SIZE_MM / 2, y: TOP_MM - 2.4 }, 'towards the upper edge ↑', {
        sizeMm: 3.5,
        anchor: 'middle',
      }),
      textAt({ x: SIZE_MM, y: TOP_MM + SIZE_MM + 5 }, 'towards the right edge →', {
        sizeMm: 3.5,
        anchor: 'end',
      }),
      scaleBar({ x: 0.2, y: TOP_MM + SIZE_MM + 11 }, 'start', perMm, 30, units),
    ]),
  );
}

function landed(x: number, y: number): Html {
  return markup`<circle cx="${dot(x)}" cy="${dot(y)}" r="0.45"/>`;
}

/** A cross, so that it differs in shape and not in shade. */
function missed(x: number, y: number): Html {
  return markup`<path d="M${dot(x - 0.8)} ${dot(y - 0.8)}l1.6 1.6m0 -1.6l-1.6 1.6" stroke="${INK}" stroke-width="0.4"/>`;
}

/** Chi-square of two degrees at 0.95: -2 ln 0.05. */
const CHI2_95 = -2 * Math.log(0.05);

/** Holds 95 in 100 of a plane normal spread with this mean and covariance (JCGM 102:2011, 7.7.2). */
function ellipse95(
  need: RadialPrediction,
  x: (v: number) => number,
  y: (v: number) => number,
  perMm: number,
): Html {
  const [a, b, c] = [need.x.sd ** 2, need.y.sd ** 2, need.covariance];
  const half = Math.hypot((a - b) / 2, c);
  const [large, small] = [(a + b) / 2 + half, Math.max(0, (a + b) / 2 - half)];
  const turned = (0.5 * Math.atan2(2 * c, a - b) * 180) / Math.PI;
  const radius = (variance: number): number => dot(Math.sqrt(variance * CHI2_95) * perMm);
  return markup`<ellipse transform="translate(${dot(x(need.x.mean))} ${dot(y(need.y.mean))}) rotate(${dot(-turned)})" rx="${radius(large)}" ry="${radius(small)}" fill="none" stroke="${ACCENT}" stroke-width="0.9" stroke-dasharray="2.4 1.4"/>`;
}
