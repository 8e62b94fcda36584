import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { flipwright, JIGS, withFolder } from './run.ts';
import { JOB, SHOP } from '../job/sound.ts';

const DOWNS = `hold-downs:
  - {name: strap, kind: strap-clamp, count: 4, slot: [20, 60], pad: [20, 12], height: 12, bolt: M6, torque: 3 Nm}
`;
const INSERTS = '  inserts: {thread: M6, first: [25, 25], pitch: [50, 50], count: [7, 5]}\n';

/** A small job with one round dish from the front and a foot from the back, in a folder of its own. */
function write(folder: string, added = ''): string {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'shop.yaml'), SHOP.replace('cutters:', `${INSERTS}cutters:`) + DOWNS);
  const job = join(folder, 'job.yaml');
  writeFileSync(job, JOB.replace('name: Tray', 'name: Tray\non-bed: [100, 90]') + added);
  return job;
}

/** Cuts the foot: a ring of 57 about (x, y) from the work zero, 3 deep. */
const foot = (x: number, y: number): string =>
  `G21 G90 F900\nG0 X0 Y0 Z10\nG0 X${x + 27} Y${y}\nG1 Z-3\nG2 I-27\nG0 Z10\nM2\n`;

describe('hold', () => {
  it('prints both placings in 80 columns, with its cautions, and draws them', () => {
    withFolder((folder) => {
      const { code, out, err } = flipwright(['hold', write(folder), '--out', folder]);
      expect(err).toBe('');
      expect(code).toBe(0);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
      for (const words of ['Front up: held', 'Back up: held', 'estimates', 'strap at', 'presses'])
        expect(out).toContain(words);
      const page = readFileSync(join(folder, 'job', 'hold.html'), 'utf8');
      expect(page.match(/<svg/g)).toHaveLength(2);
      expect(page).toContain('Cautions first');
    });
  });

  it('knows the right programs, and finds a strike, a missing mirror and a line that it cannot read', () => {
    withFolder((folder) => {
      const added =
        'program: {front-up: {file: front.nc, cutter: flat 6}, back-up: {file: back.nc, cutter: flat 6}}\n';
      // The blank of 200 by 120 is turned about Y; dish and foot are moved off its middle.
      const job = write(folder, added);
      writeFileSync(job, readFileSync(job, 'utf8').replaceAll('at: [100, 60]', 'at: [120, 60]'));
      const say = (front: string, back: string) => {
        writeFileSync(join(folder, 'front.nc'), front);
        writeFileSync(join(folder, 'back.nc'), back);
        return flipwright(['hold', job, '--out', folder]);
      };
      const right = say(foot(120, 60), foot(80, 60));
      // A dish on the middle line looks the same mirrored in Y; the back says which way round it is.
      expect(right.out).toMatch(/front.nc cuts what the job says; the part is the same mirrored/);
      expect(right.out).toMatch(/back.nc cuts what the job says, the\s+right\s+way\s+round/);
      expect(right.code).toBe(0);
      // The front: a rapid at 4 above the bed through the corner stop, which is 8 high.
      const struck = foot(120, 60).replace('G0 Z10\nM2', 'G0 Z-14\nG0 X-6 Y60\nG0 Z10\nM2');
      const wrong = say(struck, foot(120, 60));
      expect(wrong.code).toBe(1);
      expect(wrong.out).toContain('the cutter STRIKES corner stop');
      expect(wrong.out).toMatch(/at\s+rapid\s+below\s+the\s+top/);
      expect(wrong.out).toContain('back.nc IS NOT MIRRORED');
      const unread = say(foot(120, 60), foot(80, 60).replace('G1 Z-3', 'G1 Z#3'));
      expect(unread.code).toBe(1);
      expect(unread.out).toContain('IT IS NOT CHECKED');
      expect(unread.out).toContain('line 4, not understood');
    });
  }, 60_000);

  it('says what is in the way when nothing can hold, and exits with 1', () => {
    withFolder((folder) => {
      const { code, out } = flipwright(['hold', join(JIGS, 'tray.yaml'), '--out', folder]);
      expect(code).toBe(1);
      expect(out).toMatch(/what would\s+do, each planned\s+anew/);
      expect(out).toContain('comes free');
      expect(existsSync(join(folder, 'tray', 'hold.html'))).toBe(true);
    });
  });

  it('says the same as JSON, with units in the keys, and nothing beside it', () => {
    withFolder((folder) => {
      const job = write(folder, 'hold: {pusher: towards-stops}\n');
      const { code, out } = flipwright(['hold', job, '--out', folder, '--json']);
      expect(code).toBe(0);
      const told = JSON.parse(out) as {
        readyToCut: boolean;
        caution: string;
        placings: {
          hold: { factor: number; isHeld: boolean };
          straps: { pressesAtLeastN: number; torqueNm: number }[];
          pushers: { pushesAboutN: number }[];
          clashes: unknown[];
          pieces: unknown[];
        }[];
      };
      expect(told.readyToCut).toBe(true);
      expect(told.caution).toContain('estimates');
      expect(told.placings).toHaveLength(2);
      for (const one of told.placings) {
        expect(one.hold.isHeld).toBe(true);
        expect(one.straps.length).toBeGreaterThan(1);
        expect(one.straps[0]!.torqueNm).toBe(3);
        expect(one.pushers.length).toBeGreaterThan(0);
        expect([one.clashes, one.pieces]).toEqual([[], []]);
      }
      expect(existsSync(join(folder, 'job', 'hold.html'))).toBe(true);
    });
  });

  it('refuses a job that is wrong, and writes nothing', () => {
    withFolder((folder) => {
      const job = write(folder, 'hold: {friction: 7}\n');
      const { code, err } = flipwright(['hold', job, '--out', join(folder, 'out')]);
      expect(code).toBe(2);
      expect(err).toContain('7 is not above 0 and up to 1');
      expect(existsSync(join(folder, 'out'))).toBe(false);
    });
  });
});
