import { boundsOf } from '../plane/measure.ts';
import type { Body } from '../sweep/body.ts';
import { wayOf } from '../jig/program/check.ts';
import type { Program } from '../jig/program/program.ts';
import { markup, joined, type Html } from './html.ts';
import { ACCENT, FAINT, INK, drawing, pointsText, type Spot } from './svg.ts';

const MARGIN_MM = 3;

/** The way of the cutter's axis from above, cuts dark, fast moves dashed, over what stands on the bed. */
export function programPicture(program: Program, bodies: readonly Body[], widthMm: number): Html {
  const way = wayOf(program).map(({ x, y, z }) => ({
    x: x + program.zeroAt.x,
    y: y + program.zeroAt.y,
    z,
  }));
  const box = boundsOf([...way, ...bodies.flatMap((body) => body.outline)]);
  const scale = (widthMm - 2 * MARGIN_MM) / Math.max(1, box.highX - box.lowX);
  const highMm = Math.max(10, (box.highY - box.lowY) * scale) + 2 * MARGIN_MM;
  const spot = ({ x, y }: { readonly x: number; readonly y: number }): Spot => ({
    x: MARGIN_MM + (x - box.lowX) * scale,
    y: highMm - MARGIN_MM - (y - box.lowY) * scale,
  });
  const isFast = (i: number): boolean =>
    way[i]!.z === program.safeMm && way[i - 1]!.z === program.safeMm;
  const runs: { readonly fast: boolean; readonly spots: Spot[] }[] = [];
  for (let i = 1; i < way.length; i++) {
    const last = runs.at(-1);
    if (last?.fast === isFast(i)) last.spots.push(spot(way[i]!));
    else runs.push({ fast: isFast(i), spots: [spot(way[i - 1]!), spot(way[i]!)] });
  }
  const lines = runs.map(({ fast, spots }) =>
    fast
      ? markup`<polyline points="${pointsText(spots)}" fill="none" stroke="${FAINT}" stroke-width="0.2" stroke-dasharray="1 1"/>`
      : markup`<polyline points="${pointsText(spots)}" fill="none" stroke="${INK}" stroke-width="0.4"/>`,
  );
  const stands = bodies.map(
    ({ outline }) =>
      markup`<polygon points="${pointsText(outline.map(spot))}" fill="#eeeeee" stroke="${FAINT}" stroke-width="0.2"/>`,
  );
  const zero = spot(program.zeroAt);
  return drawing(
    `${program.name}: the way of the cutter from above`,
    widthMm,
    highMm,
    markup`${joined(stands)}${joined(lines)}<circle cx="${zero.x}" cy="${zero.y}" r="1.2" fill="none" stroke="${ACCENT}" stroke-width="0.5"/>`,
  );
}
