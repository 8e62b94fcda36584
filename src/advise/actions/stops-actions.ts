import { fenceIn } from '../../job/located.ts';
import type { Edge, Job, StopsJob } from '../../job/job.ts';
import type { Edit, Plain } from '../../job/edit.ts';
import { said } from '../../job/text/said.ts';
import { meanOf } from '../../num/spread-of.ts';
import { EDGES_AT, isAlongX, otherCorner, placingsInOrder, tenths } from '../laid.ts';
import { ACTION_MINUTES, CARE } from '../numbers.ts';
import { buttonsOn, levelButton, millOf } from '../contacts.ts';
import { action, type Action, type Case } from './action.ts';

/** What can be done about stops, or a fence with a dowel. */
export function stopsActions({ job, variants }: Case): readonly Action[] {
  const fence = fenceIn(job);
  if (fence === null) return [];
  return [
    ...contactHeight(job),
    ...fenceContacts(job),
    ...(job.locating === 'stops' ? sideContact(job) : []),
    ...(job.locating === 'stops' ? corner(job) : []),
    ...making(job, variants),
    ...seat(job),
  ];
}

function contactHeight(job: Job): readonly Action[] {
  const { band } = fenceIn(job)!;
  const halfMm = tenths(job.blank.thickMm / 2);
  if (band.kind === 'narrow' && Math.abs(band.touchHeightMm - halfMm) < 0.05 * job.blank.thickMm)
    return [];
  const edits: readonly Edit[] = [
    ...(band.kind === 'plain' ? [{ path: ['stops', 'height'], value: null }] : []),
    { path: ['stops', 'touch-height'], value: halfMm },
  ];
  return [
    action(
      'half thickness',
      `Let the stops touch in a narrow band at half thickness, ${said(halfMm)} mm, where a bevel does no harm`,
      ['contact height'],
      ACTION_MINUTES.padStops,
      edits,
    ),
  ];
}

/** Two buttons, mirror images about the turn line when the fence lies across it. */
function fenceContacts(job: Job): readonly Action[] {
  const { fenceTouch, fence } = fenceIn(job)!;
  const edgeMm = edgeLength(job, fence);
  const mirrors = isAlongX(fence) === (job.turn === 'about-y');
  const [low, high] = buttonsOn(edgeMm);
  const edits: readonly Edit[] = [{ path: ['stops', 'fence-touch'], value: [low, high] }];
  if (fenceTouch.kind === 'arm')
    return [
      action(
        'fence buttons',
        `Let the fence touch at two buttons, ${said(low)} and ${said(high)} mm from the corner, instead of along an arm`,
        ['fence contacts'],
        ACTION_MINUTES.padStops,
        edits,
      ),
    ];
  const [a, b] = fenceTouch.atMm as [number, number];
  const isMirrored = Math.abs(a + b - edgeMm) < 0.02 * edgeMm;
  const isFarApart = Math.abs(b - a) >= 0.7 * edgeMm;
  if (isFarApart && (isMirrored || !mirrors)) return [];
  return [
    action(
      'fence buttons',
      mirrors && !isMirrored
        ? `Move the fence buttons to ${said(low)} and ${said(high)} mm from the corner: mirror images, so that the same spots of the edge touch again`
        : `Move the fence buttons farther apart, to ${said(low)} and ${said(high)} mm from the corner`,
      ['fence contacts'],
      ACTION_MINUTES.moveButton,
      edits,
    ),
  ];
}

function sideContact(job: StopsJob): readonly Action[] {
  const { sideTouch, fence, corner: corners } = job.stops;
  const level = levelButton(job, fence, corners.frontUp);
  const edits: readonly Edit[] = [{ path: ['stops', 'side-touch'], value: level }];
  if (sideTouch.kind === 'arm')
    return [
      action(
        'side button',
        `Let the side stop touch at one button, ${said(level)} mm from the corner, level with what matters, instead of along an arm`,
        ['side contact'],
        ACTION_MINUTES.padStops,
        edits,
      ),
    ];
  if (Math.abs(sideTouch.atMm[0]! - level) < 2) return [];
  return [
    action(
      'side button',
      `Move the side button to ${said(level)} mm from the corner, level with what matters`,
      ['side contact'],
      ACTION_MINUTES.moveButton,
      edits,
    ),
  ];
}

function corner(job: StopsJob): readonly Action[] {
  const { corner: corners, fence } = job.stops;
  if (corners.frontUp !== corners.backUp) return [];
  const along = job.turn === 'about-y' ? 'x' : 'y';
  const { alongX, alongY } = EDGES_AT[corners.frontUp];
  const [wanted, side] = along === 'x' ? [alongX, alongY] : [alongY, alongX];
  const backUp = otherCorner(corners.frontUp, along);
  const turned: readonly Edit[] = [{ path: ['stops', 'corner', 'back-up'], value: backUp }];
  const moved: readonly Edit[] =
    wanted === fence
      ? []
      : [
          { path: ['stops', 'fence'], value: `${wanted}-edge` },
          { path: ['stops', 'fence-touch'], value: [...buttonsOn(edgeLength(job, wanted))] },
          { path: ['stops', 'side-touch'], value: levelButton(job, wanted, corners.frontUp) },
        ];
  const words = `Use the opposite corner: turned over, push the ${side} edge against a second side stop at the ${backUp.replace('-', ' ')} corner`;
  return [
    action(
      'opposite corner',
      wanted === fence ? words : `${words}, with the ${wanted} edge on the fence`,
      wanted === fence ? ['size'] : ['size', 'fence contacts', 'side contact'],
      ACTION_MINUTES.secondStop,
      [...turned, ...moved],
    ),
  ];
}

function making(job: Job, variants: Case['variants']): readonly Action[] {
  const { made } = fenceIn(job)!;
  if (made.kind === 'milled-in-place') return [];
  const [first, second] = placingsInOrder(job);
  const out = (['angle', 'square', 'spacing'] as const)
    .filter((key) => variants.written(['stops', key]) !== undefined)
    .map((key): Edit => ({ path: ['stops', key], value: null }));
  const isOnStops = (placing: typeof first): boolean =>
    ['stops', 'kept'].includes(String(variants.written(['zero', placing, 'xy'])));
  const withZero = job.locating === 'stops' && isOnStops(first) && isOnStops(second);
  const milled = action(
    'mill the stops',
    withZero
      ? 'Mill the faces of the stops where they stand and keep that zero, motors held: then nobody sets or touches anything'
      : 'Mill the faces of the stops where they stand',
    withZero ? ['stops made', 'zero', 'where zero is touched'] : ['stops made'],
    ACTION_MINUTES.millStops,
    [
      { path: ['stops', 'made'], value: 'milled-in-place' },
      { path: ['stops', 'cutter'], value: millOf(job) },
      ...out,
      ...(withZero
        ? [...zeroEdits(variants, first, 'milled-stops'), ...zeroEdits(variants, second, 'kept')]
        : []),
    ],
  );
  if (made.kind === 'on-bed-pins') return [milled, ...halfTurn(job)];
  const onPins = action(
    'bed pins',
    'Set the stops on pins bored into the bed by the machine, instead of by hand',
    ['stops made'],
    ACTION_MINUTES.bedPins,
    [{ path: ['stops', 'made'], value: 'on-bed-pins' }, ...out],
  );
  const clocked = action(
    'clock the fence in',
    'Set the fence along the travel: move the spindle along it with an indicator, and screw it down when the needle stays',
    ['stops made'],
    ACTION_MINUTES.clockFence,
    [{ path: ['stops', 'angle'], value: CARE.clockedAngle }],
  );
  return [milled, onPins, clocked, ...halfTurn(job)];
}

/** What a placing's zero says is replaced; what it says of heights stays. */
export function zeroEdits(
  variants: Case['variants'],
  placing: 'front-up' | 'back-up',
  xy: 'milled-stops' | 'kept' | 'middle' | 'stops',
): readonly Edit[] {
  const at = (key: string): Edit['path'] => ['zero', placing, key];
  const drop = (key: string): readonly Edit[] =>
    variants.written(at(key)) === undefined ? [] : [{ path: at(key), value: null }];
  return [
    ...(variants.written(at('xy')) === xy ? [] : [{ path: at('xy'), value: xy as Plain }]),
    ...(xy === 'kept' ? [{ path: at('kept'), value: 'held' as Plain }] : drop('kept')),
    ...drop('xy-touched'),
    ...drop('hole'),
  ];
}

/**
 * A lean of the machine that is known and cannot be taken out: turning the fence back by half of it halves what is seen
 * (registration.md 2: -2 (gamma + phi) along X and 2 phi along Y are alike at phi = -gamma / 2).
 */
function halfTurn(job: Job): readonly Action[] {
  const { made } = fenceIn(job)!;
  if (made.kind === 'milled-in-place') return [];
  const lean = meanOf(job.shop.machine.lean.distribution);
  const turned = meanOf(made.angle.distribution);
  const per200 = 200 * (-lean / 2 - turned);
  if (!Number.isFinite(per200) || Math.abs(per200) < CARE.leastHalfTurnPer200) return [];
  const mm = Math.round(per200 * 100) / 100;
  const way = mm > 0 ? 'counter-clockwise' : 'clockwise';
  const limit = CARE.clockedPer200;
  const text = `${said(mm - limit)}..${said(mm + limit)} per 200`;
  return [
    action(
      'half turn',
      `Turn the fence ${way} by ${said(Math.abs(mm))} mm over 200, half of what the machine leans: that halves what the lean does`,
      ['stops made', 'machine lean'],
      ACTION_MINUTES.clockFence,
      [{ path: ['stops', 'angle'], value: text }],
    ),
  ];
}

function seat(job: Job): readonly Action[] {
  return [
    action(
      'brush the corner',
      'Blow and brush the stops and the edges before each placing, until a 0.05 mm feeler goes in nowhere',
      ['seat'],
      ACTION_MINUTES.brush * 2 * job.parts.count,
      [{ path: ['stops', 'seat-gap'], value: CARE.brushedGap }],
    ),
  ];
}

const edgeLength = ({ blank }: Job, edge: Edge): number =>
  isAlongX(edge) ? blank.widthMm : blank.heightMm;
