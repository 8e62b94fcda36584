import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { bedInLayout } from '../../setup/place.ts';
import { cannot, figure, mm, type Step } from '../answer.ts';
import { columnName } from '../parts/dowel-board.ts';
import { partNumbers } from '../parts/numbers.ts';
import { given, unmet } from '../parts/size.ts';
import { boreHoles, boringCutter, type Bore } from './bore-holes.ts';
import type { Program } from './program.ts';
import type { Cutter } from '../../job/job.ts';

const MOST_HOLES = 2000;

/**
 * Bores rows of dowel holes straight into the spoilboard; a hole that would run into an insert is left
 * out. Zero: near-left corner of the spoilboard.
 */
export function dowelGrid(
  job: Job,
  sizes: JigSizesOf<'dowel-grid'>,
): Step<{ readonly program: Program; readonly cutter: Cutter }> {
  const { spoilboard } = job.shop.bed;
  const pitchMm = given(sizes.pitch);
  const first = { x: given(sizes['first-x']), y: given(sizes['first-y']) };
  const diameterMm = given(sizes.diameter) + given(sizes.clearance);
  const depthMm = given(sizes.depth);
  const refusal = unmet('dowel-grid', [
    {
      what: 'pitch',
      isMm: pitchMm,
      least: diameterMm + partNumbers.betweenHolesMm,
      because: `holes of ${figure(diameterMm)} would run into each other`,
    },
    {
      what: 'depth',
      isMm: depthMm,
      least: 1.5 * given(sizes.diameter),
      most: spoilboard.thickMm,
      because: `a dowel wants hold, and the spoilboard is ${figure(spoilboard.thickMm)} thick`,
    },
  ]);
  if (refusal !== null) return refusal;
  const fitting = (size: number, from: number): number =>
    Math.max(
      0,
      Math.floor((size - diameterMm / 2 - partNumbers.betweenHolesMm - from) / pitchMm + 1e-9) + 1,
    );
  const columns = sizes.columns ?? fitting(spoilboard.xMm, first.x);
  const rows = sizes.rows ?? fitting(spoilboard.yMm, first.y);
  if (columns > fitting(spoilboard.xMm, first.x) || rows > fitting(spoilboard.yMm, first.y))
    return cannot(
      `dowel-grid: ${columns} by ${rows} holes, ${mm(pitchMm)} apart, go beyond a spoilboard of ${mm(spoilboard.xMm)} by ${mm(spoilboard.yMm)}`,
      `columns: ${fitting(spoilboard.xMm, first.x)} and rows: ${fitting(spoilboard.yMm, first.y)} or fewer`,
    );
  if (columns * rows > MOST_HOLES)
    return cannot(`dowel-grid: ${columns * rows} holes are too many`, `${MOST_HOLES} or fewer`);
  const clearMm = partNumbers.insertRadiusMm + diameterMm / 2 + partNumbers.betweenHolesMm;
  const named = Array.from({ length: columns * rows }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return {
      name: `${columnName(column)}${row + 1}`,
      at: { x: first.x + column * pitchMm, y: first.y + row * pitchMm },
    };
  });
  const free = named.filter(({ at }) => nearestInsertMm(job, at) >= clearMm);
  if (free.length === 0)
    return cannot(
      'dowel-grid: every hole would run into an insert of the bed',
      'first-x and first-y: half a pitch of the inserts from one of them',
    );
  const bores: readonly Bore[] = free.map(({ at }) => ({
    at: bedInLayout(job, at),
    diameterMm,
    topMm: 0,
    bottomMm: -depthMm,
  }));
  const cutter = boringCutter(job.shop.cutters, bores);
  if (cutter.kind === 'cannot') return cutter;
  const left = named.length - free.length;
  const program = boreHoles(
    {
      name: 'bore the dowel grid',
      jobName: job.name,
      header: [
        `For: ${free.length} dowel holes of ${figure(diameterMm)} mm in the spoilboard, ${figure(pitchMm)} mm apart, ${figure(depthMm)} mm deep.`,
        ...(left === 0 ? [] : [`${left} left out: they would run into inserts.`]),
        'On the bed: nothing at all.',
        'X and Y zero: near left corner of the spoilboard. Z zero: its surface.',
      ],
      zeroAt: bedInLayout(job, { x: 0, y: 0 }),
      zeroHighMm: 0,
      bores,
      highestMm: 0,
      over: `the first hole, ${free[0]!.name}`,
    },
    cutter.value,
  );
  return program.kind === 'cannot'
    ? program
    : { kind: 'made', value: { program: program.value, cutter: cutter.value } };
}

function nearestInsertMm(job: Job, at: { readonly x: number; readonly y: number }): number {
  const { inserts } = job.shop.bed;
  if (inserts === null) return Infinity;
  const off = (axis: 'x' | 'y'): number => {
    const steps = (at[axis] - inserts.first[axis]) / inserts.pitchMm[axis];
    const nearest = Math.min(inserts.count[axis] - 1, Math.max(0, Math.round(steps)));
    return at[axis] - inserts.first[axis] - nearest * inserts.pitchMm[axis];
  };
  return Math.hypot(off('x'), off('y'));
}
