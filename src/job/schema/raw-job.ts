import type { Corner, Cut, Edge, Face, Turn } from '../job.ts';
import type { RawHold, RawPrograms, RawTabs } from './raw-hold.ts';
import type { RawJig } from './raw-jig.ts';
import type { RawShopParts, RawSpread, Written } from './raw-shop.ts';

/** What a job file may hold, as it is written: every quantity still a number or a text. */
export interface RawJob extends RawShopParts {
  readonly flipwright: number;
  readonly name: string;
  readonly shop: string;
  readonly 'good-enough'?: Written | undefined;
  readonly 'on-bed'?: RawPlace | undefined;
  readonly blank: RawBlank;
  readonly first?: Face | undefined;
  readonly front?: readonly RawFeature[] | undefined;
  readonly back?: readonly RawFeature[] | undefined;
  readonly turn: Turn;
  /** One of the three. */
  readonly stops?: RawStops | undefined;
  readonly dowels?: RawDowels | undefined;
  readonly nest?: RawNest | undefined;
  readonly zero: RawZeros;
  readonly needs: readonly RawNeed[];
  readonly 'between-placings'?: RawBetween | undefined;
  readonly repeat?: RawRepeat | undefined;
  readonly parts?: RawParts | undefined;
  readonly hold?: RawHold | undefined;
  readonly program?: RawPrograms | undefined;
  readonly jig?: RawJig | undefined;
}

export type RawPlace = readonly [Written, Written];
export type RawSized = RawSpread;
export type RawEdgeWord = 'as-bought' | 'sawn' | 'jointed' | 'cut-here';

export type RawEdge = 'lower-edge' | 'upper-edge' | 'left-edge' | 'right-edge';

export interface RawBlank {
  readonly size: readonly [RawSized, RawSized, RawSized];
  readonly material?: string | undefined;
  readonly grain?: 'along-x' | 'along-y' | 'sheet' | undefined;
  readonly board?: 'flat-sawn' | 'quarter-sawn' | undefined;
  readonly edges?: RawEdgeWord | undefined;
  readonly square?: RawSpread | undefined;
  readonly 'taper-x'?: RawSpread | undefined;
  readonly 'taper-y'?: RawSpread | undefined;
  readonly bevel?: RawSpread | undefined;
  readonly crook?: RawSpread | undefined;
  readonly bumps?: RawSpread | undefined;
  readonly 'thickness-taper'?: RawSpread | RawAlongAxes | undefined;
  readonly swarf?: RawSpread | undefined;
  readonly cup?: RawCup | undefined;
  readonly marked?: readonly Edge[] | undefined;
  readonly movement?: RawAlongAxes | undefined;
  readonly calipered?:
    { readonly 'x-at'?: Written | undefined; readonly 'y-at'?: Written | undefined } | undefined;
}

/** One spread along X and another along Y. */
export interface RawAlongAxes {
  readonly x?: RawSpread | undefined;
  readonly y?: RawSpread | undefined;
}

export interface RawCup {
  readonly hump: RawSpread;
  readonly along?: 'x' | 'y' | undefined;
  readonly up?: Face | undefined;
  readonly 'pressed-flat'?: 'yes' | 'no' | boolean | undefined;
}

export interface RawFeature {
  readonly name: string;
  readonly circle?: Written | undefined;
  readonly rectangle?: readonly [Written, Written] | undefined;
  readonly slot?: readonly [Written, Written] | undefined;
  readonly polygon?: readonly RawPlace[] | undefined;
  readonly outline?: RawOutline | undefined;
  readonly 'corner-radius'?: Written | undefined;
  readonly at?: RawPlace | undefined;
  readonly turned?: Written | undefined;
  readonly cut?: Cut | undefined;
  readonly chamfer?: Written | undefined;
  readonly depth?: Written | undefined;
  readonly tabs?: RawTabs | undefined;
  readonly cutter: string;
}

export interface RawOutline {
  readonly drawing: string;
  readonly named: string;
  readonly units?: 'mm' | 'inch' | undefined;
}

export interface RawStops {
  /** Together with `side-touch`, or `dowel` instead of both. */
  readonly corner?: { readonly 'front-up': Corner; readonly 'back-up': Corner } | undefined;
  readonly fence: RawEdge;
  readonly 'fence-touch': RawTouch;
  readonly 'side-touch'?: RawTouch | undefined;
  readonly dowel?: RawDowel | undefined;
  readonly 'touch-height'?: Written | undefined;
  readonly height?: Written | undefined;
  readonly made: 'set-by-hand' | 'on-bed-pins' | 'milled-in-place';
  readonly cutter?: string | undefined;
  readonly angle?: RawSpread | undefined;
  readonly square?: RawSpread | undefined;
  readonly spacing?: RawSpread | undefined;
  readonly 'seat-gap'?: RawSpread | undefined;
  readonly give?: RawSpread | undefined;
}

export type RawTakeUp = 'anywhere' | 'left' | 'right' | 'near' | 'far';

/** What dowels and a single dowel have in common. */
export interface RawDowelFit {
  readonly diameter: Written;
  readonly clearance?: RawSpread | undefined;
  readonly fit?: string | undefined;
  readonly bush?: 'metal' | undefined;
  readonly pin?: RawSized | undefined;
  readonly hole?: RawSized | undefined;
  readonly drilled: 'with-the-blank' | 'separately';
  readonly 'drill-error'?: RawSpread | undefined;
  readonly 'take-up'?: RawTakeUp | undefined;
  readonly laid?: RawSpread | undefined;
}

export interface RawDowels extends RawDowelFit {
  readonly at: readonly RawPlace[];
}

export interface RawDowel extends RawDowelFit {
  readonly at: RawPlace;
}

export interface RawNest {
  readonly around?: string | undefined;
  readonly clearance?: RawSpread | undefined;
  readonly cutter?: string | undefined;
  readonly wall?: Written | undefined;
  readonly 'take-up'?: RawTakeUp | undefined;
  readonly 'seat-gap'?: RawSpread | undefined;
  readonly laid?: RawSpread | undefined;
}

export type RawTouch = Written | readonly Written[] | { readonly arm: readonly [Written, Written] };

export interface RawZeros {
  readonly 'front-up': RawZero;
  readonly 'back-up': RawZero;
}

export interface RawZero {
  readonly xy: 'stops' | 'milled-stops' | 'edges' | 'middle' | 'hole' | 'dowels' | 'nest' | 'kept';
  readonly hole?: string | undefined;
  readonly 'xy-touched'?: RawPlace | undefined;
  readonly kept?: 'held' | 're-homed' | 'power-off' | undefined;
  readonly z: 'top' | 'bed';
  readonly 'z-touched'?: RawPlace | undefined;
  readonly with?: string | undefined;
}

export interface RawNeed {
  readonly name: string;
  readonly concentric?: readonly [string, string] | undefined;
  readonly misalignment?: RawPlace | undefined;
  readonly lip?: readonly [string, string] | undefined;
  readonly web?: readonly [string, string] | undefined;
  readonly wall?: string | undefined;
  readonly depth?: string | undefined;
  readonly meets?: readonly [string, string] | undefined;
  readonly parallel?: readonly [string, string] | undefined;
  readonly size?: string | undefined;
  readonly to?: RawEdge | undefined;
  readonly along?: 'x' | 'y' | undefined;
  readonly within?: Written | undefined;
  readonly 'at-least'?: Written | undefined;
  readonly from?: Written | undefined;
  readonly 'up-to'?: Written | undefined;
}

export interface RawBetween {
  readonly hours: number;
  readonly humidity: Written;
  readonly temperature?: Written | undefined;
}

export interface RawRepeat {
  readonly count: readonly [number, number];
  readonly pitch: RawPlace;
}

export interface RawParts {
  readonly count?: number | undefined;
  readonly order?: 'each-in-turn' | 'all-fronts-first' | undefined;
}
