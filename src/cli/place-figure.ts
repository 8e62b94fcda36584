import { cornersOf, dowelHolesIn, fenceIn } from '../job/located.ts';
import { featurePath } from '../job/feature-path.ts';
import type { Corner, Edge, Job, Touch } from '../job/job.ts';
import { placeOfNeed } from '../advise/critical.ts';
import { EDGES_AT, isAlongX } from '../advise/laid.ts';
import { isInsidePath } from '../plane/path-distance.ts';
import type { Point } from '../plane/point.ts';

/** Columns and rows of the blank at most; a character is about twice as high as wide. */
const [COLUMNS, ROWS] = [60, 20] as const;
const HIGH = 2;
/** Room on every side for two lanes of contacts. */
const LANES = 3;

/** Signs: contacts and dowels as they are, and as they are to be. */
const SIGNS = { now: 'o', then: '#' } as const;

/**
 * The blank with its front up and near edge below, in signs: cuts shaded, x where needs are judged, contacts outside
 * the edge that they touch. `then` is left out where nothing is to move.
 */
export function placeFigure(now: Job, then: Job | null): readonly string[] {
  const { widthMm, heightMm } = now.blank;
  const mmPerColumn = Math.max(widthMm / COLUMNS, heightMm / (ROWS * HIGH));
  const [columns, rows] = [widthMm / mmPerColumn, heightMm / mmPerColumn / HIGH].map((n) =>
    Math.max(4, Math.round(n)),
  ) as [number, number];
  const sheet = Array.from({ length: rows + 2 * LANES }, () =>
    Array.from({ length: columns + 2 * LANES }, () => ' '),
  );
  const put = (column: number, row: number, sign: string): void => {
    sheet[row]![column] = sign;
  };
  const columnAt = (x: number): number =>
    LANES + Math.min(columns - 1, Math.max(0, Math.floor((x / widthMm) * columns)));
  const rowAt = (y: number): number =>
    LANES + rows - 1 - Math.min(rows - 1, Math.max(0, Math.floor((y / heightMm) * rows)));
  border(put, columns, rows);
  const paths = now.features.map(featurePath);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const place: Point<'blank'> = {
        x: ((column + 0.5) / columns) * widthMm,
        y: (1 - (row + 0.5) / rows) * heightMm,
      };
      if (paths.some((path) => isInsidePath(place, path))) put(LANES + column, LANES + row, '.');
    }
  for (const need of now.needs) {
    const at = placeOfNeed(now, need);
    if (at !== null) put(columnAt(at.x), rowAt(at.y), 'x');
  }
  const contact = (edge: Edge, fromMm: number, toMm: number, sign: string, lane: number): void => {
    const isLow = edge === 'lower' || edge === 'left';
    if (isAlongX(edge)) {
      const row = isLow ? LANES + rows + lane : LANES - 1 - lane;
      for (let c = columnAt(fromMm); c <= columnAt(toMm); c++) put(c, row, sign);
    } else {
      const column = isLow ? LANES - 1 - lane : LANES + columns + lane;
      for (let r = rowAt(toMm); r <= rowAt(fromMm); r++) put(column, r, sign);
    }
  };
  for (const [job, sign, lane] of [
    [now, SIGNS.now, 2],
    ...(then === null ? [] : [[then, SIGNS.then, 1] as const]),
  ] as const) {
    for (const { edge, stretches } of contactsOf(job))
      for (const [from, to] of stretches) contact(edge, from, to, sign, lane);
    for (const { x, y } of dowelHolesIn(job)?.at ?? []) put(columnAt(x), rowAt(y), sign);
  }
  return sheet.map((row) => row.join('').trimEnd()).filter((row) => row !== '');
}

function border(
  put: (column: number, row: number, sign: string) => void,
  columns: number,
  rows: number,
): void {
  for (let c = -1; c <= columns; c++)
    for (const r of [-1, rows]) put(LANES + c, LANES + r, c === -1 || c === columns ? '+' : '-');
  for (let r = 0; r < rows; r++) for (const c of [-1, columns]) put(LANES + c, LANES + r, '|');
}

interface Contacts {
  /** Of the rectangle that the blank fills, front up. */
  readonly edge: Edge;
  /** From the left or near end, mm. */
  readonly stretches: readonly (readonly [number, number])[];
}

function contactsOf(job: Job): readonly Contacts[] {
  const fence = fenceIn(job);
  if (fence === null) return [];
  const [frontUp, ...others] = cornersOf(job);
  const { widthMm, heightMm } = job.blank;
  const on = (edge: Edge, touch: Touch, corner: Corner): Contacts => {
    const alongX = isAlongX(edge);
    const lengthMm = alongX ? widthMm : heightMm;
    const isFromHighEnd = alongX ? corner.endsWith('right') : corner.startsWith('far');
    return {
      edge,
      stretches: stretchesOf(touch).map(([from, to]) =>
        isFromHighEnd ? [lengthMm - to, lengthMm - from] : [from, to],
      ),
    };
  };
  const onFence = on(fence.fence, fence.fenceTouch, frontUp);
  if (job.locating !== 'stops') return [onFence];
  const sideOf = (corner: Corner): Edge => {
    const { alongX, alongY } = EDGES_AT[corner];
    return isAlongX(fence.fence) ? alongY : alongX;
  };
  const sides = new Set([frontUp, ...others].map(sideOf));
  return [onFence, ...[...sides].map((edge) => on(edge, job.stops.sideTouch, frontUp))];
}

function stretchesOf(touch: Touch): readonly (readonly [number, number])[] {
  return touch.kind === 'arm'
    ? [[touch.fromMm, touch.toMm]]
    : touch.atMm.map((mm) => [mm, mm] as const);
}
