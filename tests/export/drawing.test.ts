import { execFileSync } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { dxfOf } from '../../src/export/dxf.ts';
import { svgOf } from '../../src/export/svg.ts';
import type { Drawing } from '../../src/jig/plate/drawing.ts';
import { plateDrawing } from '../../src/jig/plate/plate-drawing.ts';
import { aPlate, evilNames } from './a-plate.ts';
import { inFolder, skippedWithout } from './in-folder.ts';

const drawing = plateDrawing(aPlate);

/** Group pairs of a DXF file. */
const groupsOf = (text: string): readonly (readonly [string, string])[] => {
  const lines = text.split('\r\n');
  return Array.from(
    { length: Math.floor(lines.length / 2) },
    (_, i) => [lines[2 * i]!, lines[2 * i + 1]!] as const,
  );
};

const evil = (name: string): Drawing => ({
  name,
  figures: [
    ...drawing.figures,
    { kind: 'text', layer: 'mark', at: { x: 1, y: 1 }, heightMm: 3, words: name },
  ],
});

describe('a drawing as DXF', () => {
  it('lets no name out of its place', () => {
    const shape = (text: string): string =>
      groupsOf(text)
        .filter(([code]) => code === '0' || code === '8')
        .map((group) => group.join(' '))
        .filter((line) => line !== '0 TEXT' && line !== '8 MARK')
        .join('\n');
    for (const name of evilNames) {
      const text = dxfOf(evil(name));
      expect(shape(text)).toBe(shape(dxfOf(drawing)));
      expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    }
  });

  const packages = '/usr/lib/python3/dist-packages/ezdxf';
  it.skipIf(skippedWithout(existsSync(packages)))(
    'has true circles and arcs, on its layers, and nothing to mend, says ezdxf (Debian; skipped where missing)',
    () => {
      inFolder((folder) => {
        const file = join(folder, 'plate.dxf');
        writeFileSync(file, dxfOf(evil('LID </text>')));
        const script = `
import ezdxf, sys, json
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
out = []
for e in doc.modelspace():
    layer = e.dxf.layer
    if e.dxftype() == 'CIRCLE':
        out.append([layer, 'circle', round(e.dxf.center.x, 6), round(e.dxf.center.y, 6), round(e.dxf.radius, 6)])
    elif e.dxftype() == 'POLYLINE':
        parts = [(p.dxftype(), round(p.dxf.radius, 4) if p.dxftype() == 'ARC' else 0) for p in e.virtual_entities()]
        out.append([layer, 'curve', e.is_closed, len(parts), sorted({r for kind, r in parts if kind == 'ARC'})])
    else:
        out.append([layer, e.dxftype(), e.dxf.text])
print(json.dumps({'errors': len(audit.errors), 'fixes': len(audit.fixes), 'units': doc.header['$INSUNITS'], 'out': out}))
`;
        const said = JSON.parse(
          execFileSync('/usr/bin/python3', ['-c', script, file], { encoding: 'utf8' }),
        ) as { errors: number; fixes: number; units: number; out: unknown[][] };
        expect([said.errors, said.fixes, said.units]).toEqual([0, 0, 4]);
        expect(said.out).toContainEqual(['THROUGH', 'curve', true, 8, [4]]);
        expect(said.out).toContainEqual(['THROUGH', 'circle', 15, 20, 3]);
        expect(said.out).toContainEqual(['THROUGH', 'curve', true, 4, [3.3]]);
        expect(said.out).toContainEqual(['POCKET', 'curve', true, 6, []]);
        expect(said.out).toContainEqual(['DRILL', 'circle', 78, 20, 4]);
        expect(said.out).toContainEqual(['MARK', 'TEXT', '6.5 deep']);
        expect(said.out).toContainEqual(['MARK', 'TEXT', 'LID text']);
        expect(said.out.filter(([layer]) => layer === 'ENGRAVE').length).toBeGreaterThan(3);
      });
    },
    20_000,
  );
});

describe('a drawing as SVG', () => {
  it('lets no name out of its place', () => {
    const shape = (text: string): string =>
      text.replace(/>[A-Za-z0-9 .-]*</g, '><').replace(/<text[^>]*><\/text>/, '');
    for (const name of evilNames) {
      const text = svgOf(evil(name));
      expect(
        shape(text)
          .replace(/(width|height|viewBox)="[^"]*"/g, '')
          .split('\n').length,
      ).toBe(shape(svgOf(evil('LID'))).split('\n').length);
      expect(text.match(/<script|<object|\u0000/)).toBeNull();
    }
  });

  it('is the same text every time', () => {
    expect(svgOf(drawing)).toBe(svgOf(plateDrawing(aPlate)));
    expect(dxfOf(drawing)).toBe(dxfOf(plateDrawing(aPlate)));
  });
});
