import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { threeMfOf } from '../../src/export/three-mf.ts';
import { zipOf } from '../../src/export/zip.ts';
import { plateFacets } from '../../src/jig/plate/plate-solid.ts';
import { checkMesh } from '../../src/jig/mesh.ts';
import { aPlate, evilNames } from './a-plate.ts';
import { inFolder, skippedWithout } from './in-folder.ts';

const facets = plateFacets(aPlate);
const two = threeMfOf('Jig', [
  { name: 'guide', facets },
  { name: 'second', facets: facets.map((f) => f.map((p) => ({ ...p, x: p.x + 100 }))) },
]);

/** The model's text: entries are stored as they are. */
const modelOf = (bytes: Uint8Array): string => {
  const text = Buffer.from(bytes).toString('utf8');
  return text.slice(text.indexOf('<model'), text.indexOf('</model>'));
};

describe('a 3MF file', () => {
  it('holds each part as an object of its own, closed, in millimetres', () => {
    const model = modelOf(two);
    expect(model).toContain('unit="millimeter"');
    const objects = [
      ...model.matchAll(/<object id="(\d+)" type="model" name="([^"]*)">(.*?)<\/object>/gs),
    ];
    expect(objects.map(([, id, name]) => `${id} ${name}`)).toEqual(['1 guide', '2 second']);
    for (const [, , , mesh] of objects) {
      const places = [...mesh!.matchAll(/<vertex x="([^"]*)" y="([^"]*)" z="([^"]*)"\/>/g)].map(
        ([, x, y, z]) => ({ x: Number(x), y: Number(y), z: Number(z) }),
      );
      expect(new Set(places.map((p) => `${p.x} ${p.y} ${p.z}`)).size).toBe(places.length);
      const triangles = [...mesh!.matchAll(/v1="(\d+)" v2="(\d+)" v3="(\d+)"/g)].map((match) =>
        match.slice(1).map((index) => places[Number(index)]!),
      );
      const read = checkMesh(triangles);
      expect(read.openEdgeCount).toBe(0);
      // A millionth of a millimetre over its skin of less than 20 000 mm2.
      expect(Math.abs(read.signedVolumeMm3 - checkMesh(facets).signedVolumeMm3)).toBeLessThan(0.02);
    }
    expect(model.match(/<item objectid="\d+"\/>/g)).toEqual([
      '<item objectid="1"/>',
      '<item objectid="2"/>',
    ]);
  });

  it('is the same bytes every time, and lets no name out of its place', () => {
    const plain = threeMfOf('Jig', [{ name: 'a', facets }]);
    expect(Buffer.compare(plain, threeMfOf('Jig', [{ name: 'a', facets }]))).toBe(0);
    const shape = (bytes: Uint8Array): string =>
      modelOf(bytes)
        .replace(/type="model" name="[A-Za-z0-9 .-]{1,100}"/, '')
        .replace(/"Title">[A-Za-z0-9 .-]{1,100}</, '');
    const wanted = shape(plain);
    const other = evilNames.filter((name) => shape(threeMfOf(name, [{ name, facets }])) !== wanted);
    expect(other).toEqual([]);
  });

  it('refuses a part with a hole in its skin, or none at all', () => {
    expect(() => threeMfOf('Jig', [{ name: 'guide', facets: facets.slice(1) }])).toThrow(
      /guide: \d+ open edges must not be written/,
    );
    expect(() => threeMfOf('Jig', [])).toThrow('without a part');
  });

  const slicer = '/usr/bin/prusa-slicer';
  it.skipIf(skippedWithout(existsSync(slicer)))(
    'is one sound part of its true size to a slicer (Debian; skipped where missing)',
    () => {
      inFolder((folder) => {
        const file = join(folder, 'jig.3mf');
        writeFileSync(file, threeMfOf('Jig', [{ name: 'guide', facets }]));
        const said = execFileSync(slicer, ['--info', file], {
          encoding: 'utf8',
          env: { ...process.env, HOME: folder },
          stdio: ['ignore', 'pipe', 'ignore'],
        });
        const value = (key: string): string | undefined =>
          new RegExp(`^${key} = (.*)$`, 'm').exec(said)?.[1]?.trim();
        expect(['size_x', 'size_y', 'size_z'].map((key) => Number(value(key)))).toEqual([
          90, 40, 9,
        ]);
        expect(value('manifold')).toBe('yes');
        expect(value('number_of_parts')).toBe('1');
        expect(said).not.toMatch(/repaired|open_edges|degenerate/);
      });
    },
    20_000,
  );

  it.skipIf(skippedWithout(existsSync('/usr/bin/python3')))(
    'is an archive that Python reads and finds sound (skipped where missing)',
    () => {
      inFolder((folder) => {
        const file = join(folder, 'a.zip');
        writeFileSync(
          file,
          zipOf([
            { path: 'a/b.txt', bytes: Buffer.from('fence') },
            { path: 'c', bytes: new Uint8Array() },
          ]),
        );
        const script = `import zipfile,sys; z=zipfile.ZipFile(sys.argv[1]); print(z.testzip(), [(i.filename, z.read(i).decode(), i.date_time[:3]) for i in z.infolist()])`;
        const said = execFileSync('/usr/bin/python3', ['-c', script, file], { encoding: 'utf8' });
        expect(said.trim()).toBe(
          "None [('a/b.txt', 'fence', (1980, 1, 1)), ('c', '', (1980, 1, 1))]",
        );
      });
    },
  );
});
