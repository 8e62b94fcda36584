import type { Allowance, Allowed } from '../advise/allow/allow.ts';
import { gaugeFor, type Gauge } from '../advise/allow/gauges.ts';
import { overOf, spreadTold } from '../advise/allow/told-size.ts';
import type { Yield } from '../advise/allow/yields.ts';
import { sdOf } from '../num/spread-of.ts';

/** The same for programs: distributions in mm, tangents and strains; `by` in times of what it is. */
export function allowJson(
  found: Allowance,
  gauges: readonly Gauge[],
  { seed, trials }: { readonly seed: number; readonly trials: number },
): string {
  const { job, wish, asIs, each, together, batch } = found;
  return JSON.stringify(
    {
      json: 1,
      job: job.name,
      seed,
      trials,
      wish,
      asIs: yieldJson(found, asIs),
      each: each.map((one) => allowedJson(found, one, gauges)),
      together,
      batch,
    },
    null,
    2,
  );
}

const yieldJson = ({ job }: Allowance, { chance, need, isMet }: Yield) => ({
  chance,
  need: need === null ? null : job.needs[need]!.name,
  isMet,
});

function allowedJson(found: Allowance, { group, verdict }: Allowed, gauges: readonly Gauge[]) {
  const [source] = group.sources;
  const { units } = found.job.shop;
  const of = {
    id: group.id,
    words: group.words,
    sources: group.sources.map(({ id }) => id),
    is: spreadTold(source!, 1, units),
    verdict: verdict.kind,
  };
  switch (verdict.kind) {
    case 'any':
      return { ...of, by: verdict.upTo };
    case 'not enough':
      return { ...of, without: yieldJson(found, verdict.without) };
    case 'up to': {
      const { by, sure, distribution } = verdict;
      const fit = gaugeFor(gauges, group.measure, overOf(source!.text), sdOf(distribution));
      return {
        ...of,
        by,
        sure,
        upTo: spreadTold(source!, by, units),
        distribution,
        gauge: fit?.does?.words ?? null,
        tooCoarse: fit?.doesNot?.words ?? null,
      };
    }
  }
}
