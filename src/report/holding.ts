import type { PlacingPlan } from '../hold/placing-plan.ts';
import type { Job } from '../job/job.ts';
import { holdDrawing } from '../sheet/hold-drawing.ts';
import { HOLD_CAUTION, holdHeadline, holdLines } from '../sheet/hold-words.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import type { ReportInput } from './report-input.ts';

/** How the blank is held in both placings, and which pieces come free; or why that was not planned. */
export function holding(job: Job, hold: ReportInput['hold']): Html {
  if (hold.plan === null) return markup`<p>Not planned here.</p>`;
  const { frontUp, backUp } = hold.plan;
  const order = job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
  return markup`<p class="caution">${HOLD_CAUTION}</p>${hold.notes.map((note) => markup`<p>Note: ${note}</p>`)}<div class="held">${order.map((plan) => placing(job, plan))}</div>`;
}

function placing(job: Job, plan: PlacingPlan): Html {
  const lines = holdLines(job, plan).map(({ kind, text }) =>
    kind === 'bad'
      ? markup`<li class="bad"><b>Put right first:</b> ${text}</li>`
      : markup`<li>${text}</li>`,
  );
  const free = plan.pieces.length;
  const pieces =
    free === 0
      ? 'No piece comes free.'
      : `${free} ${free === 1 ? 'piece comes' : 'pieces come'} free: see below.`;
  return markup`<section><h3>${plan.placing.order === 'first' ? 'First placing' : 'Second placing'}: ${holdHeadline(plan)}</h3><p>${pieces}</p><figure class="paper">${holdDrawing(job, plan)}</figure><ul>${lines}</ul></section>`;
}
