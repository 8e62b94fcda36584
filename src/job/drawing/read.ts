import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { Path } from '../../plane/path.ts';
import { textOf } from '../file/bytes.ts';
import type { TextFault } from '../text/text-fault.ts';
import { closedPath } from './closed.ts';
import { dxfPieces } from './dxf-pieces.ts';
import type { Pieces } from './pieces.ts';
import { svgPieces } from './svg-pieces.ts';

/** An outline out of a drawing, mm, counter-clockwise, about the drawing's own origin. */
export interface DrawnOutline {
  readonly path: Path;
  /** What a person should know about how it was read; null when there is nothing to say. */
  readonly note: string | null;
}

/** Units that a job may state for a drawing that says nothing of its own. */
export type DrawingUnits = 'mm' | 'inch';

/** Drawings are larger than job files, and not by much. */
export const LARGEST_DRAWING_BYTES = 4_000_000;

/**
 * The one closed outline of that name: of a DXF all that stands on the layer `named`, of an SVG the
 * element with that id. `units` is what the job says of the drawing, or null.
 */
export function outlineIn(
  file: string,
  bytes: Uint8Array,
  named: string,
  units: DrawingUnits | null,
): Result<DrawnOutline, TextFault> {
  const read = /\.dxf$/i.test(file) ? dxfPieces : /\.svg$/i.test(file) ? svgPieces : null;
  if (read === null)
    return faulty([
      { message: `${file} is neither a .dxf nor a .svg file`, instead: 'save the drawing as one' },
    ]);
  const text = textOf({ name: file, bytes }, LARGEST_DRAWING_BYTES);
  if (!text.ok)
    return faulty(
      text.faults.map(({ message, line, instead }) => ({
        message: `${file} cannot be read: line ${line}: ${message}`,
        instead: /^name a/.test(instead) ? 'save it as a text DXF or SVG' : instead,
      })),
    );
  const pieces: Result<Pieces, TextFault> = read(text.value, named, units);
  const about = (faults: readonly TextFault[]) =>
    faulty(faults.map(({ message, instead }) => ({ message: `${file}: ${message}`, instead })));
  if (!pieces.ok) return about(pieces.faults);
  const closed = closedPath(pieces.value);
  return closed.ok ? ok({ path: closed.value, note: pieces.value.note }) : about(closed.faults);
}
