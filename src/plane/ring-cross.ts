import { facesArc, type Ring } from './ring.ts';

/** Whether two pieces share a place. */
export function piecesCross(one: Ring, i: number, other: Ring, j: number): boolean {
  const [isArc, isOtherArc] = [one.radius[i] !== 0, other.radius[j] !== 0];
  if (isArc && isOtherArc) return arcsCross(one, i, other, j);
  if (isArc) return arcCrossesLine(one, i, other, j);
  if (isOtherArc) return arcCrossesLine(other, j, one, i);
  const [a, b, c, d] = [i, one.next[i]!, j, other.next[j]!];
  const [ax, ay, bx, by] = [one.x[a]!, one.y[a]!, one.x[b]!, one.y[b]!];
  const [cx, cy, dx, dy] = [other.x[c]!, other.y[c]!, other.x[d]!, other.y[d]!];
  const ofC = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const ofD = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
  const ofA = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
  const ofB = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
  return ofC > 0 !== ofD > 0 && ofA > 0 !== ofB > 0;
}

function arcCrossesLine(arcs: Ring, i: number, lines: Ring, j: number): boolean {
  const end = lines.next[j]!;
  const [sx, sy] = [lines.x[j]! - arcs.centreX[i]!, lines.y[j]! - arcs.centreY[i]!];
  const [dx, dy] = [lines.x[end]! - lines.x[j]!, lines.y[end]! - lines.y[j]!];
  const [a, b] = [dx * dx + dy * dy, sx * dx + sy * dy];
  const inRoot = b * b - a * (sx * sx + sy * sy - arcs.radius[i]! ** 2);
  if (a === 0 || inRoot < 0) return false;
  return [-1, 1].some((sign) => {
    const share = (-b + sign * Math.sqrt(inRoot)) / a;
    return share >= 0 && share <= 1 && facesArc(arcs, i, sx + share * dx, sy + share * dy);
  });
}

function arcsCross(one: Ring, i: number, other: Ring, j: number): boolean {
  const [dx, dy] = [other.centreX[j]! - one.centreX[i]!, other.centreY[j]! - one.centreY[i]!];
  const far2 = dx * dx + dy * dy;
  if (far2 === 0) return false;
  const [r2, s2] = [one.radius[i]! ** 2, other.radius[j]! ** 2];
  const along = (far2 + r2 - s2) / (2 * far2);
  const inRoot = r2 / far2 - along * along;
  if (inRoot < 0) return false;
  return [-1, 1].some((sign) => {
    const off = sign * Math.sqrt(inRoot);
    const [px, py] = [along * dx - off * dy, along * dy + off * dx];
    return facesArc(one, i, px, py) && facesArc(other, j, px - dx, py - dy);
  });
}
