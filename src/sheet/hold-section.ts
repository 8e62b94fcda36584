import type { HoldPlan } from '../hold/plan.ts';
import { isGood, type PlacingPlan } from '../hold/placing-plan.ts';
import type { Job } from '../job/job.ts';
import { holdCaption, holdDrawing } from './hold-drawing.ts';
import { HOLD_CAUTION, holdHeadline, holdLines } from './hold-words.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import type { Told } from './sheet-input.ts';

/** How both placings are held, on the bench sheet; nothing when it was not asked for. */
export function holdSection(job: Job, { plan, notes }: Told['hold']): Html {
  if (plan === null) return markup``;
  return markup`<section class="holding">
            <h2>Holding down</h2>
            <p>${HOLD_CAUTION}</p>
            ${notes.map((note) => markup`<p><b>Note:</b> ${note}</p>`)}
            ${placingsHeld(job, plan)}
          </section>`;
}

/** Both placings in the order of work: drawn, and told line by line. */
export function placingsHeld(job: Job, plan: HoldPlan): readonly Html[] {
  const order = job.first === 'front' ? [plan.frontUp, plan.backUp] : [plan.backUp, plan.frontUp];
  return order.map((one) => placingHeld(job, one));
}

function placingHeld(job: Job, plan: PlacingPlan): Html {
  const lines = holdLines(job, plan).map(({ kind, text }) =>
    kind === 'bad' ? markup`<li><b>Put right first:</b> ${text}</li>` : markup`<li>${text}</li>`,
  );
  const which = plan.placing.order === 'first' ? 'First placing' : 'Second placing';
  return markup`<section>
    <h3>${which}. ${holdHeadline(plan)}</h3>
    <figure>${holdDrawing(job, plan)}<figcaption>${holdCaption(job, plan)}</figcaption></figure>
    <ul>
      ${lines}
    </ul>
  </section>`;
}

/** What the cautions of the sheet say about clamps. */
export function holdCaution({ plan }: Told['hold']): Html {
  const flying = 'Stand out of the line in which a struck clamp or screw would fly.';
  if (plan === null)
    return markup`<li> <b>Clamps are not planned on this sheet, and no holding force is worked out.</b> Choose and place them yourself, over solid wood and bed, clear of cutter, nut and dust shoe. ${flying} </li>`;
  const isReady = [plan.frontUp, plan.backUp].every((one) => one.reach === null || isGood(one));
  return isReady
    ? markup`<li> <b>Clamps are planned under “Holding down”; their forces are estimates.</b> Try every clamp by hand, after the first pass once more. ${flying} </li>`
    : markup`<li> <b>Do not cut yet: no good way of holding it down was found.</b> “Holding down” says what is in the way and what would do. ${flying} </li>`;
}
