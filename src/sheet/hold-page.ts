import type { HoldPlan } from '../hold/plan.ts';
import type { PlacingPlan } from '../hold/placing-plan.ts';
import type { Job } from '../job/job.ts';
import { holdDrawing } from './hold-drawing.ts';
import { HOLD_CAUTION, holdHeadline, holdLines } from './hold-words.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { PAGE_STYLE } from './page-style.ts';

/** The plan of both placings as a page that prints, in the order of work. */
export function holdPage(job: Job, plan: HoldPlan, version: string): string {
  const order = job.first === 'front' ? [plan.frontUp, plan.backUp] : [plan.backUp, plan.frontUp];
  return markup`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>${job.name}: holding down</title>
        <style>
          ${PAGE_STYLE}
        </style>
      </head>
      <body>
        <main>
          <header>
            <p class="kind">Holding down</p>
            <h1>${job.name}</h1>
          </header>
          <section class="cautions">
            <h2>Cautions first</h2>
            <p>${HOLD_CAUTION}</p>
          </section>
          ${order.map((one) => placing(job, one))}
          <footer>Made by Flipwright ${version} from the job “${job.name}”.</footer>
        </main>
      </body>
    </html> `.html;
}

function placing(job: Job, plan: PlacingPlan): Html {
  const lines = holdLines(job, plan).map(({ kind, text }) =>
    kind === 'bad' ? markup`<li><b>Put right first:</b> ${text}</li>` : markup`<li>${text}</li>`,
  );
  return markup`<section>
    <h2>${plan.placing.order === 'first' ? 'First placing' : 'Second placing'}</h2>
    <h3>${holdHeadline(plan)}</h3>
    <figure>${holdDrawing(job, plan)}</figure>
    <ul>
      ${lines}
    </ul>
  </section>`;
}
