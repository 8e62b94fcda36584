import { DOWELS, FENCE, NEST, PART } from './locating-cases.ts';

export type Change = readonly [part: string, instead: string];
/** A job, what is changed in its text, and all that must then be said of it. */
export type Case = readonly [job: string, changes: readonly Change[], said: string];

export const CASES: readonly Case[] = [
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[[100, 15]]']],
    'job.yaml:13:7: there is 1 dowel, and 2 to 4 locate a blank; write two places, far apart, or stops with a dowel',
  ],
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[[100, 15], [100, 35], [100, 55], [100, 75], [100, 95]]']],
    'job.yaml:13:7: there are 5 dowels, and 2 to 4 locate a blank; keep the two to four that are farthest apart',
  ],
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[]']],
    'job.yaml:13:7: there are 0 dowels, and 2 to 4 locate a blank; write two places, far apart, or stops with a dowel',
  ],
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[[100, 3], [100, 105]]']],
    'job.yaml:13:8: a dowel hole at [100, 3] is not within the blank, which is 200 by 120 mm; stay 4 mm or more, half its diameter, inside every edge',
  ],
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[[100, 15], [100, 20]]']],
    'job.yaml:13:19: this dowel is 5 mm from another, and they are 8 mm thick; set them as far apart as the blank allows',
  ],
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[[100, 15], [90, 105]]']],
    'job.yaml:13:8: turned about-y about x = 95, half-way between the outermost dowels, this hole comes to [90, 15], where there is no dowel; set the dowels on one line along Y, or in pairs on both sides of it',
  ],
  [
    DOWELS,
    [
      ['depth: 6, cutter', 'depth: through, cutter'],
      ['[[100, 15], [100, 105]]', '[[100, 15], [100, 60]]'],
    ],
    'job.yaml:13:19: dish is cut right through there in the first placing, so nothing is left to put on the dowel; name a place that is still there, as in the waste',
  ],
  [
    DOWELS,
    [['[[100, 15], [100, 105]]', '[100, 15]']],
    'job.yaml:13:8: at is the number 100 and should be a list in [ ]; write [140, 12], one such place for each dowel\njob.yaml:13:13: at is the number 15 and should be a list in [ ]; write [140, 12], one such place for each dowel',
  ],
  [
    DOWELS,
    [['diameter: 8', 'diameter: 0']],
    'job.yaml:14:13: diameter 0 is not above 0; write a length above 0 such as 6 or 1/4 in',
  ],
  [
    DOWELS,
    [['diameter: 8', 'diameter: -8']],
    'job.yaml:14:13: diameter -8 is not above 0; write a length above 0 such as 6 or 1/4 in',
  ],
  [
    DOWELS,
    [['diameter: 8', 'diameter: .nan']],
    'job.yaml:14:13: diameter .nan is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"',
  ],
  [
    DOWELS,
    [['diameter: 8\n', '\n']],
    'job.yaml:13:3: dowels: diameter is missing; write diameter: 8',
  ],
  [
    DOWELS,
    [['diameter: 8', 'diameter: 800']],
    'job.yaml:13:8: a dowel hole at [100, 15] is not within the blank, which is 200 by 120 mm; stay 400 mm or more, half its diameter, inside every edge\njob.yaml:13:19: a dowel hole at [100, 105] is not within the blank, which is 200 by 120 mm; stay 400 mm or more, half its diameter, inside every edge\njob.yaml:13:19: this dowel is 90 mm from another, and they are 800 mm thick; set them as far apart as the blank allows',
  ],
  [
    DOWELS,
    [['  drilled: with-the-blank\n', '']],
    'job.yaml:13:3: dowels: drilled is missing; write drilled: with-the-blank, or separately',
  ],
  [
    DOWELS,
    [['drilled: with-the-blank', 'drilled: before']],
    'job.yaml:16:12: drilled before is not known; write with-the-blank or separately',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'clearance: ±0.1']],
    'job.yaml:15:14: clearance ±0.1 goes below 0, and a clearance cannot; write 0..0.1 or half-normal 0.1',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'clearance: 0..0.1\n  fit: H7/g6']],
    'job.yaml:16:3: how the dowels fit is said 2 times: clearance, fit; write one of them',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'clearance: 0..0.1\n  pin: 8 ±0.02\n  hole: 8.1 ±0.02']],
    'job.yaml:15:3: how the dowels fit is said 2 times: clearance, pin and hole; write one of them',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'fit: H7/g6']],
    'job.yaml:15:8: H7/g6 is a fit for metal, and a hole drilled in wood has none; write bush: metal if it is a metal bush, or clearance: 0..0.1',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'fit: g6/H7\n  bush: metal']],
    'job.yaml:15:8: g6/H7 has the pin before the hole, which goes by a capital letter; write H7/g6',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'clearance: 0..0.1\n  bush: metal']],
    'job.yaml:16:9: bush: metal is for a fit such as H7/g6, and there is none; take it out, or write fit: H7/g6',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'pin: 8 ±0.02']],
    'job.yaml:15:8: the diameter of the pin says nothing without that of the hole; write hole: 8 ±0.02 as well, or clearance: 0..0.1',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'hole: 8 ±0.02']],
    'job.yaml:15:9: the diameter of the hole says nothing without that of the pin; write pin: 8 ±0.02 as well, or clearance: 0..0.1',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'pin: 6 ±0.02\n  hole: 8.1 ±0.02']],
    'job.yaml:15:8: the pin measures 6 mm, and the diameter is 8 mm; write the diameter that was measured, or another nominal diameter',
  ],
  [
    DOWELS,
    [['clearance: 0..0.1', 'pin: {nominal: 8.05, spread: half-normal 0.02}\n  hole: 8.1 ±0.02']],
    'job.yaml:15:8: a half-normal spread starts at the diameter itself, so it cannot be that of the pin; write pin: 8.05 ±0.02',
  ],
  [
    DOWELS,
    [['drilled: with-the-blank', 'drilled: with-the-blank\n  drill-error: ±0.1']],
    'job.yaml:17:16: drill-error is for holes that are drilled separately, and these are drilled with the blank; take it out, or write drilled: separately',
  ],
  [
    DOWELS,
    [
      ['xy: middle', 'xy: dowels'],
      ['drilled: with-the-blank', 'drilled: separately\n  laid: ±0.3 per 200'],
    ],
    'job.yaml:17:9: laid is for a first placing that nothing seats, and here it is put on the dowels; take it out, or write drilled: with-the-blank',
  ],
  [
    DOWELS,
    [['drilled: with-the-blank', 'drilled: with-the-blank\n  take-up: up']],
    'job.yaml:17:12: take-up up is not known; write anywhere, left, right, near or far',
  ],
  [
    DOWELS,
    [['xy: middle', 'xy: stops']],
    'job.yaml:18:18: nothing seats the blank in the first placing, so its place cannot be known from stops; write edges or middle',
  ],
  [
    DOWELS,
    [['xy: middle', 'xy: dowels']],
    'job.yaml:18:18: nothing seats the blank in the first placing, so its place cannot be known from dowels; write edges or middle',
  ],
  [
    DOWELS,
    [['xy: kept, kept: held', 'xy: dowels']],
    'job.yaml:19:17: the holes are drilled with the blank, from the zero of the first placing; write kept in the second placing and edges or middle in the first, or drilled: separately',
  ],
  [
    DOWELS,
    [['xy: kept, kept: held', 'xy: stops']],
    'job.yaml:19:17: there is no side stop, so no zero on the stops; write edges or middle',
  ],
  [
    DOWELS,
    [['xy: kept, kept: held', 'xy: nest']],
    'job.yaml:19:17: there is no nest, so no zero from cutting it; write edges or middle',
  ],
  [
    DOWELS,
    [['xy: middle', 'xy: kept, kept: held']],
    'job.yaml:18:18: the front-up placing comes first, so there is no zero to keep; write edges or middle, or first: back',
  ],
  [
    DOWELS,
    [['dowels:\n', 'nest: {cutter: flat 6}\ndowels:\n']],
    'job.yaml:12:1: the blank is located by dowels and nest; write one of them; a fence and one dowel are stops with a dowel',
  ],
  [
    DOWELS,
    [
      [
        'dowels:\n  at: [[100, 15], [100, 105]]\n  diameter: 8\n  clearance: 0..0.1\n  drilled: with-the-blank\n',
        '',
      ],
    ],
    'job.yaml:1:1: how the blank is located is missing; write stops: {corner: {front-up: near-left, back-up: near-left}, fence: lower-edge, fence-touch: [30, 250], side-touch: 90, height: 8, made: set-by-hand}, or dowels, or a nest',
  ],
  [
    DOWELS,
    [
      ['[[100, 15], [100, 105]]', '[[150, 15], [150, 105]]'],
      ['turn: about-y', 'turn: about-y\non-bed: [150, 50]'],
    ],
    'job.yaml:12:10: turned over, the blank would lie from 250 to 450 mm along X, and the spoilboard ends at 0 and 400 mm; write 0 to 100, or set the dowels nearer to the middle of the blank',
  ],
  [
    DOWELS,
    [
      ['[[100, 15], [100, 105]]', '[[190, 15], [190, 105]]'],
      ['turn: about-y', 'turn: about-y\non-bed: [150, 50]'],
    ],
    'job.yaml:12:10: turned over, the blank would lie from 330 to 530 mm along X, and the spoilboard ends at 0 and 400 mm; write 0 to 20, or set the dowels nearer to the middle of the blank',
  ],
  [
    DOWELS,
    [['turn: about-y', 'turn: about-y\non-bed: [250, 50]']],
    'job.yaml:12:10: the blank would lie from 250 to 450 mm along X, and the spoilboard ends at 0 and 400 mm; write 0 to 200',
  ],
  [
    FENCE,
    [['turn: about-y', 'turn: about-x']],
    'job.yaml:13:10: turned about-x, the near and far edges change places, so the hole would not come back to its dowel; write a fence along Y, or turn: about-y',
  ],
  [
    FENCE,
    [
      ['turn: about-y', 'turn: about-x'],
      ['fence: lower-edge', 'fence: left-edge'],
      ['[20, 160]', '[20, 100]'],
    ],
    'job.yaml:14:16: turned over about its dowel, the blank spans 60 to 180 mm along the fence, and 20 mm is beyond its edge; write places between 60 and 120, or set the dowel in the middle of the blank',
  ],
  [
    FENCE,
    [['fence: lower-edge', 'fence: left-edge']],
    'job.yaml:13:10: turned about-y, the left and right edges change places, so the hole would not come back to its dowel; write a fence along X, or turn: about-x\njob.yaml:14:21: fence-touch 160 mm is beyond the edge, which is 120 mm long; write 0 to 120, from the front-up corner',
  ],
  [
    FENCE,
    [['drilled: with-the-blank', 'drilled: with-the-blank, take-up: near']],
    'job.yaml:17:92: the fence holds the blank near and far already; write left or right, along the fence, or anywhere',
  ],
  [
    FENCE,
    [
      ['turn: about-y', 'turn: about-x'],
      ['[100, 90]', '[100, 60]'],
      ['[20, 160]', '[20, 100]'],
      ['fence: lower-edge', 'fence: left-edge'],
      ['with-the-blank', 'with-the-blank, take-up: left'],
    ],
    'job.yaml:17:92: the fence holds the blank left and right already; write near or far, along the fence, or anywhere',
  ],
  [
    FENCE,
    [['at: [100, 90]', 'at: [70, 90]']],
    'job.yaml:11:7: turned over, the blank would lie from -35 to 165 mm along X, and the spoilboard ends at 0 and 400 mm; write on-bed: with x 60 to 200, or set the dowels nearer to the middle of the blank\njob.yaml:14:16: turned over about its dowel, the blank spans -60 to 140 mm along the fence, and 160 mm is beyond its edge; write places between 0 and 140, or set the dowel in the middle of the blank',
  ],
  [
    FENCE,
    [['at: [100, 90]', 'at: [130, 90]']],
    'job.yaml:14:16: turned over about its dowel, the blank spans 60 to 260 mm along the fence, and 20 mm is beyond its edge; write places between 60 and 200, or set the dowel in the middle of the blank',
  ],
  [
    FENCE,
    [['at: [100, 90]', 'at: [100, 119]']],
    'job.yaml:17:15: a dowel hole at [100, 119] is not within the blank, which is 200 by 120 mm; stay 4 mm or more, half its diameter, inside every edge',
  ],
  [
    FENCE,
    [['height: 8', 'height: 8\n  square: ±0.1 per 100']],
    'job.yaml:16:3: square is for a side stop, and here a dowel takes its place; take it out, or the dowel',
  ],
  [
    FENCE,
    [
      [
        'height: 8',
        'height: 8\n  spacing: ±0.1\n  side-touch: 60\n  corner: {front-up: near-left, back-up: near-left}',
      ],
    ],
    'job.yaml:16:3: spacing is for a side stop, and here a dowel takes its place; take it out, or the dowel\njob.yaml:17:3: side-touch is for a side stop, and here a dowel takes its place; take it out, or the dowel\njob.yaml:18:3: corner is for a side stop, and here a dowel takes its place; take it out, or the dowel',
  ],
  [
    FENCE,
    [['  dowel: {at: [100, 90], diameter: 8, clearance: 0..0.1, drilled: with-the-blank}\n', '']],
    'job.yaml:13:3: stops: corner is missing; write corner: {front-up: near-left, back-up: near-right}, or a dowel instead of corner and side-touch',
  ],
  [
    FENCE,
    [
      ['xy: edges', 'xy: dowels'],
      ['drilled: with-the-blank', 'drilled: separately'],
    ],
    'job.yaml:19:18: the fence is set-by-hand, so nobody knows where it is from the zero of the drilling; write edges or middle, or made: milled-in-place',
  ],
  [
    FENCE,
    [['xy: edges', 'xy: stops']],
    'job.yaml:19:18: there is no side stop, so no zero on the stops; write edges or middle',
  ],
  [
    FENCE,
    [
      ['made: set-by-hand', 'made: milled-in-place'],
      ['xy: edges', 'xy: milled-stops'],
    ],
    'job.yaml:19:18: there is no side stop, so no zero on the milled-stops; write edges or middle',
  ],
  [
    FENCE,
    [['made: set-by-hand', 'made: set-by-hand\n  cutter: flat 6']],
    'job.yaml:17:11: cutter says what milled the stops, and these are set-by-hand; take it out, or write made: milled-in-place',
  ],
  [
    FENCE,
    [['made: set-by-hand', 'made: milled-in-place\n  angle: ±0.1 per 100\n  cutter: flat 9']],
    'job.yaml:17:10: angle is for stops that are set, and these are milled in place; take it out\njob.yaml:18:11: the cutter flat 9 is not in the shop file; did you mean flat 6?',
  ],
  [
    FENCE,
    [['height: 8', '']],
    'job.yaml:13:3: stops: how high they touch is missing; write height: 8 for a plain stop, or touch-height: 12 for a narrow band',
  ],
  [
    FENCE,
    [['height: 8', 'height: 8\n  touch-height: 9']],
    'job.yaml:15:3: the stops have both a height and a touch-height; write height for a plain stop, or touch-height for one that touches in a narrow band',
  ],
  [
    NEST,
    [['wall: 8', 'wall: 18']],
    'job.yaml:15:9: the walls of the nest are 18 mm high, and the blank is 18 mm thick; write less than 18, with room for the cutter to pass',
  ],
  [
    NEST,
    [['wall: 8', 'wall: -1']],
    'job.yaml:15:9: wall -1 is not above 0; write a length above 0 such as 6 or 1/4 in',
  ],
  [
    NEST,
    [['clearance: 0.05..0.15', 'clearance: ±0.1']],
    'job.yaml:14:14: clearance ±0.1 goes below 0, and a clearance cannot; write 0..0.1 or half-normal 0.1',
  ],
  [
    NEST,
    [['wall: 8', 'wall: 8\n  laid: ±0.1 per 100']],
    'job.yaml:16:9: laid is for a first placing that nothing seats, and here the blank is in the nest; take it out, or write around: the feature whose outline drops into the nest',
  ],
  [
    NEST,
    [['wall: 8', 'wall: 8\n  seat-gap: -0.1']],
    'job.yaml:16:13: seat-gap -0.1 is one figure where a spread is wanted; write ±0.1, or 0 to switch it off',
  ],
  [
    NEST,
    [['cutter: flat 6\n  clear', 'cutter: flat 9\n  clear']],
    'job.yaml:13:11: the cutter flat 9 is not in the shop file; did you mean flat 6?',
  ],
  [
    NEST,
    [['xy: nest', 'xy: stops']],
    'job.yaml:17:18: there is no side stop, so no zero on the stops; write edges, middle or nest',
  ],
  [
    NEST,
    [['xy: nest', 'xy: dowels']],
    'job.yaml:17:18: there are no dowels, so no zero from drilling for them; write edges, middle or nest',
  ],
  [
    NEST,
    [['xy: nest', 'xy: milled-stops']],
    'job.yaml:17:18: there is no side stop, so no zero on the milled-stops; write edges, middle or nest',
  ],
  [
    NEST,
    [['xy: nest', 'xy: kept, kept: held']],
    'job.yaml:17:18: the front-up placing comes first, so there is no zero to keep; write edges, middle or nest, or first: back',
  ],
  [
    PART,
    [['around: body', 'around: boddy']],
    'job.yaml:14:11: no feature is called boddy; did you mean body?',
  ],
  [
    PART,
    [['around: body', 'around: foot']],
    'job.yaml:14:11: foot is not an outline that the part is cut free along; name a feature with cut: profile-outside and depth: through, or leave around out',
  ],
  [
    PART,
    [['around: body', 'around: dish']],
    'job.yaml:14:11: dish is not an outline that the part is cut free along; name a feature with cut: profile-outside and depth: through, or leave around out',
  ],
  [
    PART,
    [['rectangle: [140, 100], corner-radius: 5', 'circle: 110']],
    'job.yaml:14:11: body is round, and a round part can turn in its nest; use dowels or stops',
  ],
  [
    PART,
    [['xy: middle', 'xy: nest']],
    'job.yaml:18:18: nothing seats the blank in the first placing, so its place cannot be known from nest; write edges or middle',
  ],
  [
    PART,
    [['xy: kept, kept: held', 'xy: edges']],
    "job.yaml:19:17: the part is cut free by then, and the blank's edges with it; write nest, kept or hole",
  ],
  [
    PART,
    [
      ['turn: about-y', 'first: back\nturn: about-y'],
      ['xy: kept, kept: held', 'xy: nest'],
    ],
    "job.yaml:15:11: body is cut from the front, so the part is not free yet in the second placing; cut it from the back, or leave around out\njob.yaml:19:18: the part is cut free by then, and the blank's edges with it; write nest, kept or hole\njob.yaml:20:17: nothing seats the blank in the first placing, so its place cannot be known from nest; write edges or middle",
  ],
  [
    PART,
    [['needs:', 'repeat: {count: [2, 1], pitch: [30, 30]}\nneeds:']],
    'job.yaml:14:11: there are 2 parts in the blank, and a nest holds one; leave around out, so that the whole blank lies in the nest, or use dowels\njob.yaml:20:33: body takes 146 mm along X, and the pitch is 30 mm, so its copies run into each other; write at least 146',
  ],
];
