/** How wood moves across its grain: strain for each % of moisture, across the rings and along them. */
export interface Species {
  readonly name: string;
  readonly radialPerPercent: number;
  readonly tangentialPerPercent: number;
}

const species = (
  name: string,
  radialPerPercent: number,
  tangentialPerPercent: number,
): Species => ({ name, radialPerPercent, tangentialPerPercent });

/**
 * Source: Wood Handbook (FPL-GTR-282), table 13-5, dimensional change coefficients for 6 to 14 %
 * moisture; softwoods and yellow-poplar by its formula 1 / (3000 / S - 20) from the shrinkages S of table
 * 4-3. The oaks are the rows of the trade groups.
 */
const TABLE = {
  ash: species('white ash', 0.00169, 0.00274),
  beech: species('American beech', 0.0019, 0.00431),
  birch: species('yellow birch', 0.00256, 0.00338),
  paperBirch: species('paper birch', 0.00219, 0.00304),
  cherry: species('black cherry', 0.00126, 0.00248),
  maple: species('sugar maple', 0.00165, 0.00353),
  redMaple: species('red maple', 0.00137, 0.00289),
  redOak: species('red oak', 0.00158, 0.00369),
  whiteOak: species('white oak', 0.0018, 0.00365),
  walnut: species('black walnut', 0.0019, 0.00274),
  poplar: species('yellow-poplar', 0.00158, 0.00289),
  whitePine: species('eastern white pine', 0.00071, 0.00212),
  pine: species('ponderosa pine', 0.00133, 0.00216),
  douglasFir: species('coast Douglas-fir', 0.00165, 0.00267),
  whiteFir: species('white fir', 0.00112, 0.00245),
} as const;

/** What people call them. Of a name for several, the one that moves more. */
const CALLED: Readonly<Record<string, Species>> = {
  ash: TABLE.ash,
  'white ash': TABLE.ash,
  beech: TABLE.beech,
  'american beech': TABLE.beech,
  birch: TABLE.birch,
  'yellow birch': TABLE.birch,
  'paper birch': TABLE.paperBirch,
  cherry: TABLE.cherry,
  'black cherry': TABLE.cherry,
  maple: TABLE.maple,
  'hard maple': TABLE.maple,
  'sugar maple': TABLE.maple,
  'soft maple': TABLE.redMaple,
  'red maple': TABLE.redMaple,
  oak: TABLE.redOak,
  'red oak': TABLE.redOak,
  'white oak': TABLE.whiteOak,
  walnut: TABLE.walnut,
  'black walnut': TABLE.walnut,
  poplar: TABLE.poplar,
  'yellow poplar': TABLE.poplar,
  tulipwood: TABLE.poplar,
  'white pine': TABLE.whitePine,
  'eastern white pine': TABLE.whitePine,
  pine: TABLE.pine,
  'ponderosa pine': TABLE.pine,
  'douglas fir': TABLE.douglasFir,
  fir: TABLE.douglasFir,
  'white fir': TABLE.whiteFir,
};

export type Material =
  | { readonly kind: 'wood'; readonly species: Species; readonly isKnown: boolean }
  /** Board made of fibres, chips or crossed layers. */
  | { readonly kind: 'sheet'; readonly name: string }
  /** Takes up no moisture that matters: plastic, metal. */
  | { readonly kind: 'dry'; readonly name: string };

const SHEETS = /\b(mdf|hdf|mdo|particle ?board|chipboard|hardboard|plywood|ply|osb|blockboard)\b/;
const DRY =
  /\b(acrylic|pmma|plexiglass|perspex|hdpe|pe|pvc|pom|acetal|delrin|abs|polycarbonate|pc|plastic|corian|aluminium|aluminum|brass|steel|slate)\b/;

/** What a blank is made of, from what a person calls it; of an unknown wood, the one that moves most. */
export function materialOf(written: string): Material {
  const name = written
    .toLowerCase()
    .replace(/[-_,]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (SHEETS.test(name)) return { kind: 'sheet', name: written };
  const known = Object.hasOwn(CALLED, name) ? CALLED[name] : undefined;
  if (known !== undefined) return { kind: 'wood', species: known, isKnown: true };
  if (DRY.test(name)) return { kind: 'dry', name: written };
  return { kind: 'wood', species: TABLE.beech, isKnown: false };
}

/** Names that are known, for messages. */
export const WOODS: readonly string[] = Object.keys(CALLED);
