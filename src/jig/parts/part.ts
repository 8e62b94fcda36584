import type { Facet } from '../mesh.ts';
import { plateFacets } from '../plate/plate-solid.ts';
import type { Plate } from '../plate/plate.ts';
import { facetsOf, solidOf } from '../solid.ts';
import type { Profile } from '../stop-part.ts';

/** A part of the jig beside the stops, lying as it is printed. */
export interface JigPart {
  readonly name: string;
  /** What it is for, one sentence. */
  readonly purpose: string;
  /** How many to make. */
  readonly count: number;
  readonly form: PartForm;
  /** What its maker and user must know, one sentence each. */
  readonly notes: readonly string[];
}

/** A plate can be cut from sheet as well as printed; what leans can only be printed. */
export type PartForm =
  | { readonly kind: 'plate'; readonly plate: Plate }
  | { readonly kind: 'leaning'; readonly profile: Profile };

/** Its facets, counter-clockwise seen from outside. */
export const partFacets = ({ form }: JigPart): readonly Facet[] =>
  form.kind === 'plate' ? plateFacets(form.plate) : facetsOf(solidOf(form.profile));
