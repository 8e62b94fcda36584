import type { Columns } from './columns.ts';
import type { PlacingKey } from './deviation.ts';
import type { SeatFrame } from './seat-frame.ts';
import type { Seat } from './seat.ts';

/**
 * A blank that nothing seats: it lies where it was laid and clamped, turned about its middle by how squarely it was
 * laid. Where its middle is makes no difference, since its zero is found on it.
 */
export function laidFreely(frame: SeatFrame, key: PlacingKey, columns: Columns): Seat {
  const turned = columns.of({ kind: 'laid', placing: key });
  const [a, b] = [frame.lengthMm / 2, frame.depthMm / 2];
  return (draws, i, _shape, pose) => {
    const tangent = frame.hand * draws[turned + i]!;
    const cos = 1 / Math.sqrt(1 + tangent * tangent);
    const sin = tangent * cos;
    const less = -(sin * sin) / (1 + cos);
    pose.cos = cos;
    pose.sin = sin;
    pose.backA = less * a + sin * b;
    pose.backB = less * b - sin * a;
  };
}
