import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { certainChanceText } from '../sheet/certain-words.ts';
import type { Chance } from '../stackup/chance.ts';
import type { AdviceItem, Comparison } from './report-input.ts';

/** The same part located in several ways: chance of each need. */
export function comparisonTable({ needs, ways }: Comparison, digitsAsked: number): Html {
  return markup`<div class="wide"><table class="ways"><thead><tr><th scope="col">Way of locating</th>${needs.map((name) => markup`<th scope="col">${name}</th>`)}</tr></thead>
<tbody>${ways.map(
    ({ name, words, isThisJob, chances }) =>
      markup`<tr><th scope="row">${name}${isThisJob ? markup` <span class="mark met">this job</span>` : markup``}<small>${words}</small></th>${chances.map((chance) => markup`<td>${chance === null ? '–' : chanceOf(chance, digitsAsked)}</td>`)}</tr>`,
  )}</tbody></table></div>`;
}

/** What to do, the most worthwhile first. */
export function adviceList(items: readonly AdviceItem[], digitsAsked: number): Html {
  if (items.length === 0)
    return markup`<p>Leave it as it is: nothing that was tried makes it better.</p>`;
  return markup`<ol class="advice">${items.map(
    ({ doThis, because, gain }) =>
      markup`<li><b>${doThis}</b> ${because}${gain === null ? markup`` : markup` <span class="gain">${gain.need}: ${chanceOf(gain.before, digitsAsked)} → ${chanceOf(gain.after, digitsAsked)} good parts</span>`}</li>`,
  )}</ol>`;
}

const chanceOf = (chance: Chance, digitsAsked: number): string =>
  certainChanceText(chance, digitsAsked);
