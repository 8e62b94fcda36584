/** What the page holds for the viewer, both placings; all lengths whole hundredths of a millimetre. */
export interface Placed {
  readonly title: string;
  readonly things: readonly Thing[];
}

export interface Thing {
  readonly kind: 'bed' | 'blank' | 'locates' | 'holds';
  readonly words: string;
  /** Upright walls along a closed line, its corners `x, y, x, y ...`, the solid on its left. */
  readonly walls: readonly {
    readonly loop: readonly number[];
    readonly low: number;
    readonly high: number;
  }[];
  /** Level faces: an outer line, then its holes. */
  readonly faces: readonly {
    readonly loops: readonly (readonly number[])[];
    readonly at: number;
    readonly up: boolean;
  }[];
  /** A skin by corners `x, y, z ...` and three indexes a triangle. */
  readonly triangles: { readonly corners: readonly number[]; readonly indexes: readonly number[] };
}

/** Reads what the page holds. */
export const readScenes = (text: string): readonly Placed[] => JSON.parse(text) as Placed[];
