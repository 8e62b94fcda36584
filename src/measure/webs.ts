import { leastSquares } from '../num/least-squares.ts';
import { nullSpace } from '../num/null-space.ts';
import type { Point } from '../plane/point.ts';
import type { Estimate } from './estimate.ts';
import { readingSd } from './estimate.ts';

/** Thickness left between a front and a back rebate at one place, mm. */
export interface Web {
  readonly at: Point<'blank'>;
  readonly webMm: number;
  readonly sdMm: number;
}

/** Webs at the corners of a test piece against what was drawn: positive is too thick. */
export interface WebField {
  readonly middle: Point<'blank'>;
  /** At the middle: cut this much deeper, the two faces together. */
  readonly level: Estimate;
  /** Tangents; null where the places do not tell them. */
  readonly perX: Estimate | null;
  readonly perY: Estimate | null;
  /** By how much one pair of corners across is thicker than the other, mm; null without four corners. */
  readonly twistMm: Estimate | null;
}

/** Null without webs. */
export function webField(webs: readonly Web[], drawnMm: number): WebField | null {
  if (webs.length === 0) return null;
  const mean = (of: (web: Web) => number): number =>
    webs.reduce((sum, web) => sum + of(web), 0) / webs.length;
  const middle = { x: mean(({ at }) => at.x), y: mean(({ at }) => at.y) };
  const reach = (axis: 'x' | 'y'): number =>
    Math.max(...webs.map(({ at }) => Math.abs(at[axis] - middle[axis]))) || 1;
  const [halfX, halfY] = [reach('x'), reach('y')];
  const row = ({ at }: Web, columns: readonly Column[]): number[] => {
    const [u, v] = [(at.x - middle.x) / halfX, (at.y - middle.y) / halfY];
    return [1, ...columns.map((column) => ({ x: u, y: v, twist: u * v })[column])];
  };
  const choices: readonly (readonly Column[])[] = [
    ['x', 'y', 'twist'],
    ['x', 'y'],
    ['x'],
    ['y'],
    [],
  ];
  const columns =
    choices.find((one) => nullSpace(webs.map((web) => row(web, one))).length === 0) ?? [];
  const fit = leastSquares(
    webs.map((web) => row(web, columns)),
    webs.map(({ webMm }) => webMm - drawnMm),
  );
  if (fit === null) return null;
  const gaugeSd = Math.max(...webs.map(({ sdMm }) => sdMm));
  const one = readingSd(fit.residualSd, fit.dof, gaugeSd);
  const at = (k: number, over: number): Estimate => ({
    value: fit.coefficients[k]! / over,
    sd: (one.sd * Math.sqrt(fit.unscaled[k]![k]!)) / over,
    dof: one.dof,
  });
  const of = (column: Column, over: number): Estimate | null =>
    columns.includes(column) ? at(1 + columns.indexOf(column), over) : null;
  return {
    middle,
    level: at(0, 1),
    perX: of('x', halfX),
    perY: of('y', halfY),
    // Opposite corners are up by the coefficient, the others down by it.
    twistMm: of('twist', 0.5),
  };
}

type Column = 'x' | 'y' | 'twist';
