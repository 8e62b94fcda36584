/** A piece of the drawing paper, mm, y down. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A place tried for a label, and how little it is liked (0 is best). */
export interface Candidate {
  readonly box: Box;
  readonly cost: number;
}

/**
 * The place for a label that overlaps nothing taken and leaves the field least, and of those the
 * cheapest. When no place is free, the one that overlaps least: news a test looks for.
 */
export function roomFor<C extends Candidate>(
  candidates: readonly C[],
  taken: readonly Box[],
  field: Box,
): C {
  let best = candidates[0]!;
  let least = Infinity;
  for (const candidate of candidates) {
    const { box, cost } = candidate;
    const outside = box.width * box.height - overlapMm2(box, field);
    const covered = taken.reduce((sum, other) => sum + overlapMm2(box, other), 0);
    const total = cost + HARD * (covered + outside);
    if (total < least) [best, least] = [candidate, total];
  }
  return best;
}

/** One square millimetre covered is worse than any cost. */
const HARD = 1e4;

export function boxAround(x: number, y: number, width: number, height: number): Box {
  return { x: x - width / 2, y: y - height / 2, width, height };
}

export function overlapMm2(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

/** Places for a label beside a mark, the nearest and the up-and-right ones liked best. */
export function boxesBeside(
  at: { readonly x: number; readonly y: number },
  width: number,
  height: number,
): readonly Candidate[] {
  const places = [4.5, 6.5, 9, 12, 16].flatMap((away) =>
    [45, 225, 135, 315, 270, 90, 180, 0].map((degrees, i) => ({ away, degrees, i })),
  );
  return places.map(({ away, degrees, i }) => {
    const angle = (degrees * Math.PI) / 180;
    const x = at.x + Math.cos(angle) * (away + (Math.abs(Math.cos(angle)) * width) / 2);
    const y = at.y - Math.sin(angle) * (away + height / 4);
    return { box: boxAround(x, y, width, height), cost: away + i / 10 };
  });
}
