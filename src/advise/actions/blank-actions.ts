import { EDGES } from '../../job/defaults.ts';
import type { Edit, Plain } from '../../job/edit.ts';
import { dowelHolesIn } from '../../job/located.ts';
import type { Job } from '../../job/job.ts';
import { readSpread } from '../../job/text/spread.ts';
import { SLOPE } from '../../job/text/slope.ts';
import { limitsOf, sdOf } from '../../num/spread-of.ts';
import { depthCounts } from '../../job/what-counts.ts';
import { ACTION_MINUTES, CARE } from '../numbers.ts';
import { action, type Action, type Case } from './action.ts';

/** What can be done about the blank itself. */
export function blankActions(of: Case): readonly Action[] {
  return [...joint(of), ...caliper(of), ...thickness(of), ...flat(of), ...sameDay(of)];
}

/** Stated figures of the edges that jointing would better. */
function joint({ job, variants }: Case): readonly Action[] {
  if (dowelHolesIn(job) !== null && job.locating === 'dowels') return [];
  const { blank } = job;
  const row = EDGES.jointed;
  const rough = [
    [['bevel'], blank.bevelSpread, row.bevel],
    [['crook'], blank.crookSpread, row.crook],
    [['square'], blank.squareSpread, row.square],
    [['taper-x'], blank.taperXSpread, row.square],
    [['taper-y'], blank.taperYSpread, row.square],
  ] as const;
  const worse = rough.filter(
    ([, spread, text]) => sdOf(spread.distribution) > 1.2 * sdOfSlope(text),
  );
  if (worse.length === 0) return [];
  const out = ['bevel', 'crook', 'bumps', 'square', 'taper-x', 'taper-y']
    .filter((key) => variants.written(['blank', key]) !== undefined)
    .map((key): Edit => ({ path: ['blank', key], value: null }));
  // What only the word for the edges says about the sizes is said as before.
  const sizes = (['widthSpread', 'heightSpread', 'thickSpread'] as const).flatMap(
    (key, k): readonly Edit[] =>
      blank[key].origin.kind === 'stated'
        ? []
        : [
            {
              path: ['blank', 'size', k],
              value: `${[blank.widthMm, blank.heightMm, blank.thickMm][k]!} ${blank[key].text}`,
            },
          ],
  );
  return [
    action(
      'joint the edges',
      'Joint the edges: straight, square to each other and to the faces',
      ['edges'],
      ACTION_MINUTES.joint * job.parts.count,
      [{ path: ['blank', 'edges'], value: 'jointed' }, ...out, ...sizes],
    ),
  ];
}

function sdOfSlope(text: string): number {
  const read = readSpread(SLOPE, text);
  return read.ok ? sdOf(read.value.distribution) : 0;
}

/** Measuring each blank and dialling what it says in: its size is then known to the gauge. */
function caliper(of: Case): readonly Action[] {
  const { job } = of;
  if (job.locating !== 'stops') return [];
  const along = job.turn === 'about-y' ? 'x' : 'y';
  const index = along === 'x' ? 0 : 1;
  const [sizeMm, spread, words] =
    along === 'x'
      ? ([job.blank.widthMm, job.blank.widthSpread, 'length along X'] as const)
      : ([job.blank.heightMm, job.blank.heightSpread, 'length along Y'] as const);
  if (isFine(spread.distribution)) return [];
  return [
    action(
      'caliper and dial in',
      `Caliper the ${words} of each blank where the stops touch, and shift the second zero by what it is off`,
      ['size'],
      (ACTION_MINUTES.caliper + ACTION_MINUTES.dialIn) * job.parts.count,
      [{ path: ['blank', 'size', index], value: calipered(of, sizeMm) }],
    ),
  ];
}

function thickness(of: Case): readonly Action[] {
  const { job } = of;
  if (!depthCounts(job) || isFine(job.blank.thickSpread.distribution)) return [];
  return [
    action(
      'caliper the thickness',
      'Caliper the thickness of each blank and shift the second zero in height by what it is off',
      ['thickness'],
      (ACTION_MINUTES.caliper + ACTION_MINUTES.dialIn) * job.parts.count,
      [{ path: ['blank', 'size', 2], value: calipered(of, job.blank.thickMm) }],
    ),
  ];
}

/** A caliper would not tell more than is known. */
function isFine(spread: Job['blank']['widthSpread']['distribution']): boolean {
  const [low, high] = limitsOf(spread);
  return high - low < 0.08;
}

/** By the caliper of the shop file, if it has one. */
function calipered({ variants }: Case, sizeMm: number): Plain {
  const gauge = variants.gauges['caliper'];
  return gauge === undefined
    ? { nominal: sizeMm, spread: CARE.calipered }
    : { nominal: sizeMm, gauge: 'caliper' };
}

function flat({ job }: Case): readonly Action[] {
  if (!depthCounts(job) || job.blank.cup.pressedFlat) return [];
  const [, high] = limitsOf(job.blank.cup.hump.distribution);
  if (!(high > 0)) return [];
  return [
    action(
      'press it flat',
      'Press the blank flat while it is clamped: clamps or tape over the hump',
      ['cup'],
      ACTION_MINUTES.pressFlat * 2 * job.parts.count,
      [
        { path: ['blank', 'cup', 'pressed-flat'], value: 'yes' },
        ...(job.blank.cup.hump.origin.kind === 'stated'
          ? []
          : [{ path: ['blank', 'cup', 'hump'], value: job.blank.cup.hump.text }]),
      ],
    ),
  ];
}

/** Wood that lies an hour moves little; what is stated as strain is left out. */
function sameDay({ job, variants }: Case): readonly Action[] {
  const hours = variants.written(['between-placings', 'hours']);
  const isMoving = [job.blank.movementX, job.blank.movementY].some(
    ({ distribution }) => sdOf(distribution) > 0,
  );
  if (!isMoving) return [];
  const edits: readonly Edit[] =
    typeof hours === 'number'
      ? [{ path: ['between-placings', 'hours'], value: 1 }]
      : [{ path: ['blank', 'movement'], value: null }];
  if (typeof hours === 'number' && hours <= 1) return [];
  return [
    action(
      'go on the same day',
      'Go on with the second placing within the hour, before the wood moves',
      ['movement'],
      ACTION_MINUTES.sameDay,
      edits,
    ),
  ];
}
