import type { Cutter, Job } from '../job/job.ts';
import type { Clearance } from './clearance.ts';

/** Something that moves with the cutter: its plan about the axis and where its lower end hangs. */
export interface Overhead {
  readonly what: Clearance['what'];
  readonly plan:
    | { readonly kind: 'disc'; readonly radiusMm: number }
    | { readonly kind: 'box'; readonly xMm: number; readonly yMm: number };
  /** Height of its lower end above the cutter's tip, mm. */
  readonly fromMm: number;
}

/** What moves with this cutter: the cutter itself and what the shop file says hangs above its tip. */
export function overheadOf(job: Job, cutter: Cutter): readonly Overhead[] {
  const { colletNut, spindle, dustShoe } = job.shop.machine.aboveTip;
  return [
    { what: 'cutter', plan: { kind: 'disc', radiusMm: cutter.diameterMm / 2 }, fromMm: 0 },
    ...(colletNut === null ? [] : [disc('collet nut', colletNut)]),
    ...(spindle === null ? [] : [disc('spindle', spindle)]),
    ...(dustShoe === null ? [] : [box(dustShoe)]),
  ];
}

const disc = (
  what: Overhead['what'],
  thing: { readonly radiusMm: number; readonly fromMm: number },
): Overhead => ({
  what,
  plan: { kind: 'disc', radiusMm: thing.radiusMm },
  fromMm: thing.fromMm,
});

const box = (thing: {
  readonly xMm: number;
  readonly yMm: number;
  readonly fromMm: number;
}): Overhead => ({
  what: 'dust shoe',
  plan: { kind: 'box', xMm: thing.xMm, yMm: thing.yMm },
  fromMm: thing.fromMm,
});
