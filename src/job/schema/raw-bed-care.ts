import type { Written } from './raw-shop.ts';

/** Heights of the bed: in a file of their own, or point by point. */
export interface RawHeights {
  readonly file?: string | undefined;
  readonly points?: readonly (readonly [Written, Written, Written])[] | undefined;
  readonly measured?: Written | undefined;
  /** A gauge of the shop, by name. */
  readonly gauge?: string | undefined;
}

export interface RawShim {
  readonly thick: Written;
  readonly count?: number | undefined;
}
