/** How a thing that moves with the cutter passes one body, at its lowest, in one placing. */
export interface Clearance {
  readonly placing: 'front-up' | 'back-up';
  readonly body: string;
  readonly what: 'cutter' | 'collet nut' | 'spindle' | 'dust shoe';
  /** Feature being cut when it passes lowest over the body; null when it never comes over it. */
  readonly feature: string | null;
  /** Height above the bed at which it passes over the body, mm; null when it never comes over it. */
  readonly lowestMm: number | null;
  /** The body's top, mm above the bed. */
  readonly bodyTopMm: number;
  /** Least plan distance between what is swept and the body, mm; 0 when it comes over it. */
  readonly besideMm: number;
}
