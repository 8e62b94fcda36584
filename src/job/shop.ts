import type { Point } from '../plane/point.ts';
import type { Spread } from './job.ts';

export type Units = 'mm' | 'inch';

export interface Shop {
  readonly name: string;
  readonly units: Units;
  readonly machine: Machine;
  readonly bed: Bed;
  readonly cutters: readonly Cutter[];
}

export interface Machine {
  readonly travelMm: { readonly x: number; readonly y: number; readonly z: number };
  readonly drive: 'screw' | 'belt';
  /** The Y axis leans right going away (tangent). */
  readonly lean: Spread;
  readonly scaleX: Spread;
  readonly scaleY: Spread;
  /** Per axis, both ways together: a place is off by plus or minus half of it. */
  readonly lostMotion: Spread;
  readonly repeatability: Spread;
  /** Smooth error of each axis along its travel, which changes over some `overMm`. */
  readonly local: { readonly spread: Spread; readonly overMm: number };
  /** Cutter leans away from square to the bed (tangents). */
  readonly cutterLeanX: Spread;
  readonly cutterLeanY: Spread;
  readonly aboveTip: AboveTip;
}

/** What turns or hangs above the cutter's tip, mm; `fromMm` is the height of its lower end above the tip. */
export interface AboveTip {
  readonly colletNut: { readonly radiusMm: number; readonly fromMm: number } | null;
  readonly spindle: { readonly radiusMm: number; readonly fromMm: number } | null;
  readonly dustShoe: { readonly xMm: number; readonly yMm: number; readonly fromMm: number } | null;
}

export interface Bed {
  /** The bed rises to the right, and away from the operator (tangents). */
  readonly leanX: Spread;
  readonly leanY: Spread;
  /** Height of the bed at each place, mm. */
  readonly unevenness: Spread;
  readonly spoilboard: { readonly xMm: number; readonly yMm: number; readonly thickMm: number };
  readonly inserts: Inserts | null;
  /** Heights read place by place, where they stand in for lean and unevenness. */
  readonly heights?: BedHeights;
}

/** Heights of the bed against the machine's travel, mm, bed frame, and what is known of it between them. */
export interface BedHeights {
  readonly points: readonly { readonly at: Point<'bed'>; readonly heightMm: number }[];
  /** The sd of one reading. */
  readonly gaugeSdMm: number;
  /** How the bed stands off its plane, as an sd, and over what distance it changes. */
  readonly unevenSdMm: number;
  readonly reachMm: number;
  readonly measured: string;
  readonly because: string;
}

export interface Inserts {
  readonly thread: 'M4' | 'M5' | 'M6' | 'M8';
  readonly first: Point<'bed'>;
  readonly pitchMm: { readonly x: number; readonly y: number };
  readonly count: { readonly x: number; readonly y: number };
}

export interface Cutter {
  readonly name: string;
  readonly kind: 'flat' | 'vee' | 'ball';
  readonly diameterMm: number;
  /** Effective radius error (wear, run-out), mm, positive when it cuts larger. */
  readonly radiusError: Spread;
  /** Included angle of a V cutter, and the flat at its tip; null for other kinds. */
  readonly vee: { readonly includedRad: number; readonly tipFlatMm: Spread } | null;
  /** How far it is pushed off a wall, each cut, mm: makes a pocket smaller and an outside profile larger. */
  readonly pushOff: Spread;
  readonly fluteMm: number | null;
  readonly stickOutMm: number | null;
  readonly speedPerMin: number | null;
  readonly feedMmPerMin: number | null;
  /** Depth of one pass. */
  readonly stepMm: number | null;
}
