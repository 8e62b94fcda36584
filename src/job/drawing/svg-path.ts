import { angleOf, hypotenuse, tangentOf } from '../../num/elementary.ts';
import type { Result } from '../../num/result.ts';
import { ok } from '../../num/result.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** One piece of a drawn line, from the end of the one before it, in the element's own units. */
export type Piece =
  | { readonly kind: 'line'; readonly to: Spot }
  /** Bulge in the element's own directions (y down: positive is clockwise to the eye). */
  | { readonly kind: 'arc'; readonly to: Spot; readonly bulge: number }
  | { readonly kind: 'curve'; readonly by: readonly Spot[]; readonly to: Spot };

export interface SubPath {
  readonly from: Spot;
  readonly pieces: readonly Piece[];
  readonly isClosed: boolean;
}

/** Figures that follow each letter. */
const TAKES: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};

/** What the `d` of a path draws. Source: SVG 1.1, section 8.3. */
export function subPathsOf(d: string): Result<readonly SubPath[], TextFault> {
  const done: SubPath[] = [];
  let pieces: Piece[] = [];
  let [from, at, control]: [Spot, Spot, Spot | null] = [ORIGIN, ORIGIN, null];
  const end = (isClosed: boolean): void => {
    if (pieces.length > 0) done.push({ from, pieces, isClosed });
    pieces = [];
  };
  const steps = stepsOf(d);
  if (!steps.ok) return steps;
  for (const { letter, isRelative, figures } of steps.value) {
    const spot = (index: number): Spot => ({
      x: figures[index]! + (isRelative ? at.x : 0),
      y: figures[index + 1]! + (isRelative ? at.y : 0),
    });
    let next: Spot = at;
    let nextControl: Spot | null = null;
    switch (letter) {
      case 'M':
        end(false);
        next = from = spot(0);
        break;
      case 'Z':
        end(true);
        next = from;
        break;
      case 'L':
        pieces.push({ kind: 'line', to: (next = spot(0)) });
        break;
      case 'H':
        next = { x: figures[0]! + (isRelative ? at.x : 0), y: at.y };
        pieces.push({ kind: 'line', to: next });
        break;
      case 'V':
        next = { x: at.x, y: figures[0]! + (isRelative ? at.y : 0) };
        pieces.push({ kind: 'line', to: next });
        break;
      case 'C':
      case 'S': {
        const first: Spot = letter === 'C' ? spot(0) : mirrored(control, at);
        const second = spot(letter === 'C' ? 2 : 0);
        next = spot(letter === 'C' ? 4 : 2);
        nextControl = second;
        pieces.push({ kind: 'curve', by: [first, second], to: next });
        break;
      }
      case 'Q':
      case 'T': {
        const by: Spot = letter === 'Q' ? spot(0) : mirrored(control, at);
        next = spot(letter === 'Q' ? 2 : 0);
        nextControl = by;
        pieces.push({ kind: 'curve', by: [by], to: next });
        break;
      }
      case 'A': {
        const piece = arcPiece(at, figures, (next = spot(5)));
        if (!piece.ok) return piece;
        pieces.push(piece.value);
        break;
      }
    }
    at = next;
    control = nextControl;
  }
  end(false);
  return ok(done);
}

const ORIGIN: Spot = { x: 0, y: 0 };

/** The control place of a smooth curve: the last one mirrored in the place where it begins. */
const mirrored = (control: Spot | null, at: Spot): Spot =>
  control === null ? at : { x: 2 * at.x - control.x, y: 2 * at.y - control.y };

/** An arc as its bulge. Source: SVG 1.1, appendix F.6: radii that are too small are made large enough. */
function arcPiece(from: Spot, figures: readonly number[], to: Spot): Result<Piece, TextFault> {
  const [rx, ry] = [Math.abs(figures[0]!), Math.abs(figures[1]!)];
  const [isLarge, isPositive] = [figures[3] !== 0, figures[4] !== 0];
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return ok({ kind: 'line', to });
  if (Math.abs(rx - ry) > 1e-6 * rx)
    return textFault(
      `it has an arc of radii ${rx} and ${ry}, which is no circle`,
      'draw it with circular arcs',
    );
  const half = hypotenuse(to.x - from.x, to.y - from.y) / 2;
  const sine = Math.min(1, half / rx);
  const angle = 2 * angleOf(sine, Math.sqrt(1 - sine * sine));
  const sweep = isLarge ? 2 * Math.PI - angle : angle;
  return ok({ kind: 'arc', to, bulge: tangentOf(sweep / 4) * (isPositive ? 1 : -1) });
}

interface Step {
  readonly letter: string;
  readonly isRelative: boolean;
  readonly figures: readonly number[];
}

const NUMBER = /^[\s,]*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)/i;
/** A flag of an arc is one digit, and the next figure may follow at once. */
const FLAG = /^[\s,]*([01])/;

function stepsOf(d: string): Result<readonly Step[], TextFault> {
  const steps: Step[] = [];
  let at = 0;
  let letter = '';
  while (at < d.length) {
    const sign = d[at]!;
    if (/[\s,]/.test(sign)) {
      at++;
      continue;
    }
    if (/[a-zA-Z]/.test(sign)) {
      letter = sign;
      at++;
    } else if (letter.toUpperCase() === 'M') letter = letter === 'M' ? 'L' : 'l';
    else if (letter === '' || letter.toUpperCase() === 'Z') return unread(d, at);
    const count = TAKES[letter.toUpperCase()];
    if (count === undefined || (steps.length === 0 && letter.toUpperCase() !== 'M'))
      return unread(d, at - 1);
    const figures: number[] = [];
    while (figures.length < count) {
      const isFlag = letter.toUpperCase() === 'A' && (figures.length === 3 || figures.length === 4);
      const found = (isFlag ? FLAG : NUMBER).exec(d.slice(at, at + 60));
      if (found === null) return unread(d, at);
      at += found[0].length;
      figures.push(Number(found[1]));
    }
    steps.push({
      letter: letter.toUpperCase(),
      isRelative: letter === letter.toLowerCase(),
      figures,
    });
  }
  return ok(steps);
}

const unread = (d: string, at: number): Result<never, TextFault> =>
  textFault(
    `its path cannot be read at ${at < d.length ? JSON.stringify(d.slice(at, at + 12)) : 'its end'}`,
    'save the drawing again',
  );
