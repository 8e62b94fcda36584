import type { JigPartName } from '../jig-sizes.ts';
import type { Written } from './raw-shop.ts';

/** One part of the jig: asked for as it comes, or with sizes of its own. */
export type RawJigPart = 'yes' | 'no' | boolean | Readonly<Record<string, Written | undefined>>;

export type RawJig = { readonly [P in JigPartName]?: RawJigPart | undefined };
