import type { Distribution } from '../num/distribution.ts';
import type { Path } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { JigWishes } from './jig-sizes.ts';
import type { Need } from './need.ts';
import type { Fence, Locating, Touch } from './locating.ts';
import type { Cutter, Shop } from './shop.ts';

export type {
  Band,
  Clearance,
  DowelHoles,
  Dowels,
  Fence,
  FenceAndDowel,
  Locating,
  Made,
  Nest,
  TakeUp,
  Touch,
} from './locating.ts';
export type { Limits, Need } from './need.ts';
export type { AboveTip, Bed, Cutter, Inserts, Machine, Shop, Units } from './shop.ts';

/** What a person asked for, after reading the job file and the shop file: mm, radians, tangents. */
export type Job = JobBase & Locating;

/** A job whose blank is pushed against a fence and a side stop. */
export type StopsJob = JobBase & Extract<Locating, { locating: 'stops' }>;

export interface JobBase {
  readonly name: string;
  /** Chance, 0..1, of each need that counts as good enough. */
  readonly goodEnoughShare: number;
  /** Where the front-up corner of the stops stands; assumed when the job leaves it out. */
  readonly onBed: Valued<Point<'bed'>>;
  readonly blank: Blank;
  readonly first: Face;
  readonly features: readonly Feature[];
  readonly turn: Turn;
  readonly zero: { readonly frontUp: Zero; readonly backUp: Zero };
  readonly needs: readonly Need[];
  readonly parts: Parts;
  readonly hold: Hold;
  /** What is to be made beside the stops. */
  readonly jig: JigWishes;
  readonly shop: Shop;
  /** Offsets that were measured and are dialled into the second placing's zero; absent: none are. */
  readonly dialled?: DialledIn;
}

/** Offsets of the second placing's zero, found on a test piece of this very set-up. */
export interface DialledIn {
  /** Where on the blank they bring the back onto the front. */
  readonly at: Point<'blank'>;
  readonly x: DialledAxis | null;
  readonly y: DialledAxis | null;
  /** How often the test piece was turned over: the mean of so many placings was read. */
  readonly turns: number;
  readonly measured: string;
  /** The file that keeps them. */
  readonly file: string;
}

/** Along one machine axis, mm, X right and Y away. */
export interface DialledAxis {
  readonly offsetMm: number;
  readonly half95Mm: number;
  /** The sd by the readings alone. */
  readonly readingMm: number;
  /** The sd of one length by caliper, where each blank's own is dialled in beside; null: it is not. */
  readonly calipered: number | null;
}

export type Face = 'front' | 'back';
/** Edges of the blank, seen from the front. */
export type Edge = 'lower' | 'upper' | 'left' | 'right';
export type Corner = 'near-left' | 'near-right' | 'far-left' | 'far-right';
/** `about-y`: left and right edges change places; `about-x`: near and far edges do. */
export type Turn = 'about-x' | 'about-y';
export type Recurrence = 'shop' | 'power-up' | 'setup' | 'part' | 'placing' | 'feature';

/** Where a figure comes from: somebody wrote it, or nobody did and a table of ours filled it in. */
export type Origin =
  | { readonly kind: 'stated'; readonly file: string; readonly line: number }
  | { readonly kind: 'assumed'; readonly because: string };

/** How many blanks are made, and whether each is finished before the next or all first faces come first. */
export interface Parts {
  readonly count: number;
  readonly order: 'each-in-turn' | 'all-fronts-first';
}

export interface Valued<T> {
  readonly value: T;
  readonly origin: Origin;
}

/** How far something may be off. `text` is what was written, or what the table says. */
export interface Spread {
  readonly distribution: Distribution;
  readonly recurs: Recurrence;
  readonly origin: Origin;
  readonly text: string;
}

/** Sizes in mm; spreads of lengths in mm, of leans as tangents. */
export interface Blank {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thickMm: number;
  readonly material: string;
  readonly marked: readonly Edge[];
  readonly widthSpread: Spread;
  readonly heightSpread: Spread;
  readonly thickSpread: Spread;
  /** Left edge leans to the right going up (tangent), about the lower-left corner. */
  readonly squareSpread: Spread;
  /** Right edge leans further than the left (tangent). */
  readonly taperXSpread: Spread;
  /** Upper edge higher at the right (tangent). */
  readonly taperYSpread: Spread;
  /** Outward lean of each edge through the thickness (tangent), positive: the front face is larger. */
  readonly bevelSpread: Spread;
  /** Sag of each edge over its own length (tangent): sag = this times the length, positive bulges. */
  readonly crookSpread: Spread;
  /** Small deviation at each place of an edge that is touched, mm. */
  readonly bumpSpread: Spread;
  /** Strain of the wood between the placings, along X and along Y (pure numbers). */
  readonly movementX: Spread;
  readonly movementY: Spread;
  /** Both come from one change of moisture, and so move together. */
  readonly movesTogether: boolean;
  /** Thicker at the right, thicker at the upper edge (tangents), about the middle. */
  readonly thicknessTaperX: Spread;
  readonly thicknessTaperY: Spread;
  readonly cup: Cup;
  /** What lies under the blank and lifts it, each placing, mm, never negative. */
  readonly swarf: Spread;
  /** Width was measured at this y, height at this x (blank frame); half-way when not said. */
  readonly widthAtYMm: number;
  readonly heightAtXMm: number;
}

/** The middle of the blank stands over its edges along one axis, as a parabola. */
export interface Cup {
  /** Height of the middle over the edges, mm, never negative. */
  readonly hump: Spread;
  /** The axis along which it is curved. */
  readonly along: 'x' | 'y';
  /** The face on which the middle stands up; null: nobody knows, so either is as likely. */
  readonly up: Face | null;
  readonly pressedFlat: boolean;
}

export type Shape =
  | { readonly kind: 'circle'; readonly diameterMm: number }
  | {
      readonly kind: 'rectangle';
      readonly widthMm: number;
      readonly heightMm: number;
      readonly cornerRadiusMm: number;
    }
  | { readonly kind: 'slot'; readonly lengthMm: number; readonly widthMm: number }
  /** Vertices from `at`, counter-clockwise. */
  | { readonly kind: 'polygon'; readonly vertices: readonly Point<'blank'>[] }

  /** A closed outline out of a drawing, placed with its own origin at `at`; arcs are kept. */
  | { readonly kind: 'outline'; readonly path: Path };

/**
 * A chamfer is cut along its outline with a V cutter, within it or round it; its width in plan follows from its
 * depth, and its outline is where it meets the face.
 */
export type Cut =
  'pocket' | 'profile-outside' | 'profile-inside' | 'drill' | 'chamfer' | 'chamfer-outside';

export interface Feature {
  readonly name: string;
  readonly face: Face;
  readonly shape: Shape;
  /** Centre (of a polygon: its origin), seen from the front, from the lower-left corner. */
  readonly at: Point<'blank'>;
  /** Turned counter-clockwise about `at`, seen from the front. */
  readonly turnedRad: number;
  readonly cut: Cut;
  /** Below the face it is cut from; a through cut is the blank's thickness deep. */
  readonly depthMm: number;
  readonly through: boolean;
  readonly cutter: Cutter;
}

export interface Stops extends Fence {
  /** On the bed. Equal corners: the same side stop again. Different: a second side stop. */
  readonly corner: { readonly frontUp: Corner; readonly backUp: Corner };
  readonly sideTouch: Touch;
}

export interface Zero {
  readonly xy: ZeroXy;
  readonly z: ZeroZ;
}

export type ZeroXy =
  /** Touched on the stops' faces. `at`: X found at that y and Y at that x, layout frame. */
  | { readonly kind: 'stops'; readonly at: Point<'layout'> | null; readonly tool: TouchTool }
  /** The zero from which the stops were milled. */
  | { readonly kind: 'milled-stops'; readonly at: Point<'layout'> | null }
  /** The zero from which this machine drilled the bed for the dowels, or cut the nest. */
  | { readonly kind: 'dowels' | 'nest' }
  | { readonly kind: 'edges'; readonly at: Point<'layout'> | null; readonly tool: TouchTool }
  | { readonly kind: 'middle'; readonly at: Point<'layout'> | null; readonly tool: TouchTool }
  /** The centre of a round hole that the first placing has cut through; `feature` is its name. */
  | { readonly kind: 'hole'; readonly feature: string; readonly tool: TouchTool }
  /** The first placing's zero again. `extra` is what homing or a power cycle adds, one draw an axis. */
  | {
      readonly kind: 'kept';
      readonly how: 'held' | 're-homed' | 'power-off';
      readonly extra: Spread | null;
    };

export interface ZeroZ {
  readonly on: 'top' | 'bed';
  readonly at: Point<'layout'> | null;
  readonly tool: TouchTool;
}

export interface TouchTool {
  readonly name: string;
  /** Error of one touch, mm, positive away from the face that is touched; the tool's bias is its centre. */
  readonly spread: Spread;
}

export interface Hold {
  readonly pusher: 'towards-stops' | 'none';
  /** Shift away from the stops when the clamps are tightened, each placing and direction, mm. */
  readonly clampDrag: Spread;
}
