/** One size of a part of the jig: its default in mm or a count; null: it follows from the job. */
export interface JigSize {
  /** A `gap` may be 0. */
  readonly kind: 'length' | 'gap' | 'count';
  readonly value: number | null;
  readonly about: string;
}

const length = (value: number | null, about: string): JigSize => ({ kind: 'length', value, about });
const gap = (value: number, about: string): JigSize => ({ kind: 'gap', value, about });
const count = (value: number | null, about: string): JigSize => ({ kind: 'count', value, about });

/**
 * Everything that can be asked for under `jig:` beside the stops, and its sizes, mm. All defaults are
 * common practice without a source.
 */
export const JIG_SIZES = {
  'dowel-board': {
    pitch: length(25, 'from one hole to the next'),
    columns: count(8, 'holes along X'),
    rows: count(5, 'holes along Y'),
    diameter: length(6, 'of the dowels'),
    clearance: gap(0.1, 'hole over dowel, on the diameter'),
    thick: length(15, 'of the board'),
    'screw-columns': count(2, 'screws along X that hold it'),
  },
  'dowel-grid': {
    pitch: length(50, 'from one hole to the next'),
    columns: count(null, 'holes along X; left out, as many as the spoilboard takes'),
    rows: count(null, 'holes along Y'),
    'first-x': gap(25, 'the first hole from the left end of the spoilboard'),
    'first-y': gap(25, 'the first hole from its near end'),
    diameter: length(6, 'of the dowels'),
    clearance: gap(0.1, 'hole over dowel, on the diameter'),
    depth: length(12, 'of the holes'),
  },
  'drill-guide': {
    thick: length(15, 'of the guide, how long it leads the drill'),
    clearance: gap(0.1, 'hole over drill, on the diameter'),
  },
  'strap-clamp': {
    count: count(4, 'how many'),
    wide: length(26, 'of the strap'),
    thick: length(12, 'of the strap'),
    slot: length(40, 'length of its slot'),
    bite: length(8, 'how far it lies on the blank'),
    'heel-higher': gap(0.5, 'heel over blank'),
  },
  'step-block': {
    rise: length(3, 'of one step'),
    run: length(8, 'of one step'),
    wide: length(26, 'of the block'),
    high: length(null, 'of its top step; left out, over the thickness of the blank'),
  },
  'toe-clamp': {
    count: count(2, 'how many'),
    wide: length(40, 'along the edge of the blank'),
    long: length(60, 'away from it'),
    high: length(null, 'left out, 4 below the top of the blank'),
    slot: length(20, 'length of its slot'),
    lean: length(null, 'how far its top edge stands out over its foot; left out, 12 degrees'),
  },
  'cam-clamp': {
    count: count(2, 'how many'),
    radius: length(22, 'of the disc'),
    throw: length(2.5, 'pivot out of the middle of the disc'),
    handle: length(90, 'from the pivot to its end'),
    thick: length(15, 'of the disc'),
  },
  'wedge-pair': {
    count: count(2, 'how many pairs'),
    long: length(80, 'of a wedge'),
    thin: length(10, 'its thin end'),
    rise: length(11, 'thick end over thin end'),
    thick: length(15, 'how high it stands on the bed'),
  },
  'shim-pads': {
    side: length(25, 'of a pad'),
    step: length(0.2, 'from one thickness to the next'),
    count: count(5, 'how many thicknesses'),
  },
  'test-piece': {
    tooth: length(12, 'wall between a front slot and a back slot'),
    slot: length(9, 'width of a slot'),
    deep: length(20, 'how far a slot runs in from the edge'),
  },
  'waste-combs': {
    tooth: length(12, 'wall between a front slot and a back slot'),
    slot: length(9, 'width of a slot'),
    deep: length(20, 'how far a slot runs along its teeth'),
  },
  'steel-buttons': {
    diameter: length(10, 'of the pins'),
    clearance: gap(0.1, 'groove over pin, on the diameter'),
  },
  /** All its sizes follow from the fence of the job. */
  'fence-stop': {},
  'nest-frame': {
    thick: length(null, 'left out, as high as the walls of the nest'),
    rim: length(25, 'of board round the nest'),
    lead: gap(1, 'chamfer of the upper inner edge, at 45 degrees'),
  },
  'cam-base': {
    count: count(2, 'how many'),
    thick: length(null, 'left out, just enough for the nut and what is over it'),
    slot: length(30, 'length of its slot'),
  },
  'stops-from-sheet': {
    tabs: count(4, 'bridges that hold a stop in the sheet'),
    'tab-wide': length(6, 'of a bridge'),
    'tab-high': length(2, 'of a bridge, from the foot of the sheet'),
    margin: length(15, 'of sheet round the stops'),
  },
  template: {
    overlap: gap(10, 'how far the sheets lie over each other'),
  },
  skim: {
    depth: length(0.3, 'comes off the spoilboard'),
    lane: length(null, 'from one lane to the next; left out, 0.6 of the cutter'),
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, JigSize>>>>;

export type JigPartName = keyof typeof JIG_SIZES;

/** The sizes of one part: what the job says, else the default; null where the job decides. */
export type JigSizesOf<P extends JigPartName> = {
  readonly [K in keyof (typeof JIG_SIZES)[P]]: number | null;
};

/** The parts that a job asks for. */
export type JigWishes = { readonly [P in JigPartName]?: JigSizesOf<P> };

/** A part with all its defaults, for those who ask for it in code. */
export function defaultJigSizes<P extends JigPartName>(part: P): JigSizesOf<P> {
  const sizes: Readonly<Record<string, JigSize>> = JIG_SIZES[part];
  return Object.fromEntries(
    Object.entries(sizes).map(([key, { value }]) => [key, value]),
  ) as unknown as JigSizesOf<P>;
}
