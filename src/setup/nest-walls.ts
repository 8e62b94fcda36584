import type { Walls } from './wall-play.ts';

/** Walls of a nest in one placing; `load` reads where they and the blank's outside are in a trial. */
export interface NestWalls extends Walls {
  readonly load: (draws: Float64Array, i: number, shape: Float64Array) => void;
}
