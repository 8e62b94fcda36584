import { unreachable } from '../num/invariant.ts';
import { materialOf } from '../job/wood/species.ts';

/** Strengths of what a blank is made of, N/mm2 unless said; averages of clear samples, not design values. */
export interface Strengths {
  readonly name: string;
  readonly kind: 'hardwood' | 'softwood' | 'mdf' | 'plywood' | 'plastic';
  /** Specific gravity: oven-dry mass over the volume at 12 % moisture. */
  readonly gravity: number;
  /** Across the grain, at the proportional limit: what a pad may press. */
  readonly crush: number;
  readonly shear: number;
  /** Across the grain; the weakest way in which a tab can part. */
  readonly tensionAcross: number;
  /** Force for each mm2 of chip 0.1 mm thick. Estimate. */
  readonly cutting: number;
  readonly isAssumed: boolean;
}

const wood = (
  name: string,
  kind: 'hardwood' | 'softwood',
  gravity: number,
  crush: number,
  shear: number,
  tensionAcross: number,
): Strengths => ({
  name,
  kind,
  gravity,
  crush,
  shear,
  tensionAcross,
  cutting: kind === 'hardwood' ? 60 : 30,
  isAssumed: false,
});

/**
 * Source: Wood Handbook (FPL-GTR-190/282) table 5-3 at 12 % moisture; of these, tension across the grain of
 * ash, beech, birch, cherry and the pines, and the rows of walnut and yellow-poplar, are from memory. Sugar maple has no
 * published tension across the grain: the oak's is taken, an estimate.
 */
const WOODS: readonly Strengths[] = [
  wood('white ash', 'hardwood', 0.6, 8.0, 13.2, 6.5),
  wood('American beech', 'hardwood', 0.64, 7.0, 13.9, 7.0),
  wood('yellow birch', 'hardwood', 0.62, 6.7, 13.0, 6.3),
  wood('paper birch', 'hardwood', 0.55, 4.1, 8.3, 3.9),
  wood('black cherry', 'hardwood', 0.5, 4.8, 11.7, 3.9),
  wood('sugar maple', 'hardwood', 0.63, 10.1, 16.1, 5.5),
  wood('red maple', 'hardwood', 0.54, 6.9, 12.8, 5.5),
  wood('red oak', 'hardwood', 0.63, 7.0, 12.3, 5.5),
  wood('white oak', 'hardwood', 0.68, 7.4, 13.8, 5.5),
  wood('black walnut', 'hardwood', 0.55, 7.0, 9.4, 4.8),
  wood('yellow-poplar', 'hardwood', 0.42, 3.4, 8.2, 3.7),
  wood('eastern white pine', 'softwood', 0.35, 3.0, 6.2, 2.1),
  wood('ponderosa pine', 'softwood', 0.4, 4.0, 7.8, 2.9),
  wood('coast Douglas-fir', 'softwood', 0.48, 5.5, 7.8, 2.3),
];

/** Of a wood that is not known, the weakest of each figure, and the hardest to cut. */
const UNKNOWN: Strengths = {
  name: 'a wood that is not known',
  kind: 'hardwood',
  gravity: 0.35,
  crush: 3,
  shear: 6.2,
  tensionAcross: 2.1,
  cutting: 60,
  isAssumed: true,
};

const board = (
  name: string,
  kind: 'mdf' | 'plywood' | 'plastic',
  gravity: number,
  crush: number,
  tensionAcross: number,
  cutting: number,
): Strengths => ({
  name,
  kind,
  gravity,
  crush,
  shear: tensionAcross,
  tensionAcross,
  cutting,
  isAssumed: true,
});

/** Boards and plastics: estimates of ours. */
const MDF = board('MDF', 'mdf', 0.72, 4, 5, 50);
const PLYWOOD = board('plywood', 'plywood', 0.55, 4, 5, 55);
const PLASTIC = board('plastic', 'plastic', 1.1, 20, 20, 120);

/** Strengths of a material by the name that a person gave it. */
export function strengthsOf(material: string): Strengths {
  const known = materialOf(material);
  switch (known.kind) {
    case 'wood': {
      const row = WOODS.find(({ name }) => name === known.species.name);
      return known.isKnown && row !== undefined ? row : UNKNOWN;
    }
    case 'sheet':
      return /ply|block/.test(known.name.toLowerCase()) ? PLYWOOD : MDF;
    case 'dry':
      return PLASTIC;
    default:
      return unreachable(known);
  }
}
