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

/** Minutes of single actions: estimates of ours, as above. Those that are done to every part are counted for each. */
export const ACTION_MINUTES = {
  padStops: 10,
  moveButton: 5,
  secondStop: 20,
  millStops: 30,
  bedPins: 15,
  clockFence: 10,
  brush: 1,
  joint: 10,
  caliper: 2,
  dialIn: 1,
  middle: 5,
  touchElsewhere: 0,
  keepZero: 0,
  heights: 0,
  drillDowels: 5,
  pressFlat: 3,
  pusher: 5,
  squareMachine: 60,
  measureScale: 20,
  tramCutter: 30,
  takeUpPlay: 30,
  skimBed: 40,
  sameCutter: 0,
  measurePins: 10,
  sameDay: 0,
  testPiece: 20,
  turnTestPiece: 10,
} as const;

/** What care brings, as it is written in a job file: common practice, no source. */
export const CARE = {
  clockedPer200: 0.03,
  clockedAngle: '±0.03 per 200',
  /** Less of a lean is not worth a turned fence. */
  leastHalfTurnPer200: 0.05,
  brushedGap: 'half-normal 0.01',
  calipered: '±0.03',
  squaredLean: '±0.05 per 200',
  measuredScale: '±0.03 per 300',
  trammed: '±0.02 per 100',
  lostMotion: '0.02',
  skimmedLean: '±0.03 per 200',
  skimmedUnevenness: '±0.02',
  measuredClearance: '0.02..0.06',
} as const;
