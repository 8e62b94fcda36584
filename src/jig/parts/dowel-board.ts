import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { cannot, figure, made, mm, type Step } from '../answer.ts';
import { screwNumbers, stopNumbers } from '../numbers.ts';
import { roundedBox } from '../plate/curve.ts';
import type { Xy } from '../plate/drawing.ts';
import { wordsLongMm } from '../plate/lettering.ts';
import type { Lettering, PlateHole } from '../plate/plate.ts';
import { columnName, numberedGrid, pitchDemand, tooManyHoles } from './numbered-grid.ts';
import { partNumbers } from './numbers.ts';
import type { JigPart } from './part.ts';
import { given, unmet } from './size.ts';

/**
 * A board with rows of numbered dowel holes, screwed to the bed's inserts. Columns are lettered along
 * the near edge, rows numbered along the left one; a hole that would run into a screw's seat is left out.
 */
export function dowelBoard(job: Job, sizes: JigSizesOf<'dowel-board'>): Step<readonly JigPart[]> {
  const [pitchMm, columns, rows] = [given(sizes.pitch), given(sizes.columns), given(sizes.rows)];
  const [diameterMm, thickMm] = [given(sizes.diameter), given(sizes.thick)];
  const holeMm = diameterMm + given(sizes.clearance);
  const inserts = job.shop.bed.inserts;
  const screw = screwNumbers[inserts?.thread ?? 'M6'];
  const seatMm = screw.headMm + stopNumbers.counterboreOverHeadMm;
  const marginMm = Math.max(
    2 * partNumbers.letterMm + holeMm / 2 + 4,
    seatMm / 2 + stopNumbers.holeWallMm,
  );
  const wish = { columns, rows, pitchMm, first: { x: 0, y: 0 } };
  const refusal =
    tooManyHoles('dowel-board', wish) ??
    unmet('dowel-board', [
      pitchDemand(pitchMm, holeMm),
      {
        what: 'thick',
        isMm: thickMm,
        least: Math.max(1.5 * diameterMm, screw.headHighMm + stopNumbers.headFloorMm + 0.5),
        because: 'a dowel would not stand upright in it, or a screw would pull through',
      },
    ]);
  if (refusal !== null) return refusal;
  const low = { x: -marginMm, y: -marginMm };
  const high = {
    x: (columns - 1) * pitchMm + marginMm,
    y: (rows - 1) * pitchMm + marginMm,
  };
  const { spoilboard } = job.shop.bed;
  const screws = screwPlaces(job, low, high, given(sizes['screw-columns']), seatMm);
  if (screws === null)
    return cannot(
      `dowel-board: a board of ${mm(high.x - low.x)} by ${mm(high.y - low.y)} has no two inserts of the bed under it, or does not lie on a spoilboard of ${mm(spoilboard.xMm)} by ${mm(spoilboard.yMm)}`,
      'other columns, rows or pitch',
    );
  const places = numberedGrid(
    wish,
    holeMm,
    screws.map((at) => ({ kind: 'disc', at, radiusMm: seatMm / 2 })),
  );
  const round = (at: Xy, radiusMm: number): PlateHole => ({
    ends: [at],
    radiusMm,
    depthMm: null,
    seat: null,
  });
  return made([
    {
      name: 'dowel board',
      purpose: `Takes dowels of ${figure(diameterMm)} mm wherever the next blank wants them.`,
      count: 1,
      form: {
        kind: 'plate',
        plate: {
          name: 'dowel board',
          thickMm,
          outline: roundedBox(low, high, partNumbers.cornerMm),
          holes: [
            ...places.map(({ at }) => round(at, holeMm / 2)),
            ...screws.map((at) => ({
              ...round(at, screw.holeMm / 2),
              seat: {
                shape: { kind: 'round' as const, radiusMm: seatMm / 2 },
                depthMm: screw.headHighMm + stopNumbers.counterboreBelowTopMm,
              },
            })),
          ],
          words: labels(columns, rows, pitchMm, marginMm, screws, seatMm),
        },
      },
      notes: [
        `${places.length} holes of ${figure(holeMm)} mm, ${figure(pitchMm)} mm apart${places.length < columns * rows ? `; ${columns * rows - places.length} left out where a screw goes` : ''}.`,
        `Screwed down with ${screws.length} screws ${inserts?.thread ?? 'M6'}. Bore the holes with this machine rather than print them: then they stand square to its axes.`,
        'Sharp-edged holes catch dowels: break their edges by hand.',
      ],
    },
  ]);
}

/** Screws where inserts lie under the board, as far apart as may be; null when fewer than two do. */
function screwPlaces(
  job: Job,
  low: Xy,
  high: Xy,
  wanted: number,
  seatMm: number,
): readonly Xy[] | null {
  const { inserts, spoilboard } = job.shop.bed;
  if (high.x - low.x > spoilboard.xMm || high.y - low.y > spoilboard.yMm) return null;
  const insetMm = seatMm / 2 + stopNumbers.counterboreWallMm;
  const room = { x: high.x - low.x - 2 * insetMm, y: high.y - low.y - 2 * insetMm };
  if (inserts === null)
    return [low.x + insetMm, high.x - insetMm].flatMap((x) =>
      [low.y + insetMm, high.y - insetMm].map((y) => ({ x, y })),
    );
  const steps = {
    x: Math.min(inserts.count.x - 1, Math.floor(room.x / inserts.pitchMm.x + 1e-9)),
    y: Math.min(inserts.count.y - 1, Math.floor(room.y / inserts.pitchMm.y + 1e-9)),
  };
  const along = (axis: 'x' | 'y', count: number): readonly number[] => {
    const spanMm = steps[axis] * inserts.pitchMm[axis];
    const firstMm = (low[axis] + high[axis] - spanMm) / 2;
    const used = Math.min(count, steps[axis] + 1);
    return Array.from(
      { length: used },
      (_, i) =>
        firstMm + Math.round((i * steps[axis]) / Math.max(1, used - 1)) * inserts.pitchMm[axis],
    );
  };
  const places = along('x', Math.max(2, wanted)).flatMap((x) =>
    along('y', 2).map((y) => ({ x, y })),
  );
  return places.length < 2 ? null : places;
}

/** A letter over each column and a number beside each row, where no screw's seat takes the place. */
function labels(
  columns: number,
  rows: number,
  pitchMm: number,
  marginMm: number,
  screws: readonly Xy[],
  seatMm: number,
): readonly Lettering[] {
  const { letterMm, strokeMm, engraveMm } = partNumbers;
  const label = (words: string, at: Xy): readonly Lettering[] => {
    const longMm = wordsLongMm(words, letterMm);
    const clear = screws.every(
      (s) =>
        s.x < at.x - seatMm / 2 - 2 ||
        s.x > at.x + longMm + seatMm / 2 + 2 ||
        s.y < at.y - seatMm / 2 - 2 ||
        s.y > at.y + letterMm + seatMm / 2 + 2,
    );
    return clear ? [{ words, at, heightMm: letterMm, strokeMm, depthMm: engraveMm }] : [];
  };
  const wide = (words: string): number => wordsLongMm(words, letterMm);
  const fits = wide('MM') < pitchMm - 2;
  return [
    ...Array.from({ length: columns }, (_, i) => i)
      .filter((i) => fits || i % 2 === 0)
      .flatMap((i) =>
        label(columnName(i), {
          x: i * pitchMm - wide(columnName(i)) / 2,
          y: -marginMm + 3,
        }),
      ),
    ...Array.from({ length: rows }, (_, i) => i).flatMap((i) =>
      label(String(i + 1), { x: -marginMm + 3, y: i * pitchMm - letterMm / 2 }),
    ),
  ];
}
