import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import type { RawZero } from '../schema/raw-job.ts';
import type { Known } from './job.ts';

/** What the zero of a placing can be found on with this way of locating, in words. */
export function foundOn({ locating }: Known, isFirst: boolean): string {
  switch (locating?.locating) {
    case 'dowels':
      return locating.dowels.drilled === 'separately'
        ? 'edges, middle or dowels'
        : 'edges or middle';
    case 'fence-and-dowel': {
      const { dowel, made } = locating.fenceAndDowel;
      const isOne = dowel.drilled === 'separately' && made.kind === 'milled-in-place';
      return isOne ? 'edges, middle or dowels' : 'edges or middle';
    }
    case 'nest':
      if (locating.nest.around === null) return 'edges, middle or nest';
      return isFirst ? 'edges or middle' : 'nest, kept or hole';
    case 'stops':
    case undefined:
      return 'stops, milled-stops, edges or middle';
  }
}

/** The zero must be found on something that is there, and, where nothing seats the blank, on the blank itself. */
export function checkFoundOn(
  context: Context,
  known: Known,
  zero: RawZero,
  isFirst: boolean,
): void {
  const { locating, stops } = known;
  if (locating === null) return;
  const tell = (message: string, instead: string): void => {
    fault(context, [zero, 'xy'], message, instead);
  };
  const isLaidFreely =
    (locating.locating === 'dowels' && locating.dowels.drilled === 'with-the-blank') ||
    (locating.locating === 'nest' && locating.nest.around !== null);
  if (isFirst && isLaidFreely && zero.xy !== 'edges' && zero.xy !== 'middle') {
    if (zero.xy === 'hole' || zero.xy === 'kept') return;
    tell(
      `nothing seats the blank in the first placing, so its place cannot be known from ${zero.xy}`,
      'write edges or middle',
    );
    return;
  }
  switch (zero.xy) {
    case 'stops':
    case 'milled-stops':
      if (stops === null)
        tell(
          `there is no side stop, so no zero on the ${zero.xy}`,
          `write ${foundOn(known, isFirst)}`,
        );
      else if (zero.xy === 'milled-stops' && stops.made.kind !== 'milled-in-place')
        tell(
          `milled-stops is the zero the stops were milled from, and these are ${stops.made.kind}`,
          'write xy: stops, or made: milled-in-place',
        );
      return;
    case 'dowels':
      checkDowelZero(known, isFirst, tell);
      return;
    case 'nest':
      if (locating.locating !== 'nest')
        tell('there is no nest, so no zero from cutting it', `write ${foundOn(known, isFirst)}`);
      return;
    case 'edges':
    case 'middle':
      if (!isFirst && locating.locating === 'nest' && locating.nest.around !== null)
        tell(
          "the part is cut free by then, and the blank's edges with it",
          'write nest, kept or hole',
        );
      return;
    case 'hole':
    case 'kept':
      return;
  }
}

function checkDowelZero(
  known: Known,
  isFirst: boolean,
  tell: (message: string, instead: string) => void,
): void {
  const { locating } = known;
  const fence = locating?.locating === 'fence-and-dowel' ? locating.fenceAndDowel : null;
  const holes = locating?.locating === 'dowels' ? locating.dowels : (fence?.dowel ?? null);
  if (holes === null)
    tell(
      'there are no dowels, so no zero from drilling for them',
      `write ${foundOn(known, isFirst)}`,
    );
  else if (holes.drilled === 'with-the-blank')
    tell(
      'the holes are drilled with the blank, from the zero of the first placing',
      'write kept in the second placing and edges or middle in the first, or drilled: separately',
    );
  else if (fence !== null && fence.made.kind !== 'milled-in-place')
    tell(
      `the fence is ${fence.made.kind}, so nobody knows where it is from the zero of the drilling`,
      'write edges or middle, or made: milled-in-place',
    );
}
