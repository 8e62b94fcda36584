/** Every file of tests/job/broken and all that must be said of it; nothing for those that are sound. */
export const BROKEN: Readonly<Record<string, readonly string[]>> = {
  'alias-bomb': [
    'alias-bomb.yaml:2:8: *a repeats another part of the file, which is not done here; write the values out',
  ],
  binary: [
    'binary.yaml:2:1: the file holds the byte 26, so it is not text; name a job or shop file',
  ],
  'broken-shop': [
    'broken-shop.yaml:8:52: dish is 60 mm deep, and the blank is 18 mm thick; write at most 18, or through',
    'broken-shop.yaml:15:21: fence-touch 210 mm is beyond the edge, which is 200 mm long; write 0 to 200, from the front-up corner',
    'broken-shop-file.yaml:3:3: the key travle is not known; did you mean travel?',
    'broken-shop-file.yaml:7:42: diameter 6 ±0.04 mm has a unit on one side only; write 6 mm ±0.04 mm',
    'broken-shop-file.yaml:11:11: the key thikc is not known; did you mean thick?',
  ],
  'byte-order-mark': [],
  'chance-above-100': [
    'chance-above-100.yaml:4:14: good-enough 990 % is not a chance; write 0 % to 100 %',
  ],
  'chance-without-percent': [
    'chance-without-percent.yaml:4:14: good-enough 0.99 is not a percentage; write a percentage such as 99 %',
  ],
  'contact-beyond-the-edge': [
    'contact-beyond-the-edge.yaml:15:21: fence-touch 210 mm is beyond the edge, which is 200 mm long; write 0 to 200, from the front-up corner',
  ],
  'contacts-coincide': [
    'contacts-coincide.yaml:15:16: fence-touch at 20 and 22 mm is one place: they are less than 5 mm apart; set them as far apart as the edge allows',
  ],
  'corner-not-along-the-turn': [
    'corner-not-along-the-turn.yaml:13:42: turned about-x, near and far edges change places, so a corner at the other end of a fence along X gains nothing; write near-left, or turn: about-y, or a fence along Y',
  ],
  'corner-off-the-fence': [
    'corner-off-the-fence.yaml:13:42: the fence stands on the near side, and the far-left corner is not on it; write near-left or near-right, or fence: left-edge',
  ],
  'crossing-polygon': [
    'crossing-polygon.yaml:8:27: dish crosses itself; write the corners in order, each once',
  ],
  'decimal-comma-in-list': [
    'decimal-comma-in-list.yaml:8:34: at has 3 entries and needs 2; separate them with commas, and write decimals with a point',
  ],
  'decimal-comma': ['decimal-comma.yaml:23:67: within 0,5 has a comma; write 0.5'],
  'deep-brackets': [
    'deep-brackets.yaml:1:1: the file is nested too deeply to be read; name a job or shop file',
  ],
  'deep-dashes': [
    'deep-dashes.yaml:1:1: the file is nested too deeply to be read; name a job or shop file',
  ],
  'duplicate-key': ['duplicate-key.yaml:12:1: the key name is here twice; keep one of them'],
  'empty-value': [
    'empty-value.yaml:2:6: name is empty (an unquoted # begins a remark); write name: Wall clock',
  ],
  empty: ['empty.yaml:1:1: the file is empty; start from flipwright new'],
  'fence-not-at-the-corner': [
    'fence-not-at-the-corner.yaml:14:10: the upper-edge does not meet the near-left corner with the front up; write fence: lower-edge or left-edge',
  ],
  'hash-in-name': [
    'hash-in-name.yaml:9:1: a bracket or brace above is not closed; close it (an unquoted # begins a remark)',
  ],
  'huge-spread': [
    'huge-spread.yaml:5:10: size ±400 is more than any spread here can be; write at most 100 mm',
  ],
  huge: ['huge.yaml:5:10: size 1e9 is longer than anything here can be; write at most 10000 mm'],
  infinite: [
    'infinite.yaml:8:26: circle .inf is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"',
  ],
  'jig-sizes': [
    'jig-sizes.yaml:25:23: radius -3 is not above 0; write a length above 0 such as 6 or 1/4 in',
    'jig-sizes.yaml:25:27: the key trow is not known; did you mean throw?',
    'jig-sizes.yaml:26:16: dowel-board perhaps is not known; write yes, no, true or false',
    'jig-sizes.yaml:27:22: count 0 is not a number of them; write 1 to 100',
    'jig-sizes.yaml:28:24: count 2.5 is not a number of them; write 1 to 100',
    'jig-sizes.yaml:29:3: the key toe-clmp is not known; did you mean toe-clamp?',
  ],
  'just-a-list': [
    'just-a-list.yaml:1:1: the file is not a list of key: value lines; start from flipwright new',
  ],
  'kept-before-it-is-there': [
    'kept-before-it-is-there.yaml:22:17: the back-up placing comes first, so there is no zero to keep; write stops, milled-stops, edges or middle, or first: front',
  ],
  'kept-how': [
    'kept-how.yaml:21:12: xy: kept does not say what happened in between; write kept: held, re-homed or power-off',
  ],
  'limit-of-nothing': [
    'limit-of-nothing.yaml:23:67: within 0 is not above 0; write a length above 0 such as 6 or 1/4 in',
  ],
  'list-expected': [
    'list-expected.yaml:5:9: size is the number 200 and should be a list in [ ]; write size: [280 ±0.4, 180 ±0.4, 24 ±0.15]',
  ],
  'milled-zero-on-set-stops': [
    'milled-zero-on-set-stops.yaml:20:18: milled-stops is the zero the stops were milled from, and these are set-by-hand; write xy: stops, or made: milled-in-place',
  ],
  'missing-comma': [
    'missing-comma.yaml:8:44: this does not belong here; look for a comma or bracket too many, or a line without its key',
  ],
  'missing-shop': [
    'missing-shop.yaml:3:7: the shop file shed.yaml is not there; write its place from this file, or make one with flipwright new',
  ],
  'misspelt-group': ['misspelt-group.yaml:12:1: the key stop is not known; did you mean stops?'],
  'misspelt-key': ['misspelt-key.yaml:8:45: the key dpeth is not known; did you mean depth?'],
  nan: [
    'nan.yaml:8:52: depth .nan is not a length; write a length such as 12, 6.35 mm, 1/4 in or 3/8"',
  ],
  'narrower-than-cutter': [
    'narrower-than-cutter.yaml:10:26: foot is 5 mm at its narrowest, and flat 6 cuts 6 mm wide; write at least 6, or name a smaller cutter',
  ],
  'need-without-feature': [
    'need-without-feature.yaml:23:52: no feature is called feet; did you mean foot?',
  ],
  'need-without-subject': [
    'need-without-subject.yaml:23:5: the need foot under the dish does not say what it is about; write one of concentric, misalignment, meets, parallel, lip, web, wall, depth or size, as in concentric: [shaft hole, pocket]',
  ],
  'negative-gap': [
    'negative-gap.yaml:18:13: seat-gap ±0.03 goes below 0, and a gap cannot; write 0..0.03 or half-normal 0.03',
  ],
  'negative-size': [
    'negative-size.yaml:8:26: circle -80 is not above 0; write a length above 0 such as 6 or 1/4 in',
  ],
  'newer-format': [
    'newer-format.yaml:1:13: flipwright: 2 is newer than this program reads, which is 1; update flipwright, or write flipwright: 1',
  ],
  'no-height': [
    'no-height.yaml:13:3: stops: how high they touch is missing; write height: 8 for a plain stop, or touch-height: 12 for a narrow band',
  ],
  'no-zero': [
    'no-zero.yaml:1:1: zero is missing; write zero: {front-up: {xy: stops, z: top, with: paper}, back-up: {xy: kept, kept: held, z: top, with: paper}}',
  ],
  'not-concentric': [
    'not-concentric.yaml:23:45: dish and foot are drawn 5 mm apart, so they cannot be concentric; give them the same at',
  ],
  'not-yet': [
    'not-yet.yaml:12:1: outline is not in this version yet; take it out',
    'not-yet.yaml:13:1: fits is not in this version yet; take it out',
  ],
  'number-as-name': [
    'number-as-name.yaml:8:12: name is the number 12 and should be a text; write it in quotes: "12"',
    'number-as-name.yaml:23:46: no feature is called dish; write foot',
  ],
  'one-reading': [
    'one-reading.yaml:7:10: bumps has one reading, which says nothing about the spread; write at least 2, better 5',
  ],
  'only-a-remark': ['only-a-remark.yaml:1:1: the file is empty; start from flipwright new'],
  'outside-the-blank': [
    'outside-the-blank.yaml:8:40: dish reaches y = 640 mm, and the blank spans 0 to 120 mm; move it, or make it smaller',
    'outside-the-blank.yaml:23:45: dish and foot are drawn 540 mm apart, so they cannot be concentric; give them the same at',
  ],
  'over-the-bed': [
    'over-the-bed.yaml:4:10: the blank would lie from 250 to 450 mm along X, and the spoilboard ends at 0 and 400 mm; write 0 to 200',
  ],
  'partly-outside': [
    'partly-outside.yaml:8:41: dish reaches y = -5 mm, and the blank spans 0 to 120 mm; move it, or make it smaller',
  ],
  'plus-minus-as-one-byte': [
    'plus-minus-as-one-byte.yaml:5:14: the ± is saved as one byte (Latin-1 or Windows-1252); save the file as UTF-8, or write +-',
  ],
  'sharp-corner': [
    'sharp-corner.yaml:10:54: corner-radius 2 mm is sharper than flat 6 can cut, which leaves 3 mm; write at least 3, or name a smaller cutter',
  ],
  'shop-as-job': [
    'shop-as-job.yaml:1:18: this is a shop file where a job file is wanted; name the job file, which begins with flipwright: 1',
  ],
  'short-flute': [
    'short-flute.yaml:8:52: dish is 13 mm deep, and flat 3 has a flute of 12 mm; write at most 12, or name a longer cutter',
  ],
  'slope-without-run': [
    'slope-without-run.yaml:7:11: square 0.3 does not say over which length it leans; write 0.3 per 200, or 0.3 deg',
  ],
  sound: [],
  'spread-without-sign': [
    'spread-without-sign.yaml:7:10: bumps 0.1 is one figure where a spread is wanted; write ±0.1, or 0 to switch it off',
  ],
  'stop-as-high-as-the-blank': [
    'stop-as-high-as-the-blank.yaml:17:11: the stops are 18 mm high, and the blank is 18 mm thick; write less than 18, with room for the cutter to pass',
  ],
  tab: ['tab.yaml:6:1: the line is indented with a tab; indent with two spaces'],
  'three-buttons': [
    'three-buttons.yaml:15:16: the fence has 3 buttons, and a straight edge rests on 2; write two distances such as [30, 250], or {arm: [20, 260]}',
  ],
  'too-big-for-the-machine': [
    'too-big-for-the-machine.yaml:5:10: the blank is 500 mm along X, and the machine travels 400 mm; write at most 400',
  ],
  'too-deep': [
    'too-deep.yaml:8:52: dish is 20 mm deep, and the blank is 18 mm thick; write at most 18, or through',
  ],
  'touch-above-the-blank': [
    'touch-above-the-blank.yaml:17:17: touch-height 19 mm is above the edge, and the blank is 18 mm thick; write half the thickness, 9',
  ],
  'touched-off-the-blank': [
    'touched-off-the-blank.yaml:20:43: xy-touched y = 160 mm is off the blank, which spans 0 to 120 mm; write 0 to 120',
  ],
  'two-documents': [
    'two-documents.yaml:11:1: the file holds a second document; remove the line --- or ... and what follows',
  ],
  'two-faults': [
    'two-faults.yaml:8:45: the key dpeth is not known; did you mean depth?',
    'two-faults.yaml:11:7: turn about-z is not known; write about-x or about-y',
    'two-faults.yaml:15:21: fence-touch 210 mm is beyond the edge, which is 200 mm long; write 0 to 200, from the front-up corner',
    'two-faults.yaml:23:52: no feature is called feet; did you mean foot?',
  ],
  'two-features-of-one-name': [
    'two-features-of-one-name.yaml:9:12: a second feature is called dish; give each its own name',
  ],
  'two-needs-of-one-name': [
    'two-needs-of-one-name.yaml:24:12: a second need is called foot under the dish; give each its own name',
  ],
  'two-shapes': [
    'two-shapes.yaml:8:5: the feature dish has 2 shapes: circle, slot; write one of circle, rectangle, slot, polygon or outline',
  ],
  'two-side-buttons': [
    'two-side-buttons.yaml:16:15: the side stop has 2 buttons, and the blank slides against 1; write one distance such as 90, or {arm: [20, 160]}',
  ],
  unclosed: [
    'unclosed.yaml:9:1: a bracket or brace above is not closed; close it (an unquoted # begins a remark)',
  ],
  'unit-nonsense': [
    'unit-nonsense.yaml:8:52: depth 6 feets has the unit feets, which is not known; write mm, cm, m, µm, in, " or thou',
  ],
  'unit-on-one-side': [
    'unit-on-one-side.yaml:5:10: size 11 ±1/64 in has a unit on one side only; write 11 in ±1/64 in or 11 mm ±1/64 in',
  ],
  'unknown-cutter': [
    'unknown-cutter.yaml:8:63: the cutter flat 5 is not in the shop file; did you mean flat 6?',
  ],
  'unknown-gauge': [
    'unknown-gauge.yaml:7:10: the gauge calliper is not in the shop file; did you mean caliper?',
  ],
  'unknown-key': [
    'unknown-key.yaml:11:1: the key colour is not known; write good-enough, on-bed, first, dowels, nest, between-placings, repeat, parts, hold, program, jig, units, machine, bed, cutters, touch-off, gauges, hold-downs or shims',
  ],
  'unknown-tool': [
    'unknown-tool.yaml:20:39: the touch tool papre is not in the shop file; did you mean paper?',
  ],
  'utf-16': ['utf-16.yaml:1:1: the file is saved as UTF-16; save it as UTF-8'],
  'vee-pocket': [
    'vee-pocket.yaml:8:63: vee 90 is a vee cutter, which leaves no upright wall, and dish is cut: pocket; write cut: chamfer, or name a flat cutter',
  ],
  'windows-line-ends-and-a-fault': [
    'windows-line-ends-and-a-fault.yaml:8:52: dish is 60 mm deep, and the blank is 18 mm thick; write at most 18, or through',
  ],
  'windows-line-ends': [],
  'wrong-word': ['wrong-word.yaml:11:7: turn over is not known; write about-x or about-y'],
};
