import type { Edge, Made } from '../../job/job.ts';
import { unreachable } from '../../num/invariant.ts';
import { EDGES_AT, isAlongX } from '../laid.ts';
import type { Located, Way, ZeroWay } from './way.ts';

/** A way in words, for one line or two: how it is turned, what it lies against, where zero comes from. */
export function wayWords(way: Way): string {
  return [turnWords(way), locatedWords(way.located), zeroWords(way)].join(', ');
}

const turnWords = ({ turn }: Way): string =>
  turn === 'about-y' ? 'turned about Y' : 'turned about X';

export function locatedWords(located: Located): string {
  switch (located.kind) {
    case 'stops': {
      const { fence, frontUp, backUp, touch, band, made } = located;
      const { alongX, alongY } = EDGES_AT[frontUp];
      const side = isAlongX(fence) ? alongY : alongX;
      const corner =
        frontUp === backUp
          ? 'the same corner'
          : `the opposite corner (${edgeWords(side)} on a stop again)`;
      return `${edgeWords(fence)} on the fence, ${corner}, ${TOUCH_WORDS[touch]}${band === 'narrow' && touch !== 'arms' ? ' in a narrow band' : ''}, ${MADE_WORDS[made]}`;
    }
    case 'dowels':
      return located.layout === 'line'
        ? 'two dowels on the turn line, drilled with the blank'
        : 'four dowels in pairs, drilled with the blank';
    case 'fence-and-dowel':
      return `${edgeWords(located.fence)} on a fence ${MADE_WORDS[located.made]} and one dowel`;
    case 'nest':
      return located.around === null
        ? 'dropped into a nest cut for the blank'
        : `cut free first, then dropped into a nest cut for ${located.around}`;
    default:
      return unreachable(located);
  }
}

const edgeWords = (edge: Edge): string => `${edge} edge`;

const TOUCH_WORDS = {
  buttons: 'two buttons and one',
  arms: 'arms',
  mixed: 'an arm and buttons',
} as const;

const MADE_WORDS: Readonly<Record<Made['kind'], string>> = {
  'set-by-hand': 'set by hand',
  'on-bed-pins': 'on bed pins',
  'milled-in-place': 'milled in place',
};

function zeroWords({ zero, located }: Way): string {
  if (located.kind === 'nest') return 'zero from cutting the nest';
  return ZERO_WORDS[zero];
}

const ZERO_WORDS: Readonly<Record<ZeroWay, string>> = {
  kept: 'zero kept',
  're-set': 'zero touched again',
  middle: 'zero at the middle both times',
  hole: 'second zero in the bored hole',
  made: 'zero from making the seat',
};
