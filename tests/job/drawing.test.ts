import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineIn } from '../../src/job/drawing/read.ts';
import { faultText, filesNamedBy, readJob } from '../../src/job/read.ts';
import { pathAreaMm2, pathBounds } from '../../src/plane/path-measure.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const FOLDER = 'tests/job/drawings';
const bytesOf = (file: string) => readFileSync(`${FOLDER}/${file}`);
const read = (file: string, named: string, units: 'mm' | 'inch' | null = null) =>
  outlineIn(file, bytesOf(file), named, units);
const pathOf = (file: string, named: string, units: 'mm' | 'inch' | null = null) => {
  const found = read(file, named, units);
  if (!found.ok) throw new Error(found.faults.map(({ message }) => message).join('\n'));
  return found.value.path;
};
const said = (file: string, named: string, units: 'mm' | 'inch' | null = null) => {
  const found = read(file, named, units);
  return found.ok ? [] : found.faults.map(({ message, instead }) => `${message}; ${instead}`);
};

// The badge: 40 by 40 mm with a half disc of radius 20 on its right. Its area by hand:
const BADGE_MM2 = 1600 + 200 * Math.PI;

describe('an outline out of a drawing', () => {
  it.each([
    ['badge.dxf', 'light'],
    ['badge.dxf', 'old'],
    ['badge.dxf', 'chain'],
    ['badge.svg', 'badge'],
  ])('%s, %s: is closed, counter-clockwise, in mm, and keeps its arc', (file, named) => {
    const path = pathOf(file, named);
    // The chain has a gap of 4 µm, which is bridged; the others are exact.
    const slackMm = named === 'chain' ? 0.005 : 1e-9;
    expect(Math.abs(pathAreaMm2(path) - BADGE_MM2)).toBeLessThan(slackMm * 100);
    const { lowX, lowY, highX, highY } = pathBounds(path);
    for (const [value, nominal] of [
      [lowX, 0],
      [lowY, 0],
      [highX, 60],
      [highY, 40],
    ] as const)
      expect(Math.abs(value - nominal)).toBeLessThan(slackMm);
    expect(path.length).toBeLessThanOrEqual(5);
    expect(path.some(({ bulge }) => bulge > 0.4)).toBe(true);
  });

  it('is a circle as two half turns', () => {
    expect(pathOf('badge.dxf', 'hole')).toEqual([
      { at: { x: 37.5, y: 20 }, bulge: 1 },
      { at: { x: 22.5, y: 20 }, bulge: 1 },
    ]);
    // Half a millimetre a unit, y from the lower edge of the page: (60, 160 - 120) / 2, radius 7.5.
    const { lowX, highX, lowY, highY } = pathBounds(pathOf('badge.svg', 'hole'));
    expect([lowX, highX, lowY, highY].map((value) => Math.round(value * 1e9) / 1e9)).toEqual([
      22.5, 37.5, 12.5, 27.5,
    ]);
  });

  it('is in mm whatever the units of the drawing', () => {
    expect(pathOf('inches.dxf', 'hole')[0]).toEqual({ at: { x: 31.75, y: 12.7 }, bulge: 1 });
    expect(pathOf('unitless.dxf', 'hole', 'mm')[0]!.at.x).toBe(37.5);
    expect(pathOf('unitless.dxf', 'hole', 'inch')[0]!.at.x).toBeCloseTo(37.5 * 25.4, 9);
  });

  it('goes through the transforms of its groups, and is found by its label', () => {
    // 20 by 10 mm at (0..20, 0..10), turned a quarter about its middle (10, 5), then 10 right and 10 up.
    const { lowX, highX, lowY, highY } = pathBounds(pathOf('badge.svg', 'moved'));
    expect([lowX, highX, lowY, highY].map((value) => Math.round(value * 1e9) / 1e9)).toEqual([
      15, 25, 5, 25,
    ]);
    expect(pathAreaMm2(pathOf('badge.svg', 'layer'))).toBeCloseTo(200 - (4 - Math.PI) * 4, 9);
  });

  it('of a polygon or rectangle has sharp corners', () => {
    expect(pathOf('badge.svg', 'wedge').map(({ bulge }) => bulge)).toEqual([0, 0, 0]);
    expect(pathAreaMm2(pathOf('badge.svg', 'wedge'))).toBeCloseTo(300, 9);
    expect(pathAreaMm2(pathOf('badge.svg', 'plate'))).toBeCloseTo(600, 9);
  });

  it('with a curve is read in straight pieces, and says so', () => {
    const bent = read('badge.svg', 'bent');
    expect(bent.ok && bent.value.note).toBe(
      'a curve of bent is read as straight pieces at most 0.001 mm off; arcs and lines are kept as they are',
    );
    // A cubic from p0 = (0, 0) by p1 and p2 to p3, then down to (20, 0) and back. Green's theorem on its
    // Bernstein form: the area about p0 is 3/20 (p1 x p2 + p1 x p3 + 2 p2 x p3), less the triangle.
    const [p1, p2, p3] = [
      [0, 10],
      [10, 20],
      [20, 20],
    ] as const;
    const cross = (a: readonly number[], b: readonly number[]) => a[0]! * b[1]! - b[0]! * a[1]!;
    const swept = (3 / 20) * (cross(p1, p2) + cross(p1, p3) + 2 * cross(p2, p3));
    const area = Math.abs(swept + cross(p3, [20, 0]) / 2);
    const path = bent.ok ? bent.value.path : [];
    // Off by at most 0.001 mm over a curve shorter than 40 mm.
    expect(Math.abs(pathAreaMm2(path) - area)).toBeLessThan(0.04);
    expect(path.length).toBeGreaterThan(20);
  });

  it.each<[string, string, ...string[]]>([
    [
      'badge.dxf',
      'open',
      'badge.dxf: layer open is not closed: the LINE in line 214 ends at 10, 8 mm, and nothing begins within 0.01 mm of there; close the outline, or give each outline its own name',
    ],
    [
      'badge.dxf',
      'fork',
      'badge.dxf: layer fork branches at 10, 0 mm: the LINE in line 246 and the LINE in line 262 both begin there; draw one closed outline',
    ],
    [
      'badge.dxf',
      'two',
      'badge.dxf: layer two holds more than one outline: the CIRCLE in line 278 is closed by itself, and so the CIRCLE in line 288 is one too many; give each outline its own name',
    ],
    [
      'badge.dxf',
      'bent',
      'badge.dxf: the SPLINE in line 298 is not read here; draw it with lines, arcs, circles or polylines (explode blocks, turn splines into arcs)',
      'badge.dxf: the ELLIPSE in line 304 is not read here; draw it with lines, arcs, circles or polylines (explode blocks, turn splines into arcs)',
    ],
    [
      'badge.dxf',
      'crossed',
      'badge.dxf: layer crossed crosses itself near 10, 0 mm; draw one closed outline that does not',
    ],
    [
      'badge.dxf',
      'mirrored',
      'badge.dxf: the LWPOLYLINE in line 352 is drawn mirrored, on the back of its plane; draw it on the XY plane, seen from above',
    ],
    ['badge.dxf', 'flat', 'badge.dxf: layer flat has no area; draw one closed outline'],
    [
      'badge.dxf',
      'paper',
      'badge.dxf: no layer with anything on it is called paper; write light, old, chain, hole, open, fork, two, bent, crossed, mirrored, flat or words',
    ],
    [
      'badge.dxf',
      'words',
      'badge.dxf: layer words holds no line, arc, polyline or circle; draw the outline on it',
    ],
    [
      'badge.dxf',
      'lihgt',
      'badge.dxf: no layer with anything on it is called lihgt; did you mean light?',
    ],
    [
      'unitless.dxf',
      'hole',
      'unitless.dxf: it does not say its units ($INSUNITS); write units: mm, or units: inch',
    ],
    [
      'badge.svg',
      'oval',
      'badge.svg: the ellipse in line 13: it is an ellipse; draw it with circular arcs',
    ],
    [
      'badge.svg',
      'oval arc',
      'badge.svg: the path in line 14: it has an arc of radii 4 and 5, which is no circle; draw it with circular arcs',
    ],
    [
      'badge.svg',
      'many',
      'badge.svg: element many holds more than one outline: the path in line 16 is closed by itself, and so the path in line 16 is one too many; give each outline its own name',
    ],
    [
      'badge.svg',
      'half',
      'badge.svg: element half is not closed: the path in line 17 ends at 4.5, 75.5 mm, and nothing begins within 0.01 mm of there; close the outline, or give each outline its own name',
    ],
    [
      'badge.svg',
      'torn',
      'badge.svg: the path in line 18: its path cannot be read at "x"; save the drawing again',
    ],
    [
      'badge.svg',
      'squeezed',
      'badge.svg: the circle in line 19 is stretched or skewed by a transform, so its arcs are no circles any more; apply the transform in the drawing program, and draw circular arcs',
    ],
    [
      'badge.svg',
      'turned wrong',
      'badge.svg: the circle in line 20 has the transform spin(4), which cannot be read; apply the transform in the drawing program',
    ],
    [
      'badge.svg',
      'words',
      'badge.svg: the text in line 21: it is a text; turn it into a path in the drawing program',
    ],
    [
      'badge.svg',
      'twin',
      'badge.svg: the rect in line 22 and the rect in line 23 are both called twin; give each its own id',
    ],
    [
      'badge.svg',
      'aside',
      'badge.svg: nothing in it has the id aside; write badge, layer, moved, hole, wedge, plate, oval, oval arc, bent, many, half, torn, squeezed, turned wrong or twin',
    ],
    [
      'pixels.svg',
      'hole',
      'pixels.svg: its width and height are not in mm, cm or in, so its size is not known; set the size of the page in mm',
    ],
  ])('%s, %s: is refused with what to do', (file, named, ...expected) => {
    expect(said(file, named)).toEqual(expected);
  });

  it('keeps to the units that the drawing says', () => {
    expect(said('badge.dxf', 'hole', 'inch')).toEqual([
      'badge.dxf: the job says units: inch, and the drawing says otherwise ($INSUNITS 4); take out units',
    ]);
    expect(said('badge.svg', 'hole', 'mm')).toEqual([
      'badge.svg: an SVG drawing says its own units; take out units',
    ]);
    expect(said('badge.dxf', 'hole', 'mm')).toEqual([]);
  });

  it('is refused of other files, of pictures and of what is cut short', () => {
    const of = (file: string, text: string) => {
      const found = outlineIn(file, new TextEncoder().encode(text), 'a', 'mm');
      return found.ok ? [] : found.faults.map(({ message, instead }) => `${message}; ${instead}`);
    };
    expect(of('part.step', '')).toEqual([
      'part.step is neither a .dxf nor a .svg file; save the drawing as one',
    ]);
    expect(of('a.dxf', 'AutoCAD Binary DXF\r\n\u001a\u0000')).toEqual([
      'a.dxf cannot be read: line 2: the file holds the byte 26, so it is not text; save it as a text DXF or SVG',
    ]);
    expect(of('a.dxf', '0\nSECTION\n2\nENTITIES\n')).toEqual([
      'a.dxf: the file ends without EOF, so it is cut short; save the drawing again',
    ]);
    expect(of('a.dxf', 'solid cube\nfacet')).toEqual([
      'a.dxf: line 1 should hold a group code and holds solid cube; save the drawing as a text (ASCII) DXF',
    ]);
  });

  it('reads polylines that count their corners, and one that is cut short, where parsers fail', () => {
    // Both found by running a parser: group 91 behind each corner lost corners, a POLYLINE without a
    // VERTEX never ended.
    const short = '0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\na\n70\n1\n0\nENDSEC\n0\nEOF\n';
    const found = outlineIn('a.dxf', new TextEncoder().encode(short), 'a', 'mm');
    expect(found.ok ? [] : found.faults.map(({ message }) => message)).toEqual([
      'a.dxf: the POLYLINE in line 6 has fewer than two corners',
    ]);
  });
});

describe('whatever drawing is handed in', () => {
  const answers = (file: string, bytes: Uint8Array, named: string): void => {
    const found = outlineIn(file, bytes, named, null);
    if (found.ok) expect(pathAreaMm2(found.value.path)).toBeGreaterThan(0);
    else
      for (const { message } of found.faults)
        expect(message).not.toMatch(/undefined|\[object|null/);
  };

  it('any bytes are an outline or faults, never an exception', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), fc.boolean(), (bytes, isDxf) => {
        answers(isDxf ? 'a.dxf' : 'a.svg', bytes, 'a');
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('a sound drawing with any one piece of it written otherwise is', () => {
    const files = [
      { file: 'badge.dxf', cut: /(?<=\n)/, names: ['light', 'old', 'chain', 'hole'] },
      {
        file: 'badge.svg',
        cut: /(?<=[\s"=<>,])/,
        names: ['badge', 'moved', 'hole', 'bent', 'wedge'],
      },
    ].map(({ file, cut, names }) => ({
      file,
      names,
      pieces: new TextDecoder().decode(bytesOf(file)).split(cut),
    }));
    const stray = fc.oneof(
      fc.constantFrom(
        '',
        '0\n',
        '-1',
        '1e308',
        'NaN',
        '\n',
        '"',
        '<',
        '>',
        '<g>',
        '</g>',
        '/>',
        '0\nEOF\n',
      ),
      fc.constantFrom(
        'M',
        'a1 1 0 1 1 0 0',
        'z',
        'matrix(0 0 0 0 0 0)',
        '1e-320',
        '10\n',
        '42\n1e300\n',
      ),
      fc.string({ maxLength: 5 }),
    );
    fc.assert(
      fc.property(fc.nat(), fc.nat(), fc.nat(), stray, (which, at, name, piece) => {
        const { file, names, pieces } = files[which % 2]!;
        const changed = pieces.with(at % pieces.length, piece).join('');
        answers(file, new TextEncoder().encode(changed), names[name % names.length]!);
      }),
      { seed: 2, numRuns: 3000 },
    );
  });
});

describe('a job with a drawing', () => {
  const drawn = (words: string) =>
    otherwise(JOB, 'circle: 80, at: [100, 60], depth: 6', `outline: {${words}}, depth: 6`);
  const answer = (job: string) => {
    const file = { name: 'jobs/job.yaml', bytes: new TextEncoder().encode(job) };
    const files = new Map<string, Uint8Array>([['shop.yaml', new TextEncoder().encode(SHOP)]]);
    for (const name of filesNamedBy(file))
      if (name.startsWith('badge')) files.set(name, bytesOf(name));
    return readJob(file, files);
  };
  const apart = (words: string) =>
    otherwise(drawn(words), 'concentric: [dish, foot]', 'misalignment: [100, 60]');

  it('names it among its files', () => {
    const file = {
      name: 'job.yaml',
      bytes: new TextEncoder().encode(drawn('drawing: badge.dxf, named: light')),
    };
    expect(filesNamedBy(file)).toEqual(['shop.yaml', 'shop.measured.yaml', 'badge.dxf']);
  });

  it('has the outline where it stands in the drawing, or with its origin at a place', () => {
    const read = answer(apart('drawing: badge.dxf, named: hole'));
    expect(read.ok && read.value.job.features[0]).toMatchObject({
      at: { x: 0, y: 0 },
      shape: {
        kind: 'outline',
        path: [{ at: { x: 37.5, y: 20 }, bulge: 1 }, { at: { x: 22.5, y: 20 } }],
      },
    });
    const placed = answer(
      otherwise(
        apart('drawing: badge.dxf, named: hole'),
        '}, depth: 6',
        '}, at: [50, 60], depth: 6',
      ),
    );
    expect(placed.ok && placed.value.job.features[0]).toMatchObject({ at: { x: 50, y: 60 } });
  });

  it('tells a curve that is not kept', () => {
    const read = answer(apart('drawing: badge.svg, named: bent'));
    expect(
      read.ok &&
        read.value.notes.map(({ line, column, message }) => `${line}:${column} ${message}`),
    ).toEqual([
      '8:55 badge.svg: a curve of bent is read as straight pieces at most 0.001 mm off; arcs and lines are kept as they are',
    ]);
  });

  it.each([
    [
      'drawing: lid.dxf, named: hole',
      'jobs/job.yaml:8:37: the drawing lid.dxf is not there; write its place from this file',
    ],
    [
      'drawing: badge.dxf, named: flat',
      'jobs/job.yaml:8:55: badge.dxf: layer flat has no area; draw one closed outline',
    ],
    [
      'drawing: badge.dxf',
      'jobs/job.yaml:8:27: outline: named is missing; write named: rebate, the layer or id',
    ],
    [
      'drawing: badge.dxf, named: hole, units: cm',
      'jobs/job.yaml:8:68: units cm is not known; write mm or inch',
    ],
  ])('with {%s} is refused', (words, expected) => {
    const read = answer(apart(words));
    expect(read.ok ? [] : read.faults.map(faultText)).toEqual([expected]);
  });

  it('is told when the outline does not fit', () => {
    const job = otherwise(
      apart('drawing: badge.dxf, named: light'),
      '}, depth: 6',
      '}, at: [150, 60], depth: 6',
    );
    const read = answer(job);
    expect(read.ok ? [] : read.faults.map(faultText)).toEqual([
      'jobs/job.yaml:8:68: dish reaches x = 210 mm, and the blank spans 0 to 200 mm; move it, or make it smaller',
    ]);
  });
});
