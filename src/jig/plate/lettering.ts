import type { Lettering } from './plate.ts';
import type { Xy } from './drawing.ts';

/**
 * Letters of single strokes on a grid 4 wide and 6 high: places `xy`, strokes parted by commas. Small
 * letters are written as capitals. `>` and `^` are arrows, to the right and up.
 */
const GLYPHS: Readonly<Record<string, string>> = {
  A: '00 26 40,12 32',
  B: '00 06 36 45 44 33 03,33 42 41 30 00',
  C: '45 36 16 05 01 10 30 41',
  D: '00 06 26 44 42 20 00',
  E: '46 06 00 40,03 33',
  F: '46 06 00,03 33',
  G: '45 36 16 05 01 10 30 41 43 23',
  H: '00 06,40 46,03 43',
  I: '16 36,26 20,10 30',
  J: '46 41 30 10 01',
  K: '00 06,46 02,13 40',
  L: '06 00 40',
  M: '00 06 23 46 40',
  N: '00 06 40 46',
  O: '16 05 01 10 30 41 45 36 16',
  P: '00 06 36 45 44 33 03',
  Q: '16 05 01 10 30 41 45 36 16,22 40',
  R: '00 06 36 45 44 33 03,23 40',
  S: '45 36 16 05 04 13 33 42 41 30 10 01',
  T: '06 46,26 20',
  U: '06 01 10 30 41 46',
  V: '06 20 46',
  W: '06 10 23 30 46',
  X: '00 46,06 40',
  Y: '06 23 46,23 20',
  Z: '06 46 00 40',
  0: '16 05 01 10 30 41 45 36 16,12 34',
  1: '15 26 20,10 30',
  2: '05 16 36 45 44 00 40',
  3: '05 16 36 45 44 33 42 41 30 10 01,33 23',
  4: '30 36 02 42',
  5: '46 06 03 33 42 41 30 10 01',
  6: '45 36 16 05 01 10 30 41 42 33 03',
  7: '06 46 10',
  8: '13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33',
  9: '01 10 30 41 45 36 16 05 04 13 43',
  '-': '13 33',
  '+': '13 33,22 24',
  '>': '03 43,24 43 22',
  '^': '20 26,04 26 44',
};

const WIDE = 4;
const GAP = 1.6;
const HIGH = 6;

/** The strokes of some words; signs that have no strokes leave a space. */
export function strokesOf({
  words,
  at,
  heightMm,
  runs = 'right',
}: Pick<Lettering, 'words' | 'at' | 'heightMm' | 'runs'>): readonly (readonly Xy[])[] {
  const unit = heightMm / HIGH;
  // From the beginning of the baseline, in units of the grid.
  const place = (x: number, y: number): Xy =>
    runs === 'right'
      ? { x: at.x + x * unit, y: at.y + y * unit }
      : { x: at.x - y * unit, y: at.y + x * unit };
  return Array.from(words.toUpperCase()).flatMap((letter, i) => {
    const left = i * (WIDE + GAP);
    if (letter === '.') return [[place(left + 2, 0), place(left + 2, 0.3)]];
    return (GLYPHS[letter] ?? '').split(',').flatMap((stroke) => {
      const places = stroke.split(' ').filter((place) => place !== '');
      return places.length < 2 ? [] : [places.map(([x, y]) => place(left + Number(x), Number(y)))];
    });
  });
}

/** How long some words are, mm. */
export const wordsLongMm = (words: string, heightMm: number): number =>
  (words.length * (WIDE + GAP) - GAP) * (heightMm / HIGH);
