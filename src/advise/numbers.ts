/**
 * Minutes of work, all of them estimates of ours for somebody who has done it before: common practice, no source.
 * They rank ways that differ by a lot; a difference of a few minutes means nothing.
 */
export const MINUTES = {
  /** One stop, printed or sawn, hands on it and not the printer's own time. */
  makeStop: { arms: 10, buttons: 15 },
  /** To set down, square, screw: the first stop, and a second side stop. */
  setDown: { 'set-by-hand': 15, 'on-bed-pins': 4, 'milled-in-place': 20 },
  secondStop: { 'set-by-hand': 5, 'on-bed-pins': 2, 'milled-in-place': 5 },
  /** Through blank and bed, each part. */
  drillDowel: 2,
  cutNest: 25,
  /** To lay, push home and clamp one placing. */
  seat: 2,
  touch: { stops: 2, edges: 3, middle: 5, hole: 4, made: 0, kept: 0 },
  /** Top or bed, each placing. */
  touchZ: 1,
} as const;

/** A gain in chance below this is not worth words (bench practice 1). */
export const LEAST_GAIN = 0.01;

/** How squarely a blank lies that is laid along a batten, where nothing else seats it: an estimate of ours. */
export const LAID = '±0.3 per 200';
