import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { countText } from '../sheet/words.ts';
import type { Prediction } from '../stackup/prediction.ts';
import type { Notice } from './report-input.ts';
import { told } from './told.ts';

const ENDED: Readonly<Record<Prediction['ended'], string>> = {
  digits: 'as many as the digits asked for took',
  trials: 'as many as were asked for, in whole blocks',
  seconds: 'stopped when the time was up',
  interrupted: 'stopped before its end: this is what was known by then',
};

/** How the figures were worked out, so that anybody can do it again. */
export function method({ trials, seed, digitsAsked, ended }: Prediction): Html {
  return markup`<dl class="method"><dt>Trials</dt><dd>${told('trials', trials, countText(trials))} imagined parts, ${ENDED[ended]}.</dd>
<dt>Seed</dt><dd>${told('seed', seed, String(seed))}. The same seed and number of trials give the same figures to the last digit.</dd>
<dt>Digits</dt><dd>${told('digitsAsked', digitsAsked, String(digitsAsked))} of the standard deviation asked for; every number is shown with the digits that are certain and no more (JCGM 101:2008, 7.9, with 99 % half-widths). Chances are rounded down.</dd>
<dt>Each trial</dt><dd>lays an imaginary blank with its own faults against what locates it, finds the zero, cuts, turns it over, seats it again and cuts again, on a machine that leans, stretches and repeats only so well.</dd>
<dt>Shares</dt><dd>Part of the variance in which a source has a hand; what acts together counts with each.</dd>
<dt>Not in the figures</dt><dd>A wrong turn, lost steps, a chip in the corner, a blank that bends under its clamps. The bench sheet has checks for them.</dd></dl>`;
}

/** Licences of what is part of the page. */
export const noticesOf = (notices: readonly Notice[]): Html =>
  notices.length === 0
    ? markup``
    : markup`<details class="notices"><summary>Libraries in this page and their licences</summary>${notices.map(({ name, licence }) => markup`<h3>${name}</h3><pre>${licence}</pre>`)}</details>`;
