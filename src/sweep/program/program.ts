/** A place in the work frame of a program, mm: counted from its work zero, z up. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The work zeros that a program can choose between; where each lies, no program tells. */
export type WorkZero = 'G54' | 'G55' | 'G56' | 'G57' | 'G58' | 'G59' | 'G59.1' | 'G59.2' | 'G59.3';

/** One movement of the cutter's tip. */
export interface Move {
  /** Line of the program, from 1. */
  readonly line: number;
  readonly kind: 'rapid' | 'feed';
  /** Null when the program does not tell where it comes from. */
  readonly from: Spot | null;
  readonly to: Spot;
  /** Null for a straight move. */
  readonly arc: Arc | null;
  readonly zero: WorkZero;
  /** Number of the tool in the spindle; null when the program has not changed it. */
  readonly tool: number | null;
  /** Null for a rapid, and where the feed is given as a time. */
  readonly feedMmPerMin: number | null;
}

/** An arc, or a helix when the third axis moves too; its radius may change a little on the way. */
export interface Arc {
  readonly plane: ArcPlane;
  /** Centre along the first and second axis of the plane, mm. */
  readonly centre: readonly [number, number];
  readonly startRad: number;
  /** Counter-clockwise positive, seen from the positive end of the third axis. */
  readonly sweepRad: number;
  readonly startRadiusMm: number;
  readonly endRadiusMm: number;
}

export type ArcPlane = 'xy' | 'zx' | 'yz';

/** First, second and third axis of a plane, right-handed. */
export const AXES_OF: Readonly<Record<ArcPlane, readonly [keyof Spot, keyof Spot, keyof Spot]>> = {
  xy: ['x', 'y', 'z'],
  zx: ['z', 'x', 'y'],
  yz: ['y', 'z', 'x'],
};

/** Something about a line that a person has to know. Nothing is ever left out without one. */
export interface Finding {
  readonly line: number;
  /**
   * `not-understood`: the line was not carried out, so the program is not checked. `wrong`: a controller
   * refuses it, or does something else than it seems. `beware`: carried out, with a doubt.
   */
  readonly kind: 'not-understood' | 'wrong' | 'beware';
  readonly message: string;
}

export interface Program {
  readonly moves: readonly Move[];
  readonly findings: readonly Finding[];
  readonly lineCount: number;
  /** True when no line is wrong or not understood: then `moves` is all that the machine does. */
  readonly isSound: boolean;
}
