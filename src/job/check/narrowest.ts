import type { Shape } from '../job.ts';

/** The least width of an outline, mm; null when its corners must be looked at. */
export function narrowest(shape: Shape): number | null {
  if (shape.kind === 'circle') return shape.diameterMm;
  if (shape.kind === 'slot') return shape.widthMm;
  if (shape.kind === 'rectangle') return Math.min(shape.widthMm, shape.heightMm);
  return null;
}
