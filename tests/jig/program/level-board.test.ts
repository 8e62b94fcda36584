import { describe, expect, it } from 'vitest';
import { rs274Of } from '../../../src/export/rs274.ts';
import { levelBoard } from '../../../src/jig/program/level-board.ts';
import { FLAT6 } from '../../setup/plain-job.ts';

const CUTTER = {
  ...FLAT6,
  diameterMm: 22,
  name: 'surfacing 22 (new)',
  speedPerMin: 16000,
  feedMmPerMin: 2400,
};
const AREA = { shopName: 'small (shop)', xMm: 150, yMm: 110, depthMm: 0.72 };

interface Move {
  readonly rapid: boolean;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Follows a program of G0 and G1, word by word; throws at anything else. */
function followed(text: string): readonly Move[] {
  const moves: Move[] = [];
  let at = { x: NaN, y: NaN, z: NaN };
  let feed = 0;
  for (const line of text.split('\n')) {
    if (/^(%|\(.*\)|)$/.test(line)) continue;
    const words = line.split(' ');
    if (!/^G[01]$/.test(words[0]!)) {
      expect(line).toMatch(/^(G21|G90|G17|G94|M0|M3 S\d+|G4 P4|M5|M2)$/);
      continue;
    }
    for (const word of words.slice(1)) {
      const value = Number(word.slice(1));
      expect(value, line).not.toBeNaN();
      if (word.startsWith('F')) feed = value;
      else at = { ...at, [word[0]!.toLowerCase()]: value };
    }
    if (words[0] === 'G1') expect(feed, line).toBeGreaterThan(0);
    moves.push({ rapid: words[0] === 'G0', ...at });
  }
  return moves;
}

describe('the program that skims an uneven board', () => {
  const answer = levelBoard(AREA, [FLAT6, CUTTER]);
  if (answer.kind === 'cannot') throw new Error(answer.because);
  const { program, passCount } = answer.value;
  const text = rs274Of(program, 'mm');

  it('reaches every place of the board at full depth, and never cuts deeper or leaves the board', () => {
    const moves = followed(text);
    const cutting = moves.filter(({ rapid, z }) => !rapid && z < 0);
    expect(Math.min(...cutting.map(({ z }) => z))).toBeCloseTo(-AREA.depthMm, 3);
    for (const { x, y } of moves) {
      for (const [value, size] of [
        [x, AREA.xMm],
        [y, AREA.yMm],
      ] as const) {
        if (Number.isNaN(value)) continue;
        expect(value).toBeGreaterThanOrEqual(0);
        expect(value).toBeLessThanOrEqual(size);
      }
    }
    const deepest = moves.flatMap((move, k) =>
      k > 0 && !move.rapid && Math.abs(move.z + AREA.depthMm) < 1e-6
        ? [[moves[k - 1]!, move] as const]
        : [],
    );
    for (let x = 0; x <= AREA.xMm; x += 2)
      for (let y = 0; y <= AREA.yMm; y += 2)
        expect(
          deepest.some(([a, b]) => distance(x, y, a, b) <= CUTTER.diameterMm / 2),
          `${x}, ${y}`,
        ).toBe(true);
  });

  it('takes the widest cutter with a speed and a feed, in passes, never moving fast below the top', () => {
    expect(passCount).toBe(2);
    expect(program.cutter.name).toBe('surfacing 22 (new)');
    expect(text).not.toMatch(/\(.*\(|\).*\)/);
    const moves = followed(text);
    moves.forEach((move, k) => {
      const before = moves[k - 1];
      if (move.rapid && before !== undefined && (before.x !== move.x || before.y !== move.y))
        expect(move.z).toBeGreaterThan(0);
    });
    // 2400 a minute along, a third of that down, each said where it changes.
    expect(text).toMatch(/\nG1 Z-0\.36 F800\nG1 X\d+(\.\d+)? F2400\n/);
  });

  it('is not written without a cutter that it knows how to run', () => {
    expect(levelBoard(AREA, [FLAT6])).toMatchObject({ kind: 'cannot' });
    const ball = { ...CUTTER, kind: 'ball' as const };
    expect(levelBoard(AREA, [ball])).toMatchObject({ kind: 'cannot' });
  });
});

function distance(x: number, y: number, a: Move, b: Move): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const along =
    length === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / length));
  return Math.hypot(x - a.x - along * dx, y - a.y - along * dy);
}
