import type { Units } from '../job/job.ts';
import type { PlainPrediction } from '../stackup/prediction.ts';
import type { Html } from './html.ts';
import { joined, markup } from './html.ts';
import { ACCENT, dot, drawing, FAINT, INK, textAt } from './svg.ts';
import { lengthText } from './words.ts';

const WIDTH_MM = 70;
const HEIGHT_MM = 34;
const MARKS_MM = [10, 22] as const;

/** Where one figure comes out: a mark a trial, the limits as full lines, 95 parts in 100 as a bar below. */
export function stripPicture(need: PlainPrediction, units: Units): Html {
  const { low, high } = need.limits;
  const limits = [low, high].filter((limit) => limit !== null);
  const all = [...need.sample, ...(need.largest?.interval95 ?? []), ...limits, need.nominal];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const spare = (most - least) * 0.08 || 0.1;
  const left = least - spare;
  const perMm = WIDTH_MM / (most - least + 2 * spare);
  const x = (value: number): number => (value - left) * perMm;
  const [from, to] = need.interval95;
  const [top, bottom] = MARKS_MM;
  const marks = need.sample.map((value) => `M${dot(x(value))} ${top + 2}V${bottom - 2}`).join('');
  return drawing(
    `how it comes out: ${need.name}`,
    WIDTH_MM,
    HEIGHT_MM,
    joined([
      markup`<rect x="0.2" y="${top}" width="${WIDTH_MM - 0.4}" height="${bottom - top}" fill="#ffffff" stroke="${FAINT}" stroke-width="0.2"/>`,
      markup`<path d="${marks}" stroke="${FAINT}" stroke-width="0.25" stroke-opacity="0.5"/>`,
      markup`<path d="M${dot(x(from))} ${bottom + 2}H${dot(x(to))}" stroke="${ACCENT}" stroke-width="0.9"/>`,
      ...limits.map((limit) => {
        const at = x(limit);
        return joined([
          markup`<path d="M${dot(at)} ${top - 2}V${bottom + 4}" stroke="${INK}" stroke-width="1"/>`,
          textAt(
            { x: Math.min(WIDTH_MM - 9, Math.max(9, at)), y: top - 4 },
            lengthText(limit, units),
            {
              sizeMm: 3.5,
              anchor: 'middle',
            },
          ),
        ]);
      }),
      textAt({ x: 0.2, y: HEIGHT_MM - 3 }, 'bar: 95 parts in 100', { sizeMm: 3.5 }),
    ]),
  );
}
