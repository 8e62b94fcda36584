import { describe, expect, it } from 'vitest';
import { faultText, readJob } from '../../src/job/read.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

const STRAP =
  '{name: strap, kind: strap-clamp, count: 4, slot: [20, 60], pad: [20, 12], height: 12, bolt: M6, torque: 4 Nm}';

function read(added: string, downs = STRAP, job = JOB) {
  const shop = `${SHOP}hold-downs:\n  - ${downs}\n`;
  const files = new Map([
    ['shop.yaml', bytes(shop)],
    ['back.nc', bytes('G21\n')],
  ]);
  return readJob({ name: 'job.yaml', bytes: bytes(`${job}${added}\n`) }, files);
}

function holding(added: string, downs?: string, job?: string) {
  const result = read(added, downs, job);
  if (!result.ok) throw new Error(result.faults.map(faultText).join('\n'));
  return result.value.holding;
}

const faults = (added: string, downs?: string, job?: string): readonly string[] => {
  const result = read(added, downs, job);
  return result.ok ? [] : result.faults.map(faultText);
};

describe('holding down', () => {
  it('is read with its units', () => {
    const all = holding(
      'hold: {clamps: {front-up: {pin: [[50, 100]]}}, friction: 0.25, cutting-force: 10 lbf, vacuum: {gauge: 0.8 bar, sealed: [100, 100]}, tape: {stuck: [50, 20]}, filler: yes}\nprogram: {back-up: {file: back.nc, cutter: flat 6, tools: {2: flat 6}}}',
    );
    expect(all.force.sidewaysN).toBeCloseTo(44.482, 3);
    expect(all.vacuum).toEqual({ gaugeKPa: 80, areaMm2: 10_000 });
    expect(all.tape).toEqual({ shearKPa: 20, areaMm2: 1000 });
    expect(all.clamps.frontUp.pin).toEqual([{ x: 50, y: 100 }]);
    expect(all.hasFiller).toBe(true);
    expect(all.straps[0]).toMatchObject({ torqueNm: 4, slotMm: [20, 60], lengthMm: 80 });
    expect(all.programs.frontUp).toBeNull();
    expect(all.programs.backUp).toMatchObject({ file: 'back.nc', face: 'back' });
    expect(all.programs.backUp!.tools.get(2)!.name).toBe('flat 6');
    expect(holding('').clamps.kind).toBe('auto');
  });

  it('knows tabs of profiles', () => {
    const job = otherwise(
      JOB,
      'depth: 3, cutter: flat 6}',
      'depth: 3, cut: profile-inside, tabs: {count: 3, width: 6, thick: 1}, cutter: flat 6}',
    );
    expect(holding('', STRAP, job).tabs.get('foot')).toEqual({
      count: 3,
      widthMm: 6,
      thickMm: 1,
    });
  });

  it.each([
    ['hold: {clamps: always}', 'clamps always is not'],
    ['hold: {friction: -1}', '-1 is not above 0 and up to 1'],
    ['hold: {cutting-force: 60}', '60 is a force without a unit; write it in N, kN, lbf'],
    ['hold: {cutting-force: 1e9 N}', '1e9 N is not above 0 and up to 10000 N'],
    ['hold: {cutting-force: many N}', 'many N is not a force; write 60 N'],
    ['hold: {cutting-force: -5 N}', '-5 N is not above 0'],
    ['hold: {cutting-force: "1,5 N"}', '1,5 N has a comma; write 1.5 N'],
    ['hold: {screws: [[12, 12]]}', 'there are places for screws, and the shop has none'],
    ['hold: {clamps: {front-up: {pin: [[900, 10]]}}}', 'a bolt at 900, 10 is off the spoilboard'],
    ['program: {front-up: {file: no.nc, cutter: flat 6}}', 'the program no.nc is not there'],
    ['program: {back-up: {file: back.nc, cutter: flat 7}}', 'the cutter flat 7 is not in the shop'],
    ['program: {back-up: {file: back.nc}}', 'write cutter: flat 6'],
    [
      'program: {back-up: {file: back.nc, cutter: flat 6, tools: {two: flat 6}}}',
      'two is not the number of a T word',
    ],
  ])('of %s is refused: %s', (added, message) => {
    expect(faults(added).join('\n')).toContain(message);
  });

  it.each([
    ['{name: s, kind: strap-clamp}', 'does not say its slot, pad, height, bolt, torque'],
    [STRAP.replace('[20, 60]', '[60, 20]'), 'the slot runs from 60 to 20 mm'],
    [STRAP.replace('[20, 60]', '[10, 60]'), 'the bolt would stand 10 mm from the nose, in the pad'],
    [STRAP.replace('count: 4', 'count: 0'), 'count 0 is not a number of clamps'],
    [STRAP.replace('4 Nm', '4'), '4 is a torque without a unit'],
    [STRAP.replace('}', ', length: 50}'), 'the strap is 50 mm long, and its slot ends at 60 mm'],
    ['{name: s, kind: glue}', 'kind'],
    ['{name: s, kind: screw}', 'the screw s does not say its diameter, length, head'],
    [
      '{name: s, kind: screw, diameter: 8, length: 35, head: [4, 3]}',
      'the head is 4 mm wide, and the shank 8 mm',
    ],
  ])('with %s is refused: %s', (downs, message) => {
    expect(faults('', downs).join('\n')).toContain(message);
  });

  it('refuses screws beside the blank, tabs as high as it, and tabs in a pocket', () => {
    const screw = '{name: s, kind: screw, diameter: 4, length: 35, head: [8, 3]}';
    expect(faults('hold: {screws: [[250, 12]]}', screw).join()).toContain('is not in the blank');
    const tabs = (text: string): string =>
      otherwise(JOB, 'depth: 6, cutter: flat 6}', `depth: 6, ${text}, cutter: flat 6}`);
    expect(faults('', STRAP, tabs('tabs: {count: 3, width: 6, thick: 18}')).join('\n')).toContain(
      'the tabs are 18 mm high, and the blank is 18 mm thick',
    );
    expect(faults('', STRAP, tabs('tabs: {count: 0, width: 6, thick: 1}')).join('\n')).toMatch(
      /tabs are for a profile, and dish is a pocket[^]*count 0 is not a number of tabs/,
    );
  });

  it('refuses old holes off the spoilboard, and a material that nobody knows, with their place', () => {
    const withBoard = (added: string): readonly string[] => {
      const shop = otherwise(SHOP, 'thickness: 18}', `thickness: 18, ${added}}`);
      const files = new Map([['shop.yaml', bytes(shop)]]);
      const result = readJob({ name: 'job.yaml', bytes: bytes(JOB) }, files);
      return result.ok ? [] : result.faults.map(faultText);
    };
    expect(withBoard('old-holes: [[120, 80], [400, 300]], material: beech')).toEqual([]);
    expect(withBoard('material: mdf')).toEqual([]);
    const off = withBoard('old-holes: [[120, 80], [401, 80]]').join();
    expect(off).toMatch(/^shop\.yaml:\d+/);
    expect(off).toContain(
      'the old hole at 401, 80 is off the spoilboard; write 0 to 400, 0 to 300',
    );
    const jelly = withBoard('material: jelly').join();
    expect(jelly).toMatch(/^shop\.yaml:\d+/);
    expect(jelly).toContain('the material jelly of the spoilboard is no wood or board');
    expect(jelly).toContain('write mdf, plywood, or a wood such as beech');
    expect(withBoard('old-holes: 120').join()).toMatch(/old-holes/);
    expect(withBoard('material: [1]').join()).toMatch(/material/);
  });

  it('has tracks that end after they begin', () => {
    expect(faults('bed: {t-tracks: [{along: x, at: 50, from: 90, to: 20}]}').join()).toContain(
      'the track ends at 20 and begins at 90 mm',
    );
  });
});
