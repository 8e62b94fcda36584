import type { Job, Origin, Recurrence, Units } from '../job/job.ts';
import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import { writtenSpread } from '../sheet/written-spread.ts';
import { misfitModel } from '../setup/misfit.ts';
import { sourcesOf } from '../sources/sources-of.ts';
import type { SourceLine } from '../stackup/prediction.ts';

/** Where the figure of each source comes from, by the source's name. */
export function originsOf(job: Job): ReadonlyMap<string, Origin> {
  const sources = sourcesOf(job, misfitModel(job).deviations);
  return new Map(sources.map(({ id, origin }) => [id, origin]));
}

/** `shop.yaml, line 12`; `common practice, no source`, and why where there is more to say. */
export function originWords(origin: Origin | undefined, text: string): string {
  if (origin === undefined) return 'not known';
  if (origin.kind === 'assumed')
    return /common practice/.test(origin.because)
      ? `assumed: ${origin.because}`
      : `assumed, common practice, no source: ${origin.because}`;
  // The folder is this machine's own affair.
  const file = origin.file.split(/[\\/]/).at(-1)!;
  const measured = /, measured (\S+)$/.exec(text)?.[1];
  return measured === undefined
    ? `${file}, line ${origin.line}`
    : `measured ${measured}: ${file}, line ${origin.line}`;
}

/** How far it may be off, with a unit at each length. */
export function spreadOf({ name, text }: SourceLine, units: Units): string {
  // A strain is a pure number: the wood moves by a share of its length.
  const written = name.startsWith('movement ') ? text : writtenSpread(text, units);
  return written.replaceAll('..', ' to ').replace(/-(?=\d)/g, '\u2212');
}

/** With what it is drawn anew. */
const NEW_WITH: Readonly<Record<Recurrence, string>> = {
  shop: 'never: it is the machine’s own',
  'power-up': 'each switching on',
  setup: 'each setting up',
  part: 'each blank',
  placing: 'each placing',
  feature: 'each cut',
};

/** All that can be off: how far, how it comes back, where the figure comes from. */
export function whereFrom(job: Job, sources: readonly SourceLine[]): Html {
  const origins = originsOf(job);
  const { units } = job.shop;
  const assumed = sources.filter(({ because }) => because !== null).length;
  const head =
    assumed === 0
      ? markup`<p>Nothing was assumed: every figure was stated.</p>`
      : markup`<p>Of ${sources.length} things that can be off here, ${assumed} were stated by nobody: for those common figures were taken, which have no published source. State your own to make the prediction yours.</p>`;
  return markup`${head}<div class="wide"><table class="origins">
<thead><tr><th scope="col">What can be off</th><th scope="col">How far</th><th scope="col">Anew with</th><th scope="col">Where the figure comes from</th></tr></thead>
<tbody>${sources.map((line) => {
    const origin = origins.get(line.name);
    const mark =
      origin?.kind === 'assumed' ? markup`<span class="assumed">assumed</span> ` : markup``;
    const words = originWords(origin, line.text).replace(/^assumed[:,] /, '');
    return markup`<tr><th scope="row">${line.words}</th><td>${spreadOf(line, units)}</td><td>${NEW_WITH[line.recurs]}</td><td>${mark}${words}</td></tr>`;
  })}</tbody></table></div>`;
}
