import type { Html } from './html.ts';
import { markup } from './html.ts';
import { freesPiece } from './freed.ts';
import type { Way } from './locating/way.ts';
import { holdCaution } from './hold-section.ts';
import { strikes } from './heights-table.ts';
import type { SheetInput } from './sheet-input.ts';
import { lengthText } from './words.ts';

/** What can hurt, before anything else on the page. */
export function cautions({ job, clearances, hold }: SheetInput, way: Way): Html {
  const units = job.shop.units;
  const struck = strikes(clearances).map(
    (c) =>
      markup`<li> <b>Do not run this job as it stands:</b> the ${c.what} passes ${lengthText(c.bodyTopMm - (c.lowestMm ?? 0), units)} too low over ${c.body}, ${c.placing === 'front-up' ? 'front' : 'back'} up${c.feature === null ? '' : `, while ${c.feature} is cut`}. </li>`,
  );
  const freed = job.features
    .filter((feature) => freesPiece(job, feature))
    .map((feature) => feature.name);
  const loose =
    freed.length === 0
      ? markup``
      : markup`<li> <b>Loose pieces:</b> ${freed.join(', ')} ${freed.length === 1 ? 'sets a piece' : 'set pieces'} free. Plan how it is held before you start. </li>`;
  return markup`<section class="cautions"> <h2>Cautions first</h2> <ul> ${struck} <li> <b>The makers of machine and cutters, your local rules and licensed practice come first.</b> Where they say something else than this sheet, do what they say. </li> <li> <b>Eyes, ears, lungs:</b> wear glasses and ear protection, draw the dust off. No gloves, no loose sleeves, hair or cords near a turning cutter. </li> <li> <b>Hands off until the spindle stands still.</b> Keep the emergency stop in reach. Never leave a running machine alone. </li> ${holdCaution(hold)} ${loose}${way.cautions.map((caution) => markup` <li> ${caution} </li>`)} <li> <b>The figures know small errors, not blunders:</b> a wrong turn, a chip in the corner or lost steps are caught by the ticks below, so tick every one. </li> </ul> </section>`;
}
