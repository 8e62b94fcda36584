import type { Job } from '../job/job.ts';
import {
  testNumbers,
  type Comb,
  type TestPiece,
  type Vernier,
} from '../jig/test-piece/test-piece.ts';
import type { Html } from './html.ts';
import { joined, markup } from './html.ts';
import { PAGE_STYLE } from './page-style.ts';
import { ACCENT, FAINT, INK, drawing, dot, textAt, type Spot } from './svg.ts';
import { lengthText, unitText } from './words.ts';

/** The card on which a test piece is read: where each comb is, what to measure, what it says. */
export function testPieceCard(job: Job, piece: TestPiece, version: string): string {
  const { units } = job.shop;
  const unit = unitText(units);
  const step = (vernier: Vernier): string => lengthText(vernier.stepMm, units);
  const page = markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<title>Reading card of the test piece: ${job.name}</title>
<style>${PAGE_STYLE}</style>
</head>
<body>
<main>
<header><p class="kind">Reading card of the test piece</p><h1>${job.name}</h1></header>
<section class="cautions"><h2>Cautions first</h2><ul>
<li><b>Read it with the spindle off and the piece off the machine.</b> The makers of machine and cutter and your local rules come first.</li>
<li>What it says holds for this way of locating, this height of the stops, this thickness and this cutter. It is one piece: three say what to correct, five or six how much it scatters.</li>
</ul></section>
<figure>${plan(job, piece)}<figcaption>Seen from the front. Dark: cut from the front. Hollow: cut from the back. Numbers: combs. Zero of the places: lower left corner.</figcaption></figure>
<section><h2>Combs: two teeth each, by caliper</h2>
<p>Blow the chips out. Measure both teeth at half the thickness, with the same gentle pressure. First tooth: the left one, or the lower one. <b>Off = (first − second) / 2</b>: positive, the back came out too far to the right, or too far up. Neither the caliper's zero nor the width of the cutter is in it. Reading good to ${lengthText(0.03, units)}: an estimate.</p>
<table><thead><tr><th scope="col">Comb</th><th scope="col">tells</th><th scope="col">middle at</th><th scope="col">first tooth, ${unit}</th><th scope="col">second tooth, ${unit}</th><th scope="col">off, ${unit}</th></tr></thead>
<tbody>${piece.combs.map((comb) => combRow(job, comb))}</tbody></table>
<p>Both teeth thinner than ${lengthText(piece.toothMm, units)}: the cutter cuts wide, by half of what is missing on each wall. ${turnWords(job, piece)}</p></section>
${
  piece.verniers.length === 0
    ? markup``
    : markup`<section><h2>Verniers: by eye</h2>
<ul>${piece.verniers.map((vernier) => markup`<li>For ${vernier.axis === 'x' ? 'X' : 'Y'}: ${String(vernier.pairCount)} pairs. Find the pair whose walls run on straight. Count it from the middle pair, ${vernier.axis === 'x' ? 'to the right' : 'upwards'} positive: each is ${step(vernier)}; between two, half. ${readingBox('pair', '')}</li>`)}</ul></section>`
}
${
  piece.tongues.length === 0
    ? markup`<p>No tongues, so lean is not read.</p>`
    : markup`<section><h2>Tongues: how thick is what is left?</h2>
<p>Wanted: ${lengthText(testNumbers.webMm, units)} on a board of its nominal thickness; a thicker board leaves as much more when Z is touched on the bed. What differs between them is lean, twist and cup.</p>
<ul>${piece.tongues.map(({ name }) => markup`<li>${name}: ${readingBox('', unit)}</li>`)}</ul></section>`
}
<footer><p>Made by Flipwright ${version}.</p></footer>
</main>
</body>
</html>
`;
  return page.html;
}

function combRow(job: Job, { number, axis, middle }: Comb): Html {
  const { units } = job.shop;
  const box = readingBox('', '');
  return markup`<tr><th scope="row">${String(number)}</th><td>${axis === 'x' ? 'X' : 'Y'}</td><td>${lengthText(middle.x, units)}, ${lengthText(middle.y, units)}</td><td>${box}</td><td>${box}</td><td>${box}</td></tr>`;
}

const readingBox = (label: string, unit: string): Html =>
  markup`<span class="box"><span>${label}</span><i></i><span>${unit}</span></span>`;

/** How the turn of the back follows from the combs for Y at both ends. */
function turnWords(job: Job, { combs }: TestPiece): string {
  const middle = job.blank.widthMm / 2;
  const forY = combs.filter(({ axis }) => axis === 'y');
  const left = forY.filter((comb) => comb.middle.x < middle);
  const right = forY.filter((comb) => comb.middle.x > middle);
  const names = (some: readonly Comb[]): string =>
    `${some.length > 1 ? 'mean of ' : ''}${some.map(({ number }) => `comb ${String(number)}`).join(' and ')}`;
  if (left.length === 0 || right.length === 0)
    return 'The turn of the back is not read here: that wants combs for Y both left and right of the middle.';
  const apartMm = right[0]!.middle.x - left[0]!.middle.x;
  return `Turn of the back, to the left positive: (${names(right)} − ${names(left)}) / ${lengthText(apartMm, job.shop.units)}.`;
}

const PICTURE_MM = 186;

function plan(job: Job, piece: TestPiece): Html {
  const { widthMm, heightMm } = job.blank;
  const scale = Math.min(1, PICTURE_MM / (widthMm + 4), 150 / (heightMm + 4));
  const spot = ({ x, y }: { readonly x: number; readonly y: number }): Spot => ({
    x: 2 * scale + x * scale,
    y: (heightMm + 2 - y) * scale,
  });
  const box = (
    low: { readonly x: number; readonly y: number },
    high: { readonly x: number; readonly y: number },
    look: Html,
  ): Html => {
    const [a, b] = [spot(low), spot(high)];
    return markup`<rect x="${dot(a.x)}" y="${dot(b.y)}" width="${dot(b.x - a.x)}" height="${dot(a.y - b.y)}" ${look}/>`;
  };
  const front = markup`fill="${INK}" stroke="none"`;
  const back = markup`fill="none" stroke="${ACCENT}" stroke-width="0.5"`;
  const pale = markup`fill="#eeeeee" stroke="${FAINT}" stroke-width="0.2"`;
  const width = piece.cutter.diameterMm * scale;
  return drawing(
    'plan of the test piece',
    (widthMm + 4) * scale,
    (heightMm + 4) * scale,
    joined([
      box(
        { x: 0, y: 0 },
        { x: widthMm, y: heightMm },
        markup`fill="none" stroke="${INK}" stroke-width="0.4"`,
      ),
      ...piece.tongues.map(({ low, high }) => box(low, high, pale)),
      ...piece.verniers.map(({ recess }) => box(recess.low, recess.high, pale)),
      ...piece.verniers.flatMap(({ slots }) =>
        slots.map(({ face, from, to }) => {
          const [a, b] = [spot(from), spot(to)];
          return markup`<line x1="${dot(a.x)}" y1="${dot(a.y)}" x2="${dot(b.x)}" y2="${dot(b.y)}" stroke="${face === 'front' ? INK : ACCENT}" stroke-width="${dot(width / 2)}"/>`;
        }),
      ),
      ...piece.combs.flatMap(({ slots }) =>
        slots.map(({ face, low, high }) => box(low, high, face === 'front' ? front : back)),
      ),
      ...piece.combs.map(({ number, middle, axis }) => {
        const at = spot(middle);
        const aside =
          axis === 'x'
            ? { x: at.x, y: at.y - 12 * scale - 1 }
            : { x: at.x + 12 * scale + 3, y: at.y };
        return textAt(aside, String(number), {
          sizeMm: 5,
          weight: 700,
          anchor: 'middle',
          rim: 'white',
        });
      }),
    ]),
  );
}
