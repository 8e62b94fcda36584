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

/**
 * What moves with this cutter: the cutter itself and what the shop file says hangs above its tip. A
 * cutter that sticks out less than the nut is said to hang above the tip brings all of it down.
 */
export function overheadOf(job: Job, cutter: Cutter): readonly Overhead[] {
  const { colletNut, spindle, dustShoe } = job.shop.machine.aboveTip;
  const lower = Math.max(0, (colletNut?.fromMm ?? 0) - (cutter.stickOutMm ?? Infinity));
  return [
    { what: 'cutter', plan: { kind: 'disc', radiusMm: cutter.diameterMm / 2 }, fromMm: 0 },
    ...(colletNut === null ? [] : [disc('collet nut', colletNut, lower)]),
    ...(spindle === null ? [] : [disc('spindle', spindle, lower)]),
    ...(dustShoe === null ? [] : [box(dustShoe, lower)]),
  ];
}

const disc = (
  what: Overhead['what'],
  thing: { readonly radiusMm: number; readonly fromMm: number },
  lowerMm: number,
): Overhead => ({
  what,
  plan: { kind: 'disc', radiusMm: thing.radiusMm },
  fromMm: thing.fromMm - lowerMm,
});

const box = (
  thing: { readonly xMm: number; readonly yMm: number; readonly fromMm: number },
  lowerMm: number,
): Overhead => ({
  what: 'dust shoe',
  plan: { kind: 'box', xMm: thing.xMm, yMm: thing.yMm },
  fromMm: thing.fromMm - lowerMm,
});
