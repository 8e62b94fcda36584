import type { Point } from '../plane/point.ts';
import type { Face } from './job.ts';
import type { Cutter } from './shop.ts';

/** What the files say about holding the blank down and about the programs that are run; no prediction needs it. */
export interface Holding {
  readonly programs: { readonly frontUp: ProgramFile | null; readonly backUp: ProgramFile | null };
  readonly clamps: ClampWish;
  /** Through the waste into the spoilboard, on the blank seen from the front. */
  readonly screws: readonly Point<'blank'>[];
  /** By the name of the feature; copies of a repeated part each have their own. */
  readonly tabs: ReadonlyMap<string, Tabs>;
  /** Stated with a reason of the person's own; null: ours. */
  readonly friction: number | null;
  /** Upper bounds that a person states, N; null: estimated. */
  readonly force: { readonly sidewaysN: number | null; readonly liftN: number | null };
  readonly vacuum: { readonly gaugeKPa: number; readonly areaMm2: number } | null;
  readonly tape: { readonly shearKPa: number; readonly areaMm2: number } | null;
  /** A filler lies under thin webs in the second placing. */
  readonly hasFiller: boolean;
  readonly straps: readonly Strap[];
  readonly screw: ScrewKind | null;
  readonly board: Board;
  readonly tracks: readonly Track[];
  /** Screws that hold the spoilboard down. */
  readonly boardScrews: readonly Point<'bed'>[];
  /** By the name of the cutter. */
  readonly cutting: ReadonlyMap<string, Cutting>;
}

/** A program that a person runs, for the placing with that face up. */
export interface ProgramFile {
  readonly face: Face;
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly cutter: Cutter;
  /** Cutters by the number of their T word; `cutter` is in the spindle before the first. */
  readonly tools: ReadonlyMap<number, Cutter>;
}

export interface ClampWish {
  readonly kind: 'auto' | 'none';
  readonly frontUp: BoltWish;
  readonly backUp: BoltWish;
}

/** Bolts that must be used, and that must not, on the bed. */
export interface BoltWish {
  readonly pin: readonly Point<'bed'>[];
  readonly forbid: readonly Point<'bed'>[];
}

/** Small links of uncut wood that keep a piece where it is. */
export interface Tabs {
  readonly count: number;
  readonly widthMm: number;
  readonly thickMm: number;
}

export interface Strap {
  readonly name: string;
  readonly count: number;
  /** How near and how far the bolt can stand from the nose. */
  readonly slotMm: readonly [number, number];
  readonly lengthMm: number;
  /** Across the strap and along it. */
  readonly padMm: readonly [number, number];
  /** Of the bar alone. */
  readonly heightMm: number;
  readonly thread: Thread;
  readonly torqueNm: number;
}

/** The spoilboard as screws see it. */
export interface Board {
  /** Null: nobody said; taken as MDF. */
  readonly material: string | null;
  /** Holes that earlier jobs left in it, on the bed. */
  readonly oldHoles: readonly Point<'bed'>[];
}

export type Thread = 'M4' | 'M5' | 'M6' | 'M8';

export interface ScrewKind {
  readonly name: string;
  readonly shankMm: number;
  readonly lengthMm: number;
  readonly headMm: number;
  /** How far the head stands above the blank. */
  readonly headHighMm: number;
}

/** A T-track in the bed: a line along which a bolt can stand. */
export interface Track {
  readonly along: 'x' | 'y';
  /** The other coordinate, from the bed's near-left corner. */
  readonly atMm: number;
  readonly fromMm: number;
  readonly toMm: number;
}

export interface Cutting {
  readonly flutes: number | null;
  readonly helix: 'up' | 'down' | 'straight' | 'compression' | null;
  readonly stepMm: number | null;
}
