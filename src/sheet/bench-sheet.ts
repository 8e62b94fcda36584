import { assumedList } from './assumed-list.ts';
import { cautions } from './cautions.ts';
import { checkSteps } from './check-steps.ts';
import { learnSteps } from './dial-in-steps.ts';
import { heightsTable } from './heights-table.ts';
import { holdSection } from './hold-section.ts';
import { holdSteps } from './hold-steps.ts';
import type { Html } from './html.ts';
import { markup } from './html.ts';
import { keyList } from './key-list.ts';
import { wayOf } from './locating/way-of.ts';
import type { Way } from './locating/way.ts';
import { needSection } from './need-section.ts';
import { pageOf } from './page.ts';
import { placingDrawing } from './placing-drawing.ts';
import { placingSteps } from './placing-steps.ts';
import { inOrder } from './places.ts';
import { prepareSteps } from './prepare-steps.ts';
import type { SheetInput } from './sheet-input.ts';
import { stepList } from './step.ts';
import { turnDrawing } from './turn-drawing.ts';
import { turnSteps } from './turn-steps.ts';
import { verdictLine } from './verdict-line.ts';
import { countText } from './words.ts';

/** One self-contained page for the machine: cautions, pictures, prediction, and the order of work. */
export function benchSheet(input: SheetInput): string {
  const { job, prediction } = input;
  const way = wayOf(input);
  return pageOf(
    `Bench sheet: ${job.name}`,
    markup`<header>
            <p class="kind">Bench sheet</p>
            <h1>${job.name}</h1>
            <p class="verdict">${verdictLine(prediction, job.goodEnoughShare, job.shop.units)}</p>
          </header>
          ${cautions(input, way)} ${pictures(input, way)}
          <section class="prediction">
            <h2>Where the back will land</h2>
            <p>
              Each mark is one part of the trial, seen from the front; the middle is where the back
              should land on the front. <b>Thick circle</b>: the limit. <b>Dots</b>: within it.
              <b>Crosses</b>: too far. <b>Dashes</b>: about 95 in 100 land inside. What acts together counts with each, so
              shares of the scatter may add up to more than 100 %.
            </p>
            ${prediction.needs.map((need) => needSection(prediction, need, job.goodEnoughShare, job.shop.units))}
            <h3>What was assumed</h3>
            ${assumedList(prediction, job.shop.units)}
          </section>
          <section class="keep">
            <h2>${way.heights.title}</h2>
            <p>
              How close each thing that moves with the cutter comes to ${way.heights.tells}, at its lowest.
              ${input.hold.plan === null ? 'Clamps are not in this table.' : 'Clamps are under “Holding down”.'}
            </p>
            ${heightsTable(job, way.heights.column, input.clearances)}
          </section>
          ${holdSection(job, input.hold)} ${work(input, way)}
          <footer>
            Made by Flipwright ${input.version} from the job “${job.name}” and the shop
            “${job.shop.name}”: ${countText(prediction.trials)} trials, seed ${prediction.seed}.
          </footer>`,
  );
}

function pictures(input: SheetInput, way: Way): Html {
  const { job, placings } = input;
  const [first, second] = inOrder(job, placings);
  return markup`<section class="pictures" aria-label="Both placings">
    <figure>
      ${which('First placing', `${first.faceUp.toUpperCase()} FACE UP`)}
      ${placingDrawing(job, first, way.in(first))}
    </figure>
    <figure>
      ${which('Turn over', job.turn === 'about-y' ? 'LEFT AND RIGHT CHANGE PLACES' : 'NEAR AND FAR CHANGE PLACES')}
      ${turnDrawing(job, placings, way)}
    </figure>
    <figure>
      ${which('Second placing', `${second.faceUp.toUpperCase()} FACE UP`)}
      ${placingDrawing(job, second, way.in(second))}
    </figure>
    ${keyList(input, way.key)}
  </section>`;
}

function which(placing: string, words: string): Html {
  return markup`<figcaption class="which"><h2>${placing}</h2><b>${words}</b></figcaption>`;
}

function work(input: SheetInput, way: Way): Html {
  const { job, placings, prediction } = input;
  const [first, second] = inOrder(job, placings);
  const next = job.first === 'front' ? job.zero.backUp : job.zero.frontUp;
  const parts = [
    { title: 'Prepare', steps: prepareSteps(job, way) },
    {
      title: `First placing: ${first.faceUp} up`,
      steps: placingSteps(
        job,
        first,
        way.in(first),
        next,
        holdSteps(job, input.hold, first.faceUp),
      ),
    },
    { title: 'Turn over', steps: turnSteps(input, way) },
    {
      title: `Second placing: ${second.faceUp} up`,
      steps: [
        ...placingSteps(
          job,
          second,
          way.in(second),
          null,
          holdSteps(job, input.hold, second.faceUp),
        ),
        ...way.next,
      ],
    },
    { title: 'Check the part', steps: [...checkSteps(job, prediction), ...learnSteps(job)] },
  ];
  let from = 1;
  const lists = parts.map(({ title, steps }) => {
    const list = stepList(title, steps, from);
    from += steps.length;
    return list;
  });
  return markup`<section class="work">
    <h2>At the machine, in this order</h2>
    ${lists}
  </section>`;
}
