import type { Comparison, Row } from '../advise/ways/compare.ts';
import { heightWords } from '../advise/ways/heights.ts';
import { wayWords } from '../advise/ways/words.ts';
import { editsText } from '../job/edit.ts';
import { hurtWords, partsWords, percentText } from './advice-words.ts';
import { joined, markup, type Html } from './html.ts';
import { PAGE_STYLE } from './page-style.ts';
import { straightScale } from './scale.ts';
import { ACCENT, dot, drawing, FAINT, INK, textAt } from './svg.ts';
import { levelText } from './words.ts';

const WIDTH_MM = 186;
const ROW_MM = 11;
const TOP_MM = 12;
const [BARS_FROM_MM, BARS_TO_MM] = [10, 150] as const;

/** The page that shows all ways of a job side by side; the same bytes every time. */
export function comparePage(
  found: Comparison,
  { seed, trials }: { readonly seed: number; readonly trials: number },
  version: string,
): string {
  const { asWritten, rows, refused } = found;
  const { job } = asWritten;
  return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<title>Ways to locate: ${job.name}</title>
<style>${PAGE_STYLE}</style>
</head>
<body>
<main>
<header><p class="kind">Ways to locate</p><h1>${job.name}</h1>
<p class="verdict">${headline(found)}</p></header>
<section><h2>All good, of 100 parts</h2>
<figure>${picture(rows, job.goodEnoughShare)}<figcaption>Bars: chance that a part meets every need, the same ${String(trials)} blanks for each way (seed ${String(seed)}); thin lines: 95 times in 100. Minutes are estimates for ${partsWords(job.parts.count)}. The way of the job as it is written is dark.</figcaption></figure>
</section>
<section><h2>The ways</h2><table>
<thead><tr><th>way</th><th>least sure need</th><th>to make</th><th>write into the job file</th></tr></thead>
<tbody>${rows.map((row, k) => tableRow(row, k + 1))}</tbody></table></section>
${refused.length === 0 ? markup`` : markup`<section><h2>Not possible here</h2><ul>${refused.map(({ way, because }) => markup`<li>${wayWords(way)}: ${because}</li>`)}</ul></section>`}
<footer><p>Made by Flipwright ${version}. Figures are predictions, minutes are estimates: try a test piece before good wood.</p></footer>
</main>
</body>
</html>
`.html;
}

function headline({ rows, asWritten }: Comparison): string {
  const [best] = rows;
  const now = percentText(asWritten.outcome.all);
  if (best === undefined || best.isAsWritten || best.gain.value < 2 * best.gain.se)
    return `No other way does surely better than the job as it is: ${now} all good.`;
  return `As written ${now} all good; the best way comes to ${percentText(best.outcome.all)}.`;
}

function tableRow(row: Row, number: number): Html {
  const { worst, work } = row;
  return markup`<tr><th><b>${String(number)}</b> ${wayWords(row.way)}, ${heightWords(row.heights)}</th><td>${worst.need}: ${percentText(worst.chance)}${hurtWords(worst.hurts)}</td><td>${work.make.join(', ')}</td><td>${row.isAsWritten ? 'as it is' : editsText(row.edits)}</td></tr>`;
}

function picture(rows: readonly Row[], wanted: number): Html {
  const x = straightScale([0, 1], [BARS_FROM_MM, BARS_TO_MM]);
  const heightMm = TOP_MM + rows.length * ROW_MM + 4;
  const goal = x(wanted);
  return drawing(
    'chance that all is good, by way of locating',
    WIDTH_MM,
    heightMm,
    joined([
      ...[0, 0.25, 0.5, 0.75, 1].map((share) =>
        joined([
          markup`<path d="M${dot(x(share))} ${TOP_MM - 3}V${heightMm - 3}" stroke="${FAINT}" stroke-width="0.15"/>`,
          textAt({ x: x(share), y: TOP_MM - 5 }, String(100 * share), {
            sizeMm: 3.2,
            anchor: 'middle',
          }),
        ]),
      ),
      markup`<path d="M${dot(goal)} ${TOP_MM - 3}V${heightMm - 3}" stroke="${ACCENT}" stroke-width="0.5" stroke-dasharray="2 1"/>`,
      textAt({ x: BARS_TO_MM + 4, y: TOP_MM - 5 }, `wanted of each: ${levelText(wanted)}`, {
        sizeMm: 3.2,
      }),
      ...rows.map((row, k) => bar(row, k, x)),
    ]),
  );
}

function bar(row: Row, k: number, x: (share: number) => number): Html {
  const y = TOP_MM + k * ROW_MM;
  const { value, se } = row.outcome.all;
  const [low, high] = [Math.max(0, value - 1.96 * se), Math.min(1, value + 1.96 * se)];
  const middle = y + 3;
  return joined([
    textAt({ x: 7, y: middle + 1.2 }, String(k + 1), { sizeMm: 3.6, anchor: 'end', weight: 700 }),
    markup`<rect x="${dot(x(0))}" y="${dot(y)}" width="${dot(x(value) - x(0))}" height="6" fill="${row.isAsWritten ? FAINT : '#e6d6cc'}" stroke="${INK}" stroke-width="0.2"/>`,
    markup`<path d="M${dot(x(low))} ${dot(middle)}H${dot(x(high))}" stroke="${INK}" stroke-width="0.5"/>`,
    textAt(
      { x: BARS_TO_MM + 4, y: middle + 1.2 },
      `${percentText(row.outcome.all)}, ${row.work.minutes} min`,
      { sizeMm: 3.6 },
    ),
    textAt({ x: x(0) + 1.5, y: middle + 1 }, shortWords(row), { sizeMm: 2.9, rim: 'white' }),
  ]);
}

/** A way in as many words as a bar has room for. */
const shortWords = (row: Row): string => {
  const words = wayWords(row.way);
  return words.length > 96 ? `${words.slice(0, 94)}…` : words;
};
