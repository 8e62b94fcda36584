import type { Point } from '../../plane/point.ts';
import { crossingOf } from '../drawing/crossing.ts';
import type { Feature } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawFeature } from '../schema/raw-job.ts';
import { said } from '../text/said.ts';

/** Tells what is wrong with an outline by itself; false when it makes no sense to look further. */
export function checkShape(context: Context, { name, shape }: Feature, raw: RawFeature): boolean {
  switch (shape.kind) {
    case 'circle':
    // What is wrong with a drawing is told when it is read.
    case 'outline':
      return true;
    case 'slot':
      if (shape.lengthMm >= shape.widthMm) return true;
      fault(
        context,
        [raw, 'slot'],
        `${name} is ${said(shape.lengthMm)} mm long and ${said(shape.widthMm)} mm wide`,
        'write [length, width] with its round ends, and turned: 90 deg for the other way',
      );
      return false;
    case 'rectangle': {
      const mostMm = Math.min(shape.widthMm, shape.heightMm) / 2;
      // A corner that the cutter leaves is the cutter's fault, and told as that.
      if (shape.cornerRadiusMm <= mostMm || raw['corner-radius'] === undefined) return true;
      fault(
        context,
        [raw, 'corner-radius'],
        `corner-radius ${said(shape.cornerRadiusMm)} mm does not fit ${name}, which is ${said(2 * mostMm)} mm at its narrowest`,
        `write at most ${said(mostMm)}`,
      );
      return false;
    }
    case 'polygon': {
      const wrong = wrongWith(shape.vertices);
      if (wrong === null) return true;
      fault(context, [raw, 'polygon'], `${name} ${wrong}`, 'write the corners in order, each once');
      return false;
    }
  }
}

function wrongWith(vertices: readonly Point<'blank'>[]): string | null {
  const n = vertices.length;
  if (n < 3) return `has ${n} ${n === 1 ? 'corner' : 'corners'} and needs 3`;
  if (n > 1000) return `has ${n} corners, and at most 1000 are read`;
  const twice = vertices.find((a, i) =>
    vertices.slice(i + 1).some((c) => a.x === c.x && a.y === c.y),
  );
  if (twice !== undefined) return `has the corner [${said(twice.x)}, ${said(twice.y)}] twice`;
  if (areOnOneLine(vertices)) return 'has no area';
  return crossingOf(vertices) === null ? null : 'crosses itself';
}

function areOnOneLine(vertices: readonly Point<'blank'>[]): boolean {
  const [a, b] = vertices;
  return vertices.every((p) => (b!.x - a!.x) * (p.y - a!.y) === (b!.y - a!.y) * (p.x - a!.x));
}
