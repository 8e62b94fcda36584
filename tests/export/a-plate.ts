import { roundedBox } from '../../src/jig/plate/curve.ts';
import type { Plate } from '../../src/jig/plate/plate.ts';

/** 90 by 40 by 9, corners of radius 4: a through hole of 6, a slot 6.6 wide, a nut's seat, a blind hole. */
export const aPlate: Plate = {
  name: 'drill guide',
  thickMm: 9,
  outline: roundedBox({ x: 0, y: 0 }, { x: 90, y: 40 }, 4),
  holes: [
    { ends: [{ x: 15, y: 20 }], radiusMm: 3, depthMm: null, seat: null },
    {
      ends: [
        { x: 30, y: 20 },
        { x: 45, y: 20 },
      ],
      radiusMm: 3.3,
      depthMm: null,
      seat: null,
    },
    {
      ends: [{ x: 60, y: 20 }],
      radiusMm: 3.3,
      depthMm: null,
      seat: { shape: { kind: 'hexagon', acrossFlatsMm: 10.3 }, depthMm: 5.5 },
    },
    { ends: [{ x: 78, y: 20 }], radiusMm: 4, depthMm: 6.5, seat: null },
  ],
  words: [{ words: 'UP >', at: { x: 30, y: 30 }, heightMm: 6, strokeMm: 0.8, depthMm: 0.4 }],
};

export const evilNames = [
  '</title><script>alert(1)</script>',
  '"/><object id="9"/>',
  '../../etc/passwd',
  '\r\n0\r\nCIRCLE\r\n8\r\nX',
  '\u0000\u202eLID\ud800',
  ']]>&amp;&#0;',
  'Ø é 工 ½',
  '',
  'x'.repeat(5000),
] as const;
