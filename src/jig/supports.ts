import { giveMm } from './give.ts';
import { holds, type ArmLimits, type ScrewedPiece, type Seat } from './layout-of-screws.ts';
import { roundingMm, stopNumbers } from './numbers.ts';
import type { Piece, Reach } from './pieces.ts';
import { pinsDeepMm } from './steel-buttons.ts';

/**
 * The piece with one more screw for each contact that would yield too far under the push: in an
 * insert when one is near enough (the arm may be lengthened to it), else in a place of our own, for
 * which the bed wants an insert and the arm must be deep enough.
 */
export function supported(
  piece: Piece,
  screwed: ScrewedPiece,
  longest: ArmLimits,
  inserts: readonly Seat[],
  topMm: number,
  marginMm: number,
): ScrewedPiece {
  const pushes = [
    ...pushesOf(piece.fenceLands).map((atMm) => ({ arm: fence, atMm })),
    ...pushesOf(piece.sideLands).map((atMm) => ({ arm: side, atMm })),
  ];
  const deepMm = Math.max(stopNumbers.betweenBackMm, pinsDeepMm(piece));
  const done = pushes.reduce<ScrewedPiece>((one, { arm, atMm }) => {
    const isStiff = (tried: ScrewedPiece): boolean =>
      armGiveMm(tried, arm, atMm, topMm) <= stopNumbers.mostGiveMm;
    if (isStiff(one)) return one;
    const tries = inserts
      .toSorted((a, b) => Math.abs(a.at[arm.along] - atMm) - Math.abs(b.at[arm.along] - atMm))
      .flatMap((seat) => withInsert(one, arm, seat, longest, marginMm));
    return tries.find(isStiff) ?? withOwn(one, arm, atMm, marginMm, deepMm);
  }, screwed);
  return { ...done, seats: done.seats.toSorted((a, b) => fromCornerMm(a) - fromCornerMm(b)) };
}

const fromCornerMm = ({ at }: Seat): number => Math.hypot(at.x, at.y);

interface Arm {
  readonly along: 'x' | 'y';
  readonly across: 'x' | 'y';
  readonly length: 'fenceArmMm' | 'sideArmMm';
  readonly depth: 'fenceDepthMm' | 'sideDepthMm';
}

const fence: Arm = { along: 'x', across: 'y', length: 'fenceArmMm', depth: 'fenceDepthMm' };
const side: Arm = { along: 'y', across: 'x', length: 'sideArmMm', depth: 'sideDepthMm' };

/** Where the blank pushes: the middle of a button, both ends of a longer face. */
function pushesOf(lands: readonly Reach[]): readonly number[] {
  return lands.flatMap(({ fromMm, toMm }) =>
    toMm - fromMm > stopNumbers.landMm + roundingMm ? [fromMm, toMm] : [(fromMm + toMm) / 2],
  );
}

function armGiveMm({ size, seats }: ScrewedPiece, arm: Arm, atMm: number, topMm: number): number {
  const screwsMm = seats.filter((seat) => seat.at[arm.across] < 0).map((s) => s.at[arm.along]);
  const widthMm = size[arm.depth] - stopNumbers.betweenBackMm;
  return giveMm(atMm, screwsMm, { widthMm, heightMm: topMm });
}

function withInsert(
  one: ScrewedPiece,
  arm: Arm,
  seat: Seat,
  longest: ArmLimits,
  marginMm: number,
): readonly ScrewedPiece[] {
  const lengthMm = Math.max(one.size[arm.length], seat.at[arm.along] + marginMm);
  const size = { ...one.size, [arm.length]: lengthMm };
  const limitMm = Math.min(longest[arm.length], one.size[arm.length] + stopNumbers.lengthenMm);
  const fits =
    lengthMm <= Math.max(limitMm, one.size[arm.length]) &&
    holds(size, seat.at, marginMm) &&
    !one.seats.includes(seat);
  return fits ? [{ size, seats: [...one.seats, seat] }] : [];
}

function withOwn(
  one: ScrewedPiece,
  arm: Arm,
  atMm: number,
  marginMm: number,
  deepMm: number,
): ScrewedPiece {
  const backMm = deepMm + marginMm;
  const alongMm = Math.min(atMm, one.size[arm.length] - marginMm);
  const at = arm === fence ? { x: alongMm, y: -backMm } : { x: -backMm, y: alongMm };
  return {
    size: { ...one.size, [arm.depth]: Math.max(one.size[arm.depth], backMm + marginMm) },
    seats: [...one.seats, { at, insert: null }],
  };
}
