import type { AboveTip, Band, StopsJob } from '../job/job.ts';
import type { Clearance } from '../sweep/clearance.ts';
import { figure, mm, type Cannot } from './answer.ts';
import { roundingMm, stopNumbers } from './numbers.ts';
import type { BarePart } from './stop-part.ts';
import type { Strike } from './strike.ts';

/** What comes of making the stops: the parts, a reason why not, or something that strikes them. */
export type Attempt =
  | { readonly kind: 'made'; readonly parts: readonly BarePart[] }
  | Cannot
  | { readonly kind: 'struck'; readonly strike: Strike };

/**
 * What to write in the job or shop file instead, so that nothing strikes the stops: only what was
 * tried and made them. A lower stop is not always lower on top: its screw heads come out of it.
 */
export function remedyText(
  job: StopsJob,
  strike: Strike,
  again: (job: StopsJob) => Attempt,
): string {
  const found = [lowerStop(job, again), hungHigher(job, strike, again)].filter(
    (text) => text !== null,
  );
  return found.length > 0
    ? found.join(', or ')
    : `neither a lower stop nor a cutter that sticks out ${mm(stopNumbers.stickOutMoreMm)} further clears it: keep ${strike.over.feature} further from the stop, or set the stop elsewhere (corner, fence, fence-touch, side-touch)`;
}

/** The highest stop below this one that can be made. */
function lowerStop(job: StopsJob, again: (job: StopsJob) => Attempt): string | null {
  for (const band of lowerBands(job.stops.band))
    if (again({ ...job, stops: { ...job.stops, band } }).kind === 'made')
      return band.kind === 'plain'
        ? `height: ${figure(band.heightMm)}`
        : `touch-height: ${figure(band.touchHeightMm)}`;
  return null;
}

const stepMm = 0.5;

function lowerBands(band: Band): readonly Band[] {
  const { lowestStopMm, bandHalfMm, reliefUprightMm } = stopNumbers;
  return band.kind === 'plain'
    ? stepsDown(band.heightMm, lowestStopMm).map((heightMm) => ({ ...band, heightMm }))
    : stepsDown(band.touchHeightMm, bandHalfMm + reliefUprightMm).map((touchHeightMm) => ({
        ...band,
        touchHeightMm,
      }));
}

/** Whole steps below a length, highest first, down to the lowest. */
function stepsDown(belowMm: number, lowestMm: number): readonly number[] {
  const first = Math.ceil(belowMm / stepMm) - 1;
  const last = Math.ceil(lowestMm / stepMm);
  return Array.from({ length: Math.max(0, first - last + 1) }, (_, i) => (first - i) * stepMm);
}

type Hung = Exclude<Clearance['what'], 'cutter'>;

const HUNG: Record<Hung, { readonly key: string; readonly of: keyof AboveTip }> = {
  'collet nut': { key: 'collet-nut', of: 'colletNut' },
  spindle: { key: 'spindle', of: 'spindle' },
  'dust shoe': { key: 'dust-shoe', of: 'dustShoe' },
};

/** Everything that strikes, raised by what is missing, one after the other until nothing does. */
function hungHigher(
  job: StopsJob,
  first: Strike,
  again: (job: StopsJob) => Attempt,
): string | null {
  const raisedMm = new Map<Hung, number>();
  let now: Attempt = { kind: 'struck', strike: first };
  let tried = job;
  while (now.kind === 'struck') {
    const { what } = now.strike.over;
    // Raised once, a thing clears everything but for a stop that has become another: leave it then.
    if (what === 'cutter' || raisedMm.has(what)) return null;
    const wasMm = fromMm(tried, what);
    const thereMm = tenthUp(wasMm + now.strike.shortMm);
    raisedMm.set(what, thereMm - wasMm);
    tried = hungAt(tried, what, thereMm);
    now = again(tried);
  }
  if (now.kind === 'cannot') return null;
  const things = [...raisedMm.keys()];
  const mostMm = Math.max(...raisedMm.values());
  const shoeAlone = things.every((what) => what === 'dust shoe');
  if (!shoeAlone && mostMm > stopNumbers.stickOutMoreMm) return null;
  const written = things.map((what) => `${HUNG[what].key}: {from: ${figure(fromMm(tried, what))}}`);
  return `${written.join(' and ')} (${shoeAlone ? 'hung higher, or ' : ''}the cutter sticking out ${mm(mostMm)} further)`;
}

const fromMm = (job: StopsJob, what: Hung): number =>
  job.shop.machine.aboveTip[HUNG[what].of]?.fromMm ?? 0;

function hungAt(job: StopsJob, what: Hung, heightMm: number): StopsJob {
  const { machine } = job.shop;
  const { of } = HUNG[what];
  const thing = machine.aboveTip[of];
  const aboveTip = { ...machine.aboveTip, [of]: thing && { ...thing, fromMm: heightMm } };
  return { ...job, shop: { ...job.shop, machine: { ...machine, aboveTip } } };
}

/** Up to the next tenth of a millimetre. */
const tenthUp = (lengthMm: number): number => Math.ceil((lengthMm - roundingMm) * 10) / 10;
