import { JOB } from './sound.ts';

const STOPS = JOB.slice(JOB.indexOf('stops:'), JOB.indexOf('zero:'));
const FOUND = 'front-up: {xy: stops, z: top, with: paper}';
const on = (block: string, found: string): string =>
  JOB.replace(STOPS, block).replace(FOUND, `front-up: {xy: ${found}, z: top, with: paper}`);

/** The short job of `sound.ts`, located in the other ways; sound as they stand. */
export const DOWELS = on(
  `dowels:
  at: [[100, 15], [100, 105]]
  diameter: 8
  clearance: 0..0.1
  drilled: with-the-blank
`,
  'middle',
);
export const FENCE = on(
  `stops:
  fence: lower-edge
  fence-touch: [20, 160]
  height: 8
  made: set-by-hand
  dowel: {at: [100, 90], diameter: 8, clearance: 0..0.1, drilled: with-the-blank}
`,
  'edges',
);
export const NEST = on(
  `nest:
  cutter: flat 6
  clearance: 0.05..0.15
  wall: 8
`,
  'nest',
);
export const PART = on(
  `nest:
  around: body
  cutter: flat 6
  wall: 8
`,
  'middle',
).replace(
  'back:',
  '  - {name: body, rectangle: [140, 100], corner-radius: 5, at: [100, 60], cut: profile-outside, depth: through, cutter: flat 6}\nback:',
);
