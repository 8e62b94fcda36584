import { fenceIn } from '../job/located.ts';
import type { Job, Zero } from '../job/job.ts';
import { hasWaste } from './dowel-places.ts';
import { placingsInOrder } from './laid.ts';
import { MINUTES } from './numbers.ts';

/** What a way costs: minutes for the whole batch (estimates of ours), and what is to be made first. */
export interface Work {
  readonly minutes: number;
  readonly make: readonly string[];
}

export function workOf(job: Job): Work {
  const { setUp, make, perPart } = byLocating(job);
  const [first] = placingsInOrder(job);
  const { frontUp, backUp } = job.zero;
  const [one, other] = first === 'front-up' ? [frontUp, backUp] : [backUp, frontUp];
  const each = perPart + 2 * MINUTES.seat + secondZeroMinutes(other) + 2 * MINUTES.touchZ;
  const isOnce = one.xy.kind === 'stops' || one.xy.kind === 'milled-stops';
  const zeroMinutes = minutesOf(one);
  const { count } = job.parts;
  const minutes = setUp + (isOnce ? zeroMinutes : count * zeroMinutes) + count * each;
  return { minutes: Math.round(minutes), make };
}

const minutesOf = ({ xy }: Zero): number => {
  switch (xy.kind) {
    case 'stops':
    case 'edges':
    case 'middle':
    case 'hole':
      return MINUTES.touch[xy.kind];
    case 'milled-stops':
    case 'dowels':
    case 'nest':
      return MINUTES.touch.made;
    case 'kept':
      return MINUTES.touch.kept;
  }
};

const secondZeroMinutes = (zero: Zero): number => minutesOf(zero);

interface ByLocating {
  readonly setUp: number;
  readonly perPart: number;
  readonly make: readonly string[];
}

function byLocating(job: Job): ByLocating {
  const fence = fenceIn(job);
  const holesStay = hasWaste(job) ? '' : ', which stay in the part';
  switch (job.locating) {
    case 'stops': {
      const { corner, fenceTouch, made } = job.stops;
      const two = corner.frontUp !== corner.backUp;
      const one = MINUTES.makeStop[fenceTouch.kind === 'arm' ? 'arms' : 'buttons'];
      return {
        setUp:
          (two ? 2 : 1) * one +
          MINUTES.setDown[made.kind] +
          (two ? MINUTES.secondStop[made.kind] : 0),
        perPart: 0,
        make: [two ? 'a stop and a second side stop' : 'a stop'],
      };
    }
    case 'dowels': {
      const { length } = job.dowels.at;
      return {
        setUp: 0,
        perPart: length * MINUTES.drillDowel,
        make: [`${length} dowels and their holes${holesStay}`],
      };
    }
    case 'fence-and-dowel':
      return {
        setUp:
          MINUTES.makeStop[fence!.fenceTouch.kind === 'arm' ? 'arms' : 'buttons'] +
          MINUTES.setDown[fence!.made.kind],
        perPart: MINUTES.drillDowel,
        make: [`a fence`, `1 dowel and its hole${holesStay}`],
      };
    case 'nest':
      return { setUp: MINUTES.cutNest, perPart: 0, make: ['a nest in a spare board'] };
  }
}
