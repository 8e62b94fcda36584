import type { Html } from './html.ts';
import { markup } from './html.ts';

/** One thing to do at the machine, and what to write down while doing it. */
export interface Step {
  readonly words: Html;
  readonly boxes: readonly Blank[];
}

/** A box to write a reading in. */
export interface Blank {
  readonly label: string;
  readonly unit: string;
}

export function step(words: Html, ...boxes: readonly Blank[]): Step {
  return { words, boxes };
}

/** Steps under a heading, each with a box to tick, numbered on from `from`. */
export function stepList(title: string, steps: readonly Step[], from: number): Html {
  return markup`<section class="steps"> <h3>${title}</h3> <ol start="${from}"> ${steps.map((one, i) => stepItem(one, from + i))} </ol> </section>`;
}

function stepItem({ words, boxes }: Step, number: number): Html {
  return markup`<li> <b>${number}</b><span class="tick" aria-hidden="true"></span> <div>${words}${boxRow(boxes)}</div> </li> `;
}

function boxRow(boxes: readonly Blank[]): Html {
  if (boxes.length === 0) return markup``;
  return markup`<div class="boxes"> ${boxes.map((box) => markup`<span class="box"><span>${box.label}</span><i></i><span>${box.unit}</span></span>`)} </div>`;
}
