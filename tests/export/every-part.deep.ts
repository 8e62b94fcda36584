// Every part of the jig as independent programs see its files. Debian's; skipped where they are missing.
import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dxfOf } from '../../src/export/dxf.ts';
import { stlOf } from '../../src/export/stl.ts';
import { threeMfOf } from '../../src/export/three-mf.ts';
import type { Facet } from '../../src/jig/mesh.ts';
import { partFacets } from '../../src/jig/parts/part.ts';
import { sideBySide } from '../../src/jig/parts/print-bed.ts';
import { plateDrawing } from '../../src/jig/plate/plate-drawing.ts';
import { solidOfFacets } from '../../src/jig/solid.ts';
import { stopFacets } from '../../src/jig/stop-solid.ts';
import { aJob } from '../jig/a-job.ts';
import { everyPart } from '../jig/parts/every-part.ts';
import { partsOf as stopsOf } from '../jig/program/some-programs.ts';
import { inFolder, skippedWithout } from './in-folder.ts';

const parts = everyPart();
const all: readonly { readonly name: string; readonly facets: readonly Facet[] }[] = [
  ...stopsOf(aJob()).map((stop) => ({ name: stop.name, facets: stopFacets(stop) })),
  ...parts.map((part) => ({ name: part.name, facets: partFacets(part) })),
];

const spans = (facets: readonly Facet[]): readonly number[] =>
  (['x', 'y', 'z'] as const).map((axis) => {
    const along = facets.flat().map((p) => p[axis]);
    return along.reduce((a, b) => Math.max(a, b)) - along.reduce((a, b) => Math.min(a, b));
  });

const valueIn = (said: string, key: string): string | undefined =>
  new RegExp(`^${key} = (.*)$`, 'm').exec(said)?.[1]?.trim();

describe('every part', () => {
  it.skipIf(skippedWithout(existsSync('/usr/bin/admesh')))(
    'is one sound solid to admesh: nothing repaired',
    () => {
      inFolder((folder) => {
        for (const { name, facets } of all) {
          const file = join(folder, 'part.stl');
          writeFileSync(file, stlOf(solidOfFacets(facets)));
          const said = execFileSync('/usr/bin/admesh', [file], { encoding: 'utf8' });
          expect(said, name).toMatch(/Number of parts\s*:\s*1\s/);
          for (const label of ['Edges fixed', 'Facets removed', 'Facets added', 'Facets reversed'])
            expect(said, name).toMatch(new RegExp(`${label}\\s*:\\s*0\\s`));
        }
      });
    },
    60_000,
  );

  const slicer = '/usr/bin/prusa-slicer';
  it.skipIf(skippedWithout(existsSync(slicer)))(
    'is manifold and of its true size to a slicer, as STL and all together as 3MF',
    () => {
      inFolder((folder) => {
        const info = (file: string): string =>
          execFileSync(slicer, ['--info', file], {
            encoding: 'utf8',
            env: { ...process.env, HOME: folder },
            stdio: ['ignore', 'pipe', 'ignore'],
          });
        for (const { name, facets } of all) {
          const file = join(folder, 'part.stl');
          writeFileSync(file, stlOf(solidOfFacets(facets)));
          const said = info(file);
          expect(valueIn(said, 'manifold'), name).toBe('yes');
          expect(valueIn(said, 'number_of_parts'), name).toBe('1');
          spans(facets).forEach((span, k) => {
            const read = Number(valueIn(said, `size_${'xyz'[k]!}`));
            expect(Math.abs(read - span), `${name} ${'xyz'[k]!}`).toBeLessThan(0.01);
          });
        }
        const file = join(folder, 'jig.3mf');
        writeFileSync(file, threeMfOf('Jig', sideBySide(all)));
        const said = info(file);
        expect(said.match(/manifold = yes/g)).toHaveLength(all.length);
        expect(said).not.toMatch(/repaired|open_edges|degenerate/);
      });
    },
    90_000,
  );

  it.skipIf(skippedWithout(existsSync('/usr/lib/python3/dist-packages/ezdxf')))(
    'has nothing to mend as DXF to ezdxf, and its extents',
    () => {
      inFolder((folder) => {
        const plates = parts.flatMap(({ form }) => (form.kind === 'plate' ? [form.plate] : []));
        plates.forEach((plate, i) => {
          writeFileSync(join(folder, `${i}.dxf`), dxfOf(plateDrawing(plate)));
        });
        const script = `
import ezdxf, ezdxf.bbox, sys, json
out = []
for i in range(int(sys.argv[2])):
    doc = ezdxf.readfile(f'{sys.argv[1]}/{i}.dxf')
    audit = doc.audit()
    through = [e for e in doc.modelspace() if e.dxf.layer == 'THROUGH']
    box = ezdxf.bbox.extents(through, flatten=0.001)
    out.append([len(audit.errors), len(audit.fixes), box.size.x, box.size.y])
print(json.dumps(out))
`;
        const said = JSON.parse(
          execFileSync('/usr/bin/python3', ['-c', script, folder, String(plates.length)], {
            encoding: 'utf8',
          }),
        ) as [number, number, number, number][];
        const named = parts.filter(({ form }) => form.kind === 'plate');
        said.forEach(([errors, fixes, x, y], i) => {
          expect([errors, fixes], named[i]!.name).toEqual([0, 0]);
          const [wide, deep] = spans(partFacets(named[i]!));
          // Chords of the solid run inside true arcs by 0.02 at most, at either end.
          expect(Math.abs(x - wide!), named[i]!.name).toBeLessThan(0.05);
          expect(Math.abs(y - deep!), named[i]!.name).toBeLessThan(0.05);
        });
      });
    },
    60_000,
  );
});
