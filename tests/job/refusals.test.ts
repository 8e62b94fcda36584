import { describe, expect, it } from 'vitest';
import { faultsOf } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

/** One part of the sound job written otherwise, and what is said of it. */
const IN_THE_JOB: readonly (readonly [part: string, instead: string, said: string])[] = [
  [
    'circle: 80',
    'slot: [8, 50]',
    'job.yaml:8:24: dish is 8 mm long and 50 mm wide; write [length, width] with its round ends, and turned: 90 deg for the other way',
  ],
  [
    'circle: 80',
    'polygon: [[0, 0], [20, 0]]',
    'job.yaml:8:27: dish has 2 corners and needs 3; write the corners in order, each once',
  ],
  [
    'circle: 80',
    'polygon: [[0, 0], [20, 0], [40, 0]]',
    'job.yaml:8:27: dish has no area; write the corners in order, each once',
  ],
  [
    'circle: 80',
    'polygon: [[0, 0], [20, 0], [0, 0], [0, 20]]',
    'job.yaml:8:27: dish has the corner [0, 0] twice; write the corners in order, each once',
  ],
  [
    'circle: 80',
    'circle: 80, cut: drill',
    'job.yaml:8:26: dish is drilled 80 mm wide, and flat 6 is 6 mm; write 6, or cut: pocket',
  ],
  [
    'circle: 80',
    'rectangle: [80, 40], cut: drill',
    'job.yaml:8:44: dish is drilled, and is no circle; write circle: and the diameter of the cutter',
  ],
  [
    'circle: 80',
    'circle: 80, corner-radius: 3',
    'job.yaml:8:45: corner-radius is for a rectangle, and dish is a circle; take it out',
  ],
  [
    'circle: 80',
    'rectangle: [80, 40], corner-radius: 21',
    'job.yaml:8:54: corner-radius 21 mm does not fit dish, which is 40 mm at its narrowest; write at most 20',
  ],
  [
    'circle: 80',
    'rectangle: [80, 5]',
    'job.yaml:8:29: dish is 5 mm at its narrowest, and flat 6 cuts 6 mm wide; write at least 6, or name a smaller cutter',
  ],
  [
    'circle: 80',
    'circle: 80, cut: chamfer',
    'job.yaml:8:77: flat 6 is a flat cutter, and a chamfer is cut with a vee; name a vee cutter',
  ],
  [
    'circle: 80, at: [100, 60]',
    'slot: [130, 10], at: [100, 60], turned: 90 deg',
    'job.yaml:8:45: dish reaches y = -5 mm, and the blank spans 0 to 120 mm; move it, or make it smaller',
  ],
  [
    'circle: 80, at: [100, 60], ',
    'circle: 80, ',
    'job.yaml:8:5: the feature dish does not say where it is; write at: [140, 90], its centre seen from the front',
  ],
  [
    '[20, 100]',
    '{arm: [100, 20]}',
    'job.yaml:15:16: the arm runs from 100 to 20 mm; write {arm: [20, 100]}',
  ],
  [
    '[20, 100]',
    '{arm: [20, 23]}',
    'job.yaml:15:16: fence-touch at 20 and 23 mm is one place: they are less than 5 mm apart; set them as far apart as the edge allows',
  ],
  [
    '[20, 100]',
    '20',
    'job.yaml:15:16: the fence has 1 button, and a straight edge rests on 2; write two distances such as [30, 250], or {arm: [20, 260]}',
  ],
  [
    '[20, 100]',
    '{arm: [20, 201]}',
    'job.yaml:15:27: fence-touch 201 mm is beyond the edge, which is 200 mm long; write 0 to 200, from the front-up corner',
  ],
  ['[20, 100]', '[-20, 100]', 'job.yaml:15:17: fence-touch -20 is negative; write 0 or more'],
  [
    'side-touch: 60',
    'side-touch: 121',
    'job.yaml:16:15: side-touch 121 mm is beyond the edge, which is 120 mm long; write 0 to 120, from the front-up corner',
  ],
  [
    'side-touch: 60',
    'side-touch: {leg: [1, 2]}',
    'job.yaml:16:15: side-touch: arm is missing; write arm: [20, 160]\njob.yaml:16:16: the key leg is not known; write arm',
  ],
  [
    'side-touch: 60',
    'side-touch: left',
    'job.yaml:16:15: side-touch left is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"',
  ],
  [
    'height: 8',
    'height: 8\n  touch-height: 9',
    'job.yaml:17:3: the stops have both a height and a touch-height; write height for a plain stop, or touch-height for one that touches in a narrow band',
  ],
  [
    'made: set-by-hand',
    'made: set-by-hand\n  cutter: flat 6',
    'job.yaml:19:11: cutter says what milled the stops, and these are set-by-hand; take it out, or write made: milled-in-place',
  ],
  [
    'made: set-by-hand',
    'made: milled-in-place\n  angle: 0',
    'job.yaml:19:10: angle is for stops that are set, and these are milled in place; take it out',
  ],
  [
    'made: set-by-hand',
    'made: milled-in-place\n  cutter: flat 7',
    'job.yaml:19:11: the cutter flat 7 is not in the shop file; did you mean flat 6?',
  ],
  [
    'xy: stops',
    'xy: stops, kept: held',
    'job.yaml:20:31: kept: held is for a zero that is kept, and xy is stops; take it out, or write xy: kept',
  ],
  [
    'xy: stops',
    'xy: hole, hole: dish',
    'job.yaml:20:18: no hole is there yet in the first placing; write stops, milled-stops, edges or middle',
  ],
  [
    'kept: held',
    'kept: held, xy-touched: [1, 1]',
    'job.yaml:21:47: xy-touched says where a zero is touched, and this one is kept; take it out',
  ],
  [
    'made: set-by-hand\nzero:\n  front-up: {xy: stops,',
    'made: milled-in-place\nzero:\n  front-up: {xy: milled-stops, xy-touched: [0, 9],',
    'job.yaml:20:44: xy-touched says where a zero is touched, and one from milling the stops is not; take it out',
  ],
  [
    '200 ±0.4',
    '200 ±30',
    'job.yaml:5:10: a size of 200 mm that may be off by 30 mm is not one part; write at most ±20',
  ],
  [
    'back-up: near-left',
    'back-up: far-left',
    'job.yaml:13:42: the fence stands on the near side, and the far-left corner is not on it; write near-left or near-right, or fence: left-edge',
  ],
  [
    '[dish, foot]',
    '[dish, dish]',
    'job.yaml:23:52: foot under the dish compares dish with itself; name two features',
  ],
  [
    'concentric: [dish, foot]',
    'misalignment: [300, 10]',
    'job.yaml:23:48: misalignment at x = 300 mm is off the blank, which spans 0 to 200 mm; write 0 to 200',
  ],
  [
    'concentric: [dish, foot]',
    'concentric: [dish, foot], misalignment: [30, 10]',
    'job.yaml:23:5: the need foot under the dish is about 2 things: concentric, misalignment; write one of concentric, misalignment, meets, parallel, lip, web, wall, depth or size, as in concentric: [shaft hole, pocket]',
  ],
  [
    'needs:\n  - {name: foot under the dish, concentric: [dish, foot], within: 0.5}',
    'needs: []',
    'job.yaml:22:8: there is no need, so there is nothing to predict; write - {name: shaft in the pocket, concentric: [shaft hole, pocket], within: 0.2}',
  ],
  [
    'within: 0.5',
    'within: true',
    'job.yaml:23:67: within is true; write a length above 0 such as 0.2, or a slope such as 0.1 per 100',
  ],
  [
    '  edges: sawn',
    '  edges: swan',
    'job.yaml:6:10: edges swan is not known; write as-bought, sawn, jointed or cut-here',
  ],
  [
    '  edges: sawn',
    '  bumps: {spread: 0.1 sd, gauge: caliper}',
    'job.yaml:6:10: bumps has 2 of spread, readings and gauge; write one of them, as in {spread: ±0.3, recurs: part}',
  ],
  [
    '  edges: sawn',
    '  bumps: {recurs: part}',
    'job.yaml:6:10: bumps has none of spread, readings and gauge; write one of them, as in {spread: ±0.3, recurs: part}',
  ],
  [
    '  edges: sawn',
    '  bumps: {readings: [0.1, wide]}',
    'job.yaml:6:27: readings wide is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"',
  ],
  [
    '  edges: sawn',
    '  bumps: H7/g6',
    'job.yaml:6:10: bumps H7/g6 is a fit, which is for dowels in metal bushes; write ±0.2, ±0.2 triangular, ±0.2 95%, 0.2 sd, half-normal 0.2, 0..0.2, arcsine ±0.2 or 0',
  ],
  [
    '  edges: sawn',
    '  bevel: {gauge: caliper}',
    'job.yaml:6:10: the gauge caliper is not in the shop file; there is no gauge there',
  ],
  [
    '  edges: sawn',
    '  calipered: {x-at: 130}',
    'job.yaml:6:21: x-at 130 is off the blank, which ends at 120 mm; write 0 to 120',
  ],
  [
    '200 ±0.4',
    '{spread: ±0.4}',
    'job.yaml:5:10: the size is missing; write {nominal: 280, spread: ±0.4}',
  ],
  [
    'turn: about-y',
    'turn: about-y\ntouch-off: {paper: {thickness: 0.1}}',
    'job.yaml:12:21: the key thickness is not known; write thick, diameter, spread or bias',
  ],
  [
    'turn: about-y',
    'turn: about-y\nfits: {}',
    'job.yaml:12:1: fits is not in this version yet; take it out',
  ],
  [
    'turn: about-y',
    'turn: about-y\nhold: [1]',
    'job.yaml:12:7: hold is a list and should be key: value pairs; write hold: {pusher: towards-stops}',
  ],
  [
    'turn: about-y',
    'turn: about-y\nunits: inches',
    'job.yaml:12:8: units inches is not known; write mm or inch',
  ],
  [
    'flipwright: 1',
    'flipwright: one',
    'job.yaml:1:13: flipwright is the text one and should be a number; write flipwright: 1',
  ],
  [
    'flipwright: 1',
    'flipwright: 0',
    'job.yaml:1:13: flipwright: 0 is no version this program reads, which is 1; write flipwright: 1',
  ],
  ['shop: shop.yaml', 'shop: ""', 'job.yaml:3:7: shop is empty; write shop: shop.yaml'],
  [
    'turn: about-y',
    'turn: about-y\nhold:',
    'job.yaml:12:6: hold is empty (an unquoted # begins a remark); write hold: {pusher: towards-stops}',
  ],
  [
    'at: [100, 60], depth: 6',
    'at: 100, depth: 6',
    'job.yaml:8:34: at is the number 100 and should be a list in [ ]; write at: [140, 90]',
  ],
  [
    'front-up: {xy: stops, z: top, with: paper}',
    'front-up: {xy: stops}',
    'job.yaml:20:13: front-up: z is missing; write z: top, or z: bed',
  ],
  [
    'edges: sawn',
    'edges: sawn\n  movement: {x: ±1 mm}',
    'job.yaml:7:17: x 1 mm is not a strain; write 0.001, 0.1 % or 0.3 per 200',
  ],
  [
    'edges: sawn',
    'edges: sawn\n  cup: {hump: 0..0.1, pressed-flat: maybe}',
    'job.yaml:7:37: pressed-flat maybe is not known; write yes, no, true or false',
  ],
];

const IN_THE_SHOP: typeof IN_THE_JOB = [
  [
    'machine:\n  travel: [400, 300, 80]\n',
    '',
    'shop.yaml:1:1: machine is missing; write machine: {travel: [600, 400, 90]} in the shop file',
  ],
  [
    '  travel: [400, 300, 80]',
    '  drive: belt',
    'shop.yaml:3:3: machine: travel is missing; write travel: [600, 400, 90] in the shop file',
  ],
  [
    '  spoilboard: {size: [400, 300], thickness: 18}',
    '  unevenness: 0',
    'shop.yaml:5:3: bed: spoilboard is missing; write spoilboard: {size: [600, 400], thickness: 18} in the shop file',
  ],
  [
    '6 ±0.04',
    '{spread: ±0.04}',
    'shop.yaml:7:42: the size is missing; write {nominal: 280, spread: ±0.4}',
  ],
  [
    'touch-off:',
    '  - {name: flat 6, kind: flat, diameter: 6}\ntouch-off:',
    'shop.yaml:8:12: the cutter flat 6 is here twice; give each its own name',
  ],
  [
    'cutters:\n  - {name: flat 6, kind: flat, diameter: 6 ±0.04, flute: 22, stick-out: 32}\n',
    '',
    'job.yaml:8:63: the cutter flat 6 is not in the shop file; there is no cutter there\njob.yaml:10:63: the cutter flat 6 is not in the shop file; there is no cutter there',
  ],
  [
    'flipwright-shop: 1',
    'flipwright-shop: 3',
    'shop.yaml:1:18: flipwright-shop: 3 is newer than this program reads, which is 1; update flipwright, or write flipwright-shop: 1',
  ],
  ['flipwright-shop: 1', '', 'shop.yaml:2:1: flipwright-shop is missing; write flipwright-shop: 1'],
  [
    'travel: [400, 300, 80]',
    'travel: [400, 300, 80]\n  lost-motion: -0.1',
    'shop.yaml:4:16: lost-motion -0.1 is negative; write 0 or more',
  ],
  [
    'travel: [400, 300, 80]',
    'travel: [400, 300, 80]\n  lost-motion: {readings: [0.1, 0.2]}',
    'shop.yaml:4:16: lost-motion is one length here; write lost-motion: 0.06',
  ],
  [
    'travel: [400, 300, 80]',
    'travel: [400, 300, 10]',
    'job.yaml:5:30: the blank is 18 mm thick, and the machine travels 10 mm; write at most 10',
  ],
  [
    'stick-out: 32',
    'stick-out: 32, speed: 0',
    'shop.yaml:7:84: speed 0 is not between 0 and 200000; write turns a minute such as 18000',
  ],
  [
    'stick-out: 32',
    'stick-out: 32, flutes: 2.5',
    'shop.yaml:7:85: flutes is the number 2.5 and should be a whole number; write a number without a point',
  ],
  [
    'spoilboard:',
    'inserts: {thread: M7, first: [50, 50], pitch: [0, 75], count: [4, 4]}\n  spoilboard:',
    'shop.yaml:5:21: thread M7 is not known; write M4, M5, M6 or M8\nshop.yaml:5:50: pitch 0 is not above 0; write a length above 0 such as 6 or 1/4 in',
  ],
  [
    'spoilboard:',
    'inserts: {thread: M6, first: [50, 50], pitch: [10, 75], count: [0, 4]}\n  spoilboard:',
    'shop.yaml:5:66: count 0 by 4 is not a number of rows; write 1 to 1000',
  ],
];

describe('a job that cannot be meant', () => {
  it.each(IN_THE_JOB)('with %j as %j is refused', (part, instead, said) => {
    expect(faultsOf(otherwise(JOB, part, instead), SHOP).join('\n')).toBe(said);
  });
});

describe('a shop that cannot be meant', () => {
  it.each(IN_THE_SHOP)('with %j as %j is refused', (part, instead, said) => {
    expect(faultsOf(JOB, otherwise(SHOP, part, instead)).join('\n')).toBe(said);
  });
});
