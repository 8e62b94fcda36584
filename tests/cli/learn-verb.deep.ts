import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { JOB, otherwise, SHOP } from '../job/sound.ts';
import { flipwright, JIGS, withFolder } from './run.ts';

const FAST = ['--trials', '2000'];
const PIECE = `flipwright-readings: 1
measured: 2026-11-21
test-piece:
  cutter: flat 6
  turns:
    - combs:
        - {along: x, at: [20, 4], t1: 12.07, t2: 11.75}
        - {along: x, at: [180, 4], t1: 12.06, t2: 11.77}
        - {along: x, at: [100, 116], t1: 11.99, t2: 11.84}
        - {along: y, at: [4, 20], t1: 11.86, t2: 11.97}
        - {along: y, at: [4, 100], t1: 11.84, t2: 11.97}
        - {along: y, at: [196, 60], t1: 11.97, t2: 11.85}
`;

const inFolder = (use: (folder: string) => void): void => {
  withFolder((folder) => {
    writeFileSync(join(folder, 'job.yaml'), JOB);
    writeFileSync(join(folder, 'shop.yaml'), SHOP);
    writeFileSync(join(folder, 'piece.yaml'), PIECE);
    use(folder);
  });
};

/** Each step is a run of the built program, which takes its time on a busy machine. */
const MANY_RUNS_MS = 90_000;

describe('learn', { timeout: MANY_RUNS_MS }, () => {
  it('tells of a test piece in 80 columns, keeps the offsets with their set-up, and warns when it changes', () => {
    inFolder((folder) => {
      const { code, out, err } = flipwright(['learn', 'job.yaml', 'piece.yaml', '--save'], folder);
      expect(err).toBe('');
      expect(code).toBe(0);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
      expect(out).toMatch(/X zero \+0\.1\d mm ±/);
      expect(out).toMatch(/cannot be told from one turn/);
      expect(out).toMatch(/caliper its length along X, 60 mm from its\s+lower edge/);
      expect(out).toMatch(/for example 200\.3 mm measured: X zero \+0\.30 mm/);
      expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(JOB);
      expect(readFileSync(join(folder, 'shop.yaml'), 'utf8')).toBe(SHOP);
      expect(readFileSync(join(folder, 'shop.measured.yaml'), 'utf8')).toMatch(
        /of: machine\.lean[^]*was: "±0\.3 per 200"/,
      );
      const predicted = flipwright(['predict', 'job.yaml', '--json', ...FAST], folder);
      expect(predicted.out).toMatch(/measured 2026-11-21/);
      expect(JSON.parse(predicted.out)).toMatchObject({
        dialled: { turns: 1, measured: '2026-11-21' },
      });
      // Where on the bed it stands changes no offset, and lets its stops be made.
      const onBed = `${JOB}\non-bed: [30, 30]\n`;
      writeFileSync(join(folder, 'job.yaml'), onBed);
      const checked = (): unknown =>
        JSON.parse(flipwright(['check', 'job.yaml', '--json'], folder).out);
      expect(checked()).toMatchObject({ dialled: { turns: 1 }, warnings: [] });
      flipwright(['build', 'job.yaml', '--only', 'prediction', '--out', 'made', ...FAST], folder);
      const built = readFileSync(join(folder, 'made', 'job', 'prediction.json'), 'utf8');
      expect(JSON.parse(built)).toMatchObject({ dialled: { turns: 1, measured: '2026-11-21' } });
      writeFileSync(join(folder, 'job.yaml'), otherwise(onBed, 'height: 8', 'height: 10'));
      expect(checked()).not.toHaveProperty('dialled');
      expect(checked()).toMatchObject({
        warnings: expect.arrayContaining([expect.stringMatching(/WARNING/)]) as unknown,
      });
      const after = flipwright(['learn', 'job.yaml'], folder);
      expect(after.out).toMatch(/WARNING[^]*height was stop 8 high, and is stop 10 high/);
      const void_ = flipwright(['predict', 'job.yaml', '--json', ...FAST], folder);
      expect(JSON.parse(void_.out)).not.toHaveProperty('dialled');
    });
  });

  it('logs parts, judges the prediction by them, and refuses a slip in line 7 with nothing lost', () => {
    inFolder((folder) => {
      const log = (part: number, figure: string) =>
        flipwright(['learn', 'job.yaml', '--part', String(part), '--add', figure, ...FAST], folder);
      expect(log(1, 'foot under the dish=0.21').out).toMatch(/one part says nothing about scatter/);
      expect(log(2, 'foot under the dish x=-0.1').code).toBe(0);
      expect(log(2, 'foot under the dsh=0.1').err).toMatch(
        /is no need; did you mean foot under the dish\?/,
      );
      expect(log(2, 'foot under the dish=0,1').err).toMatch(/0,1 has a comma; write 0\.1/);
      const path = join(folder, 'job.log.csv');
      const text = readFileSync(path, 'utf8');
      expect(text.split('\n')).toHaveLength(4);
      const more = [3, 4, 5]
        .map((part) => `2026-11-22,${part},foot under the dish,0.3${part},digital caliper,\n`)
        .join('');
      writeFileSync(path, `${text}${more}2026-11-22,6,foot under the dish,oops,,\n`);
      const slip = flipwright(['learn', 'job.yaml', ...FAST], folder);
      expect(slip.code).toBe(2);
      expect(slip.err).toMatch(/5 rows are sound[^]*job\.log\.csv:7:34: oops is not a length/);
      writeFileSync(path, text + more);
      const { out } = flipwright(['learn', 'job.yaml', '--json', ...FAST], folder);
      const { parts } = JSON.parse(out) as {
        parts: { needs: { what: string; outcome: { count: number; verdict: { kind: string } } }[] };
      };
      expect(parts.needs.map(({ what, outcome }) => [what, outcome.count])).toEqual([
        ['foot under the dish', 4],
        ['foot under the dish x', 1],
      ]);
    });
  });

  it('says what is missing', () => {
    inFolder((folder) => {
      const said = (...words: string[]): string => {
        const { code, err } = flipwright(['learn', ...words], folder);
        expect(code).toBe(2);
        return err;
      };
      expect(said('job.yaml', '--add', 'a=1')).toMatch(/say of which part/);
      expect(said('job.yaml', '--part', 'x')).toMatch(/write the number of the part/);
      expect(said('job.yaml', '--save')).toMatch(/name the readings file of a test piece/);
      expect(said('job.yaml', 'shop.yaml')).toMatch(/the key flipwright-shop is not known/);
      expect(existsSync(join(folder, 'job.log.csv'))).toBe(false);
    });
  });
});

describe('square', { timeout: MANY_RUNS_MS }, () => {
  it('tells which way told most, and keeps what was measured', () => {
    withFolder((folder) => {
      copyFileSync(join(JIGS, 'shop.yaml'), join(folder, 'shop.yaml'));
      const example = readFileSync(join(JIGS, 'readings', 'square.yaml'), 'utf8');
      writeFileSync(
        join(folder, 'square-readings.yaml'),
        otherwise(example, 'shop: ../shop.yaml', 'shop: shop.yaml'),
      );
      const { code, out, err } = flipwright(['square', 'square-readings.yaml', '--save'], folder);
      expect(err).toBe('');
      expect(code).toBe(0);
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
      expect(out).toMatch(/square and dial tells most/);
      expect(readFileSync(join(folder, 'shop.measured.yaml'), 'utf8')).toMatch(
        /of: machine\.scale-x/,
      );
      const json = flipwright(['square', 'square-readings.yaml', '--json'], folder);
      expect((JSON.parse(json.out) as { found: unknown[] }).found).toHaveLength(3);
      writeFileSync(join(folder, 'empty.yaml'), 'flipwright-readings: 1\n');
      expect(flipwright(['square', 'empty.yaml'], folder)).toMatchObject({ code: 2, out: '' });
    });
  });
});
