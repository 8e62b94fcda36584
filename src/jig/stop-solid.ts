import type { Facet } from './mesh.ts';
import { sinkFacets } from './plate/plate-solid.ts';
import { wordSinks } from './plate/plate.ts';
import { facesBetween, facetsOf, solidOf, solidOfFacets, type Solid } from './solid.ts';
import type { StopPart } from './stop-part.ts';

/** The facets of a stop with its words engraved, counter-clockwise seen from outside. */
export function stopFacets({
  profile,
  words,
}: Pick<StopPart, 'profile' | 'words'>): readonly Facet[] {
  const plain = facetsOf(solidOf(profile));
  const sinks = words.flatMap(wordSinks);
  const top = profile.levels.at(-1);
  if (sinks.length === 0 || top === undefined) return plain;
  const isTop = (facet: Facet): boolean => facet.every(({ z }) => z === top.zMm);
  return [
    ...plain.filter((facet) => !isTop(facet)),
    // The same top once more, now with the words left out of it.
    ...facesBetween(
      [
        top.outline,
        ...top.holes,
        ...sinks.flatMap(({ loop, islands }) => [loop.toReversed(), ...islands]),
      ],
      top.zMm,
    ),
    ...sinks.flatMap((sink) => sinkFacets(sink, top.zMm, top.zMm)),
  ];
}

/** The stop as a solid of the modelling library, standing where it belongs. */
export const stopSolid = (part: Pick<StopPart, 'profile' | 'words'>): Solid =>
  solidOfFacets(stopFacets(part));
