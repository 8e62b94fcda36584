import type { HoldPlan } from '../hold/plan.ts';
import type { Job } from '../job/job.ts';
import { placingsHeld } from './hold-section.ts';
import { HOLD_CAUTION } from './hold-words.ts';
import { markup } from './html.ts';
import { pageOf } from './page.ts';

/** The plan of both placings as a page that prints, in the order of work. */
export function holdPage(
  job: Job,
  plan: HoldPlan,
  notes: readonly string[],
  version: string,
): string {
  return pageOf(
    `${job.name}: holding down`,
    markup`<header>
            <p class="kind">Holding down</p>
            <h1>${job.name}</h1>
          </header>
          <section class="cautions">
            <h2>Cautions first</h2>
            <p>${HOLD_CAUTION}</p>
            ${notes.map((note) => markup`<p><b>Note:</b> ${note}</p>`)}
          </section>
          ${placingsHeld(job, plan)}
          <footer>Made by Flipwright ${version} from the job “${job.name}”.</footer>`,
  );
}
