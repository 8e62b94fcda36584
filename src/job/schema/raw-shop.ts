import type { RawHeights, RawShim } from './raw-bed-care.ts';
import type { RawHoldDown, RawTrack } from './raw-hold.ts';

/** What a shop file may hold, as it is written: every quantity still a number or a text. */
export type Written = number | string;

/** A spread as it is written: short, or the long form. */
export type RawSpread = Written | RawLongSpread;

export interface RawLongSpread {
  readonly nominal?: Written | undefined;
  readonly spread?: Written | undefined;
  readonly readings?: readonly Written[] | undefined;
  readonly gauge?: string | undefined;
  readonly recurs?: RawRecurrence | undefined;
}

export type RawRecurrence = 'shop' | 'power-up' | 'setup' | 'part' | 'placing' | 'feature';

export interface RawShop extends RawShopParts {
  readonly 'flipwright-shop': number;
  readonly name?: string | undefined;
}

/** The keys that a job may override. */
export interface RawShopParts {
  readonly units?: 'mm' | 'inch' | undefined;
  readonly machine?: RawMachine | undefined;
  readonly bed?: RawBed | undefined;
  readonly cutters?: readonly RawCutter[] | undefined;
  readonly 'touch-off'?: Readonly<Record<string, RawTouchTool>> | undefined;
  readonly gauges?: Readonly<Record<string, Written>> | undefined;
  readonly 'hold-downs'?: readonly RawHoldDown[] | undefined;
  readonly shims?: Readonly<Record<string, Written | RawShim>> | undefined;
}

export interface RawMachine {
  readonly travel?: readonly [Written, Written, Written] | undefined;
  readonly drive?: 'screw' | 'belt' | undefined;
  readonly lean?: RawSpread | undefined;
  readonly 'scale-x'?: RawSpread | undefined;
  readonly 'scale-y'?: RawSpread | undefined;
  readonly 'lost-motion'?: RawSpread | undefined;
  readonly repeatability?: RawSpread | undefined;
  readonly 'local-error'?: RawSpread | undefined;
  readonly 'local-error-over'?: Written | undefined;
  readonly homing?: RawSpread | undefined;
  readonly 'power-off'?: RawSpread | undefined;
  readonly 'cutter-lean-x'?: RawSpread | undefined;
  readonly 'cutter-lean-y'?: RawSpread | undefined;
  readonly 'above-the-tip'?: RawAboveTip | undefined;
}

export interface RawAboveTip {
  readonly 'collet-nut'?: RawRound | undefined;
  readonly spindle?: RawRound | undefined;
  readonly 'dust-shoe'?: RawShoe | undefined;
}

export interface RawRound {
  readonly radius: Written;
  readonly from: Written;
}

export interface RawShoe {
  readonly size: readonly [Written, Written];
  readonly from: Written;
}

export interface RawBed {
  readonly spoilboard?: RawSpoilboard | undefined;
  readonly inserts?: RawInserts | undefined;
  readonly 't-tracks'?: readonly RawTrack[] | undefined;
  readonly 'lean-x'?: RawSpread | undefined;
  readonly 'lean-y'?: RawSpread | undefined;
  readonly unevenness?: RawSpread | undefined;
  readonly heights?: RawHeights | undefined;
  readonly resurfaced?: Written | undefined;
  readonly screws?: readonly (readonly [Written, Written])[] | undefined;
}

export interface RawSpoilboard {
  readonly size: readonly [Written, Written];
  readonly thickness: Written;
  readonly material?: string | undefined;
  readonly 'old-holes'?: readonly (readonly [Written, Written])[] | undefined;
}

export interface RawInserts {
  readonly thread: 'M4' | 'M5' | 'M6' | 'M8';
  readonly first: readonly [Written, Written];
  readonly pitch: readonly [Written, Written];
  readonly count: readonly [number, number];
}

export interface RawCutter {
  readonly name: string;
  readonly kind: 'flat' | 'vee' | 'ball';
  readonly diameter: RawSpread;
  readonly angle?: Written | undefined;
  readonly 'tip-flat'?: RawSpread | undefined;
  readonly flute?: Written | undefined;
  readonly 'stick-out'?: Written | undefined;
  readonly length?: Written | undefined;
  readonly flutes?: number | undefined;
  readonly helix?: 'up' | 'down' | 'straight' | 'compression' | undefined;
  readonly 'push-off'?: RawSpread | undefined;
  readonly speed?: number | undefined;
  readonly feed?: number | undefined;
  readonly step?: Written | undefined;
}

export interface RawTouchTool {
  readonly thick?: Written | undefined;
  readonly diameter?: Written | undefined;
  readonly spread?: RawSpread | undefined;
  readonly bias?: Written | undefined;
}
