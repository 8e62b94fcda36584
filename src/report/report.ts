import { verdictLine } from '../sheet/verdict-line.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { goodEnough } from '../verdict/needs-met.ts';
import { glance } from './glance.ts';
import { holding } from './holding.ts';
import { landingPart } from './landing-part.ts';
import { method, noticesOf } from './method.ts';
import { needPart } from './need-part.ts';
import { REPORT_STYLE } from './page-style.ts';
import { reckonings } from './reckonings.ts';
import type { ReportInput } from './report-input.ts';
import { scenesOf } from './scene/scene.ts';
import { view } from './view.ts';
import { adviceList, comparisonTable } from './ways.ts';
import { originsOf, whereFrom } from './where-from.ts';

/** The whole report as one page that works from a file, light and dark, with scripts and without. */
export function report(input: ReportInput): string {
  const { job, prediction, comparison, advice, viewer } = input;
  const origins = originsOf(job);
  const { units } = job.shop;
  const hasBack = job.features.some(({ face }) => face === 'back');
  const parts: readonly Part[] = [
    ...(hasBack
      ? [{ id: 'landing', title: 'Where the back lands', body: landingPart(job, prediction) }]
      : []),
    {
      id: 'needs',
      title: 'Each need',
      body: markup`<p class="small">In the pictures one mark stands for one part in a hundred, out of the first few hundred imagined; a cross is a part beyond the limit, hatched ground is where it must not be. The shares say in how much of the scatter a thing has a hand.</p>${prediction.needs.map((need, k) => needPart(job, prediction, need, k, origins))}`,
    },
    ...(advice === null
      ? []
      : [
          {
            id: 'advice',
            title: 'What to do first',
            body: adviceList(advice, prediction.digitsAsked),
          },
        ]),
    ...(comparison === null
      ? []
      : [
          {
            id: 'ways',
            title: 'Other ways of locating it',
            body: comparisonTable(comparison, prediction.digitsAsked),
          },
        ]),
    { id: 'reckonings', title: 'Three ways of reckoning', body: reckonings(prediction, units) },
    { id: 'bed', title: 'On the bed', body: view(job, scenesOf(input), viewer !== null) },
    { id: 'holding', title: 'Holding it down', body: holding(job, input.hold) },
    {
      id: 'where-from',
      title: 'What was assumed, and where each figure comes from',
      body: whereFrom(job, prediction.sources),
    },
    { id: 'method', title: 'Method', body: method(prediction) },
  ];
  const isGood = goodEnough(prediction, job.goodEnoughShare);
  return markup`<!doctype html>
<html lang="en"><head><meta charset="utf-8" /><meta name="viewport" content="width=device-width, initial-scale=1" /><meta name="color-scheme" content="light dark" /><title>${job.name}: report</title><style>${REPORT_STYLE}</style></head>
<body><a class="skip" href="#main">To the report</a>
<header class="top"><div><p class="kind">Report</p><button type="button" id="theme" hidden></button></div><h1>${job.name}</h1>
<p class="verdict ${isGood ? 'good' : 'bad'}"><span aria-hidden="true">${isGood ? '✓' : '✕'}</span> ${verdictLine(prediction, job.goodEnoughShare, units)}</p>
<p class="lead">All figures are estimates that rest on the spreads listed below: cut a test piece where it matters. A router, its cutters and flying pieces can hurt you: what the makers of your machine and cutters say, local rules and licensed practice come first.</p>
<nav aria-label="Parts of this report"><ul>${parts.map(({ id, title }) => markup`<li><a href="#${id}">${title}</a></li>`)}</ul></nav></header>
<main id="main">${glance(job, prediction)}
${parts.map(({ id, title, body }) => markup`<section class="part" id="${id}"><h2>${title}</h2>${body}</section>`)}</main>
<footer><p>Made by Flipwright ${input.version} from the job “${job.name}”.</p>${noticesOf(viewer?.notices ?? [])}</footer>${scriptOf(viewer?.code ?? null)}</body></html>
`.html;
}

interface Part {
  readonly id: string;
  readonly title: string;
  readonly body: Html;
}

/** Our own script as it stands; nothing in it may end the element early. */
function scriptOf(code: string | null): Html {
  if (code === null) return markup``;
  return {
    html: `<script>${code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--')}</script>`,
  };
}
