// Every line of design section 3 of the registration model: what advice must find by itself, each on a board
// where only the named thing is off, so that only it can be the reason.
import { describe, expect, it } from 'vitest';
import { improve, trySingles, type Tried } from '../../src/advise/actions/improve.ts';
import type { Case } from '../../src/advise/actions/action.ts';
import { aBench, toTheEnd, variantsOfTexts } from './a-bench.ts';
import { exactShop, smallJob, withBlank, type SmallJob } from './small-job.ts';

const TRIALS = 400;

function singlesOf(job: string, shop = exactShop(), trials = TRIALS): readonly Tried[] {
  const variants = variantsOfTexts(job, shop);
  const bench = aBench(variants, trials);
  const asIs = bench.tryOut([]);
  if (asIs.kind === 'impossible') throw new Error(asIs.because);
  const of: Case = { variants, job: asIs.job, outcome: asIs.outcome };
  return toTheEnd(trySingles(bench, of)).tried;
}

const board = (keys: Readonly<Record<string, string>>, rest: SmallJob = {}): string =>
  withBlank(smallJob(rest), keys);

const gainOf = (singles: readonly Tried[], name: string): number =>
  singles.find(({ action }) => action.name === name)?.gain.value ?? NaN;

/** Names of all that gain as much as the best, within a point. */
function best(singles: readonly Tried[]): readonly string[] {
  const top = singles[0]!.gain.value;
  expect(top).toBeGreaterThan(0.1);
  return singles.filter(({ gain }) => gain.value > top - 0.01).map(({ action }) => action.name);
}

const SET = `stops:
  corner: {front-up: near-left, back-up: near-left}
  fence: lower-edge
  fence-touch: [20, 180]
  side-touch: 60
  touch-height: 10
  made: set-by-hand
  angle: 0
  square: 0
  spacing: 0
  seat-gap: 0
  give: 0`;
const KEPT = `zero:
  front-up: {xy: stops, z: top, z-touched: [100, 60], with: paper}
  back-up: {xy: kept, kept: held, z: top, z-touched: [100, 60], with: paper}`;
const WEB = `needs:
  - {name: wood between, web: [hole, pocket], from: 2.85, up-to: 3.15}`;

const ASKEW = 'needs:\n  - {name: far corner, misalignment: [180, 100], within: 0.12}';
const ZERO_TOPS = `zero:
  front-up: {xy: milled-stops, z: top, z-touched: [100, 60], with: paper}
  back-up: {xy: kept, kept: held, z: top, z-touched: [100, 60], with: paper}`;

describe('what a master would say', () => {
  it('opposite corner, zero at the middle, or caliper and dial in, when the size is loose', () => {
    const singles = singlesOf(board({ size: '[200 ±0.6, 120 ±0, 20 ±0]' }));
    expect(best(singles)).toEqual(
      expect.arrayContaining(['opposite corner', 'zero at the middle', 'caliper and dial in']),
    );
  });

  it('contact at half thickness when the edges are bevelled', () => {
    const stops = smallJob({})
      .match(/stops:\n(?: {2}.*\n)+/)![0]
      .replace('touch-height: 10', 'height: 4');
    const singles = singlesOf(board({ bevel: '±1.5 deg' }, { stops: stops.trimEnd() }));
    expect(best(singles)).toEqual(expect.arrayContaining(['half thickness']));
  });

  it('buttons in place of arms, where arms are felt', () => {
    const side = SET.replace('side-touch: 60', 'side-touch: {arm: [10, 100]}');
    const square = singlesOf(board({ square: '±0.6 per 200' }, { stops: side, zero: KEPT }));
    expect(best(square)).toContain('side button');
    const fence = SET.replace('fence-touch: [20, 180]', 'fence-touch: {arm: [10, 80]}');
    const crook = singlesOf(
      board({ crook: '±0.6 per 300' }, { stops: fence, zero: KEPT, needs: ASKEW }),
    );
    expect(gainOf(crook, 'fence buttons')).toBeGreaterThan(0.1);
  });

  it('fence buttons that are mirror images about the turn line', () => {
    const stops = SET.replace('fence-touch: [20, 180]', 'fence-touch: [10, 120]');
    const singles = singlesOf(board({ bumps: '0.12 sd' }, { stops, zero: KEPT, needs: ASKEW }));
    expect(best(singles)).toContain('fence buttons');
    expect(singles.find(({ action }) => action.name === 'fence buttons')!.action.words).toContain(
      'mirror images',
    );
  });

  it('the single button level with the critical feature', () => {
    const stops = smallJob({})
      .match(/stops:\n(?: {2}.*\n)+/)![0]
      .replace('side-touch: 60', 'side-touch: 10')
      .trimEnd();
    const singles = singlesOf(board({}, { stops, machine: 'lean: ±0.6 per 200' }));
    expect(best(singles)).toContain('side button');
    const moved = singles.find(({ action }) => action.name === 'side button')!;
    expect(moved.action.edits).toEqual([{ path: ['stops', 'side-touch'], value: 60 }]);
  });

  it('zero touched level with the critical feature, and height over it', () => {
    const plan = singlesOf(board({}, { stops: SET, zero: KEPT, machine: 'lean: ±0.6 per 200' }));
    expect(best(plan)).toContain('touch level with it');
    const away = ZERO_TOPS.replaceAll('[100, 60]', '[20, 15]');
    const height = singlesOf(
      board({}, { zero: away, needs: WEB }),
      exactShop({ bed: '  lean-x: ±0.5 per 200\n  lean-y: ±0.5 per 200' }),
    );
    expect(best(height)).toContain('touch Z over it');
  });

  it('keep the zero with the motors held', () => {
    const zero = KEPT.replace('kept: held', 'kept: power-off');
    expect(best(singlesOf(board({}, { stops: SET, zero })))).toContain('keep the zero');
  });

  it('top then bed for a web, unless the blank is cupped and touched away from its hump', () => {
    const thick = singlesOf(board({ size: '[200 ±0, 120 ±0, 20 ±0.5]' }, { needs: WEB }));
    expect(best(thick)).toEqual(expect.arrayContaining(['heights top, bed']));
    const away = ZERO_TOPS.replaceAll('[100, 60]', '[4, 60]');
    const cupped = singlesOf(
      board(
        {
          size: '[200 ±0, 120 ±0, 20 ±0.16]',
          cup: '{hump: 0.3..0.5, along: x, up: front, pressed-flat: no}',
        },
        { zero: away, needs: WEB },
      ),
    );
    expect(gainOf(cupped, 'heights top, bed')).toBeLessThan(-0.1);
  });

  it('mill the stops in place when they are set badly', () => {
    const stops = SET.replace('angle: 0', 'angle: ±0.8 per 200');
    expect(best(singlesOf(board({}, { stops, zero: KEPT, needs: ASKEW })))).toContain(
      'mill the stops',
    );
  });

  it('pins in the waste, far apart on the turn line, when the edges are poor', () => {
    const features = `front:
  - {name: body, rectangle: [120, 70], corner-radius: 5, at: [100, 60], depth: through, cut: profile-outside, cutter: flat 6}
  - {name: hole, circle: 10, at: [100, 60], depth: 8, cutter: flat 6}
back:
  - {name: pocket, rectangle: [40, 30], corner-radius: 3.2, at: [100, 60], depth: 9, cutter: flat 6}`;
    const stops = SET.replace('touch-height: 10', 'height: 6');
    const job = board(
      {
        bevel: '±2 deg',
        crook: '±1 per 300',
        square: '±1 per 200',
        'taper-x': '±1 per 200',
        size: '[200 ±1, 120 ±1, 20 ±0]',
      },
      { stops, zero: KEPT, features, needs: ASKEW },
    );
    const singles = singlesOf(job);
    expect(best(singles)).toContain('dowels');
    const pins = singles.find(({ action }) => action.name === 'dowels')!.action;
    const at = pins.edits.find(({ path }) => path[0] === 'dowels' && path.length === 1)!;
    // On the turn line x = 100, in the waste on both sides of the body (y from 25 to 95).
    const places = (at.value as { at: [number, number][] }).at;
    expect(places.map(([x]) => x)).toEqual([100, 100]);
    expect(places[0]![1]).toBeLessThan(20);
    expect(places[1]![1]).toBeGreaterThan(100);
  });

  it('the same cutter from both sides', () => {
    const features = `front:
  - {name: upper, rectangle: [100, 60], corner-radius: 3.2, at: [100, 60], depth: 10, cut: profile-outside, cutter: flat 6}
back:
  - {name: lower, rectangle: [100, 60], corner-radius: 3.2, at: [100, 60], depth: 10, cut: profile-outside, cutter: flat 5}`;
    const needs = 'needs:\n  - {name: step, meets: [upper, lower], within: 0.02}';
    const singles = singlesOf(
      board({}, { features, needs, stops: SET, zero: KEPT }),
      exactShop().replaceAll('±0.02', '±0.1'),
      100,
    );
    expect(best(singles)[0]).toMatch(/^one cutter/);
  });

  it('a known shear that cannot be taken out is halved by turning the fence', () => {
    const needs = 'needs:\n  - {name: corner, misalignment: [100, 110], within: 0.6}';
    const job = board(
      {},
      {
        stops: SET.replace('side-touch: 60', 'side-touch: 60'),
        zero: KEPT,
        needs,
        machine: 'lean: 0.9..1.1 per 200',
      },
    );
    const singles = singlesOf(job);
    // -2 gamma 110 = 1.1 mm becomes hypot(gamma (x - W/2), gamma y) = 0.55 mm.
    expect(gainOf(singles, 'half turn')).toBeGreaterThan(0.5);
    const turned = singles.find(({ action }) => action.name === 'half turn')!;
    expect(turned.action.words).toContain('clockwise by 0.5 mm over 200');
  });

  it('leave it alone when all is well', () => {
    const bench = aBench(
      variantsOfTexts(board({ size: '[200 ±0.05, 120 ±0, 20 ±0]' }), exactShop()),
      TRIALS,
    );
    const found = toTheEnd(improve(bench, { screenTrials: TRIALS }));
    expect(found).toMatchObject({ isGoodEnough: true, singles: [], sequence: null, limit: null });
  });
});
