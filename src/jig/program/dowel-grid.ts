import type { Job } from '../../job/job.ts';
import type { JigSizesOf } from '../../job/jig-sizes.ts';
import { bedInLayout } from '../../setup/place.ts';
import { cannot, figure, mm, type Step } from '../answer.ts';
import { numberedGrid, pitchDemand, tooManyHoles, type Blocked } from '../parts/numbered-grid.ts';
import { partNumbers } from '../parts/numbers.ts';
import { given, unmet } from '../parts/size.ts';
import { boreHoles, boringCutter, type Bore } from './bore-holes.ts';
import { emptyBed, type InBed } from './in-bed.ts';
import type { Xy } from '../plate/drawing.ts';
import type { Program } from './program.ts';
import type { Cutter } from '../../job/job.ts';

/**
 * Bores rows of dowel holes straight into the spoilboard; a hole that would run into an insert is left
 * out. Zero: near-left corner of the spoilboard.
 */
export function dowelGrid(
  job: Job,
  sizes: JigSizesOf<'dowel-grid'>,
  bed: InBed = emptyBed,
): Step<{ readonly program: Program; readonly cutter: Cutter }> {
  const { spoilboard } = job.shop.bed;
  const pitchMm = given(sizes.pitch);
  const first = { x: given(sizes['first-x']), y: given(sizes['first-y']) };
  const diameterMm = given(sizes.diameter) + given(sizes.clearance);
  const depthMm = given(sizes.depth);
  const refusal = unmet('dowel-grid', [
    pitchDemand(pitchMm, diameterMm),
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
  const wish = { columns, rows, pitchMm, first };
  const many = tooManyHoles('dowel-grid', wish);
  if (many !== null) return many;
  const free = numberedGrid(wish, diameterMm, blockedOn(job, bed));
  if (free.length === 0)
    return cannot(
      'dowel-grid: every hole would run into an insert, a screw or a T-track of the bed',
      'first-x and first-y: half a pitch of the inserts from one of them',
    );
  const bores: readonly Bore[] = free.map(({ at, name }) => ({
    name,
    at: bedInLayout(job, at),
    diameterMm,
    topMm: 0,
    bottomMm: -depthMm,
  }));
  const cutter = boringCutter(job.shop.cutters, bores);
  if (cutter.kind === 'cannot') return cutter;
  const left = columns * rows - free.length;
  const program = boreHoles(
    {
      name: 'bore the dowel grid',
      jobName: job.name,
      header: [
        `For: ${free.length} dowel holes of ${figure(diameterMm)} mm in the spoilboard, ${figure(pitchMm)} mm apart, ${figure(depthMm)} mm deep.`,
        ...(left === 0
          ? []
          : [`${left} left out: they would run into inserts, screws or T-tracks of the bed.`]),
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

/** Inserts, the screws of the board and T-tracks, as what a hole must keep clear of. */
function blockedOn({ shop }: Job, { tracks, boardScrews }: InBed): readonly Blocked[] {
  const { inserts } = shop.bed;
  const disc = (at: Xy, radiusMm: number): Blocked => ({ kind: 'disc', at, radiusMm });
  const half = partNumbers.trackWideMm / 2;
  return [
    ...(inserts === null
      ? []
      : Array.from({ length: inserts.count.x * inserts.count.y }, (_, i) =>
          disc(
            {
              x: inserts.first.x + (i % inserts.count.x) * inserts.pitchMm.x,
              y: inserts.first.y + Math.floor(i / inserts.count.x) * inserts.pitchMm.y,
            },
            partNumbers.insertRadiusMm,
          ),
        )),
    ...boardScrews.map((at) => disc(at, partNumbers.insertRadiusMm)),
    ...tracks.map(({ along, atMm, fromMm, toMm }): Blocked => {
      const [low, high] = [
        [fromMm, atMm - half],
        [toMm, atMm + half],
      ] as const;
      const turned = ([a, b]: readonly [number, number]): Xy =>
        along === 'x' ? { x: a, y: b } : { x: b, y: a };
      return { kind: 'box', low: turned(low), high: turned(high) };
    }),
  ];
}
