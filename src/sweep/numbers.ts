/** How far below the bed's surface a through cut goes, mm. Common practice, no source. */
export const breakThroughMm = 0.5;

/** Chords of swept outlines stray no further than this, mm: a hundredth of the 2 mm kept clear. */
export const sweepChordMm = 0.02;

/**
 * A pocket as wide as its cutter leaves the axis a line, which the clipping grid (1e-6 mm) may lose:
 * insets are this much smaller than the cutter's radius, mm. Errs towards "it comes over".
 */
export const insetSlackMm = 1e-3;
