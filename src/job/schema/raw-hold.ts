import type { RawPlace } from './raw-job.ts';
import type { RawSpread, Written } from './raw-shop.ts';

/** What a job file may hold about holding down, as it is written. */
export interface RawHold {
  readonly pusher?: 'towards-stops' | 'none' | undefined;
  readonly 'clamp-drag'?: RawSpread | undefined;
  readonly clamps?: 'auto' | 'none' | RawClamps | undefined;
  readonly screws?: readonly RawPlace[] | undefined;
  readonly friction?: number | undefined;
  readonly 'cutting-force'?: Written | undefined;
  readonly 'lifting-force'?: Written | undefined;
  readonly vacuum?: RawVacuum | undefined;
  readonly tape?: RawTape | undefined;
  readonly filler?: 'yes' | 'no' | boolean | undefined;
}

export interface RawClamps {
  readonly 'front-up'?: RawBolts | undefined;
  readonly 'back-up'?: RawBolts | undefined;
}

export interface RawBolts {
  readonly pin?: readonly RawPlace[] | undefined;
  readonly forbid?: readonly RawPlace[] | undefined;
}

export interface RawVacuum {
  readonly gauge: Written;
  readonly sealed: RawPlace;
}

export interface RawTape {
  readonly strength?: Written | undefined;
  readonly stuck: RawPlace;
}

export interface RawPrograms {
  readonly 'front-up'?: RawProgram | undefined;
  readonly 'back-up'?: RawProgram | undefined;
}

export interface RawProgram {
  readonly file: string;
  readonly cutter: string;
  readonly tools?: Readonly<Record<string, string>> | undefined;
}

export interface RawTabs {
  readonly count: number;
  readonly width: Written;
  readonly thick: Written;
}

export interface RawTrack {
  readonly along: 'x' | 'y';
  readonly at: Written;
  readonly from: Written;
  readonly to: Written;
}

export interface RawHoldDown {
  readonly name: string;
  readonly kind: 'strap-clamp' | 'screw';
  readonly count?: number | undefined;
  readonly slot?: readonly [Written, Written] | undefined;
  readonly length?: Written | undefined;
  readonly pad?: readonly [Written, Written] | undefined;
  readonly height?: Written | undefined;
  readonly bolt?: 'M4' | 'M5' | 'M6' | 'M8' | undefined;
  readonly torque?: string | undefined;
  readonly diameter?: Written | undefined;
  readonly head?: readonly [Written, Written] | undefined;
}
