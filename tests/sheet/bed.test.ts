import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TakeUp, Turn } from '../../src/job/job.ts';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import { fenceAlone } from '../../src/jig/fence-job.ts';
import { bodiesOf, stopsOf } from '../../src/jig/stops.ts';
import { clearancesInBed } from '../../src/sheet/locating/way-of.ts';
import { bedTrouble } from '../../src/sheet/locating/bed-trouble.ts';
import { nestShape } from '../../src/jig/nest/nest-shape.ts';
import type { BedInput } from '../../src/sheet/sheet-input.ts';
import { clock, flat3, flat6, paper } from './a-job.ts';
import {
  atFence,
  aNest,
  base,
  bedInputFor,
  bedJobs,
  holes,
  offMiddle,
  onLine,
  roundBlank,
  roundPart,
} from './bed-jobs.ts';

/** What a reader sees: no markup, no style. */
const seen = (job: BedInput['job']): string =>
  benchSheet(bedInputFor(job))
    .replace(/<style>[^]*?<\/style>/g, '')
    .replace(/<br\/>/g, ', ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#39;/g, "'")
    .replace(/[\s\u00a0]+/g, ' ');

const workOf = (job: BedInput['job']): string => seen(job).split('At the machine')[1]!;

/** In this order, each after the one before. */
function expectInOrder(words: string, parts: readonly string[]): void {
  let from = 0;
  for (const part of parts) {
    const at = words.indexOf(part, from);
    expect(at, `${part} after ${words.slice(Math.max(0, from - 60), from)}`).toBeGreaterThanOrEqual(
      0,
    );
    from = at + part.length;
  }
}

/** Every `X 12 mm, Y 3 mm` of a text. */
const places = (words: string): [number, number][] =>
  [...words.matchAll(/X (\u2212?[\d.]+) mm, Y (\u2212?[\d.]+) mm/g)].map(([, x, y]) => [
    Number(x!.replace('\u2212', '-')),
    Number(y!.replace('\u2212', '-')),
  ]);

/** Cells of the table of dowels, row by row. */
function tableOf(job: BedInput['job']): string[][] {
  const page = benchSheet(bedInputFor(job));
  const table = /<table class="milling">[^]*?<\/table>/g;
  const found = [...page.matchAll(table)]
    .map(([one]) => one)
    .find((one) => one.includes('Hole in the blank'))!;
  return found
    .split('<tr>')
    .slice(2)
    .map((row) =>
      [...row.matchAll(/<t[hd][^>]*>([^]*?)<\/t[hd]>/g)].map(([, cell]) =>
        cell!
          .replace(/<br\/>/g, ', ')
          .replace(/<[^>]*>/g, '')
          .replace(/\u00a0/g, ' '),
      ),
    );
}

describe('any job that is located by what is made in the bed', () => {
  it('has a whole sheet without a word of stops', () => {
    for (const [name, job] of Object.entries(bedJobs)) {
      const page = benchSheet(bedInputFor(job));
      expect(page, name).not.toMatch(/NaN|undefined|Infinity|\[object/);
      expect(seen(job), name).not.toMatch(/side stop|the stops|every stop|a stop\b/);
      expect(page).toBe(benchSheet(structuredClone(bedInputFor(job))));
    }
  });

  it('has nothing but inches in an inch shop', () => {
    const job = bedJobs['four dowels, inch, about X']!;
    expect(seen(job).match(/.{30}\d ?mm\b.{10}/g)).toBeNull();
  });
});

describe('dowels drilled with the blank', () => {
  it('are drilled in the first clamping, tapped in between, and the blank put on them after the turn', () => {
    expectInOrder(workOf(onLine), [
      'Have 2 dowels',
      'First placing: front up',
      'no insert, screw, nail or slot',
      'Lay the blank down',
      'Tighten the clamps',
      "X and Y zero on the blank's edges",
      'Drill the holes now, before any cut',
      'Do not loosen a clamp',
      'put the first cutter back in',
      'Z zero:',
      'Cut 1 dial recess',
      'take the blank out',
      'Turn over',
      'Tap the 2 dowels in',
      'raise the cutter well above',
      'Turn the blank over',
      'Second placing: back up',
      'hole 1 over dowel 1, hole 2 over dowel 2',
      'Never hammer or force it',
      'Cut 3 movement pocket',
      'lift the blank straight up off its dowels',
    ]);
  });

  // 24 thick, 1.5 x 6 = 9 below 12 into the bed, the point 2 above 8: 36 deep, 10 high, 22 long, 38 to reach.
  it('go as deep and stand as high as worked out by hand', () => {
    expect(workOf(onLine)).toContain('12 mm into the bed: 36 mm in all below');
    expect(workOf(onLine)).toContain('6 mm thick and 22 mm long');
    expect(workOf(onLine)).toContain('hangs 38 mm or more out of its nut');
    expect(workOf(onLine)).toContain('until each stands 10 mm above the bed');
  });

  // A pocket 18 deep over the dowel leaves 6; the dowel stays 2 below it.
  it('stand lower where a cutter passes low over them, and say so when that is not enough', () => {
    const over = (depthMm: number): BedInput['job'] => ({
      ...onLine,
      features: [{ ...clock.features[2]!, at: { x: 140, y: 20 }, depthMm }],
    });
    expect(workOf(over(18))).toContain('until each stands 4 mm above the bed');
    expect(seen(over(18))).not.toContain('STRIKES');
    expect(seen(over(21))).toContain('STRIKES');
    expect(seen(over(21))).toContain('Do not run this job as it stands');
    expect(bedTrouble(over(18))).toEqual([]);
    // 24 - 21 = 3 above the bed, the dowel 4.
    expect(bedTrouble(over(21))).toContain(
      'the cutter passes 1 mm too low over dowel 1, back up, while movement pocket is cut',
    );
    // In the first placing they do not stand there yet.
    const front = {
      ...onLine,
      features: over(21).features.map((f) => ({ ...f, face: 'front' as const })),
    };
    expect(seen(front)).not.toContain('STRIKES');
  });

  // Inserts at [50 + 100 i, 50 + 75 k]; the corner is at [40, 40], so blank [110, 85] is over the one at [150, 125].
  it('are not to be drilled into a metal insert', () => {
    const clash = {
      ...onLine,
      dowels: {
        ...holes,
        at: [
          { x: 110, y: 85 },
          { x: 110, y: 160 },
        ],
      },
    };
    expect(seen(clash)).toContain(
      'Do not drill as it stands: hole 1 in the bed, at X 150 mm, Y 125 mm, runs into the metal insert at X 150 mm, Y 125 mm',
    );
    expect(seen(onLine)).not.toContain('Do not drill as it stands');
  });

  it('ask for fresh wood before the next blank, when there is one', () => {
    const many = { ...onLine, parts: { count: 5, order: 'each-in-turn' as const } };
    expect(workOf(many)).toContain('Before the next of the 5 blanks');
    expect(workOf(onLine)).not.toContain('Before the next');
  });
});

describe('the table of dowels', () => {
  const place = (max: number): fc.Arbitrary<number> => fc.integer({ min: 10, max: max - 10 });
  const jobs = fc.record({
    x: place(280),
    y: place(180),
    other: place(180),
    half: fc.integer({ min: 0, max: 60 }),
    turn: fc.constantFrom<Turn>('about-x', 'about-y'),
    first: fc.constantFrom<'front' | 'back'>('front', 'back'),
    drilled: fc.constantFrom<'with-the-blank' | 'separately'>('with-the-blank', 'separately'),
    takeUp: fc.constantFrom<TakeUp>('anywhere', 'left', 'near'),
  });
  // By hand: turned about its line c, a place x of the blank comes to 2c - x; the front-up corner is [0, 0] there and [40, 40] on the bed.
  it('is true for random pairs on or about the turn line, whichever face is first', () => {
    fc.assert(
      fc.property(jobs, ({ x, y, other, half, turn, first, drilled, takeUp }) => {
        const axis = turn === 'about-y' ? 'x' : 'y';
        const [c, size] = axis === 'x' ? [x, 280] : [y, 180];
        const d = Math.min(half, c - 5, size - 5 - c);
        fc.pre(d === 0 ? Math.abs(other - y) > 9 && axis === 'x' : d > 6);
        const at =
          d === 0
            ? [
                { x, y },
                { x, y: other },
              ]
            : [
                { x, y, [axis]: c - d },
                { x, y, [axis]: c + d },
              ];
        const xy = { kind: 'edges', at: null, tool: paper } as const;
        const zeros = { ...base.zero.frontUp, xy };
        const kept = base.zero.backUp;
        const job: BedInput['job'] = {
          ...onLine,
          turn,
          first,
          dowels: { ...holes, at, drilled, takeUp },
          zero:
            first === 'front' ? { frontUp: zeros, backUp: kept } : { frontUp: kept, backUp: zeros },
        };
        const turnedOver = (p: { x: number; y: number }): [number, number] =>
          axis === 'x' ? [2 * c - p.x, p.y] : [p.x, 2 * c - p.y];
        const inLayout = (p: { x: number; y: number }, faceUp: string): [number, number] =>
          faceUp === 'front' ? [p.x, p.y] : turnedOver(p);
        // Zero is the near-left corner of the blank as it lies in the first placing.
        const corner =
          first === 'front' ? { x: 0, y: 0 } : axis === 'x' ? { x: 280, y: 0 } : { x: 0, y: 180 };
        const [zx, zy] = inLayout(corner, first);
        const second = first === 'front' ? 'back' : 'front';
        const rows = tableOf(job);
        expect(rows).toHaveLength(2);
        rows.forEach((cells, k) => {
          const [sx, sy] = inLayout(at[k]!, first);
          const over = at.findIndex(
            (p) => Math.hypot(inLayout(p, second)[0] - sx, inLayout(p, second)[1] - sy) < 0.01,
          );
          expect(cells[0]).toBe(String(k + 1));
          expect(places(cells[1]!)).toEqual([[at[k]!.x, at[k]!.y]]);
          if (drilled === 'separately') {
            expect(places(cells[2]!)).toEqual([[sx, sy]]);
            expect(cells[3]).toBe(`hole ${k + 1}`);
            expect(cells[4]).toBe(`hole ${over + 1}`);
          } else {
            expect(places(cells[2]!)).toEqual([[sx - zx, sy - zy]]);
            expect(places(cells[3]!)).toEqual([[sx - zx, sy - zy]]);
            expect(cells[4]).toBe(`hole ${over + 1}`);
          }
          expect(places(cells[5]!)).toEqual([[sx + 40, sy + 40]]);
        });
        const [, firstWork, secondWork] = workOf(job).split(/First placing:|Second placing:/);
        // The M is at the lower-left corner of the wood, [0, 0].
        const [fx, fy] = inLayout({ x: 0, y: 0 }, first);
        const [mx, my] = inLayout({ x: 0, y: 0 }, second);
        const jog = (words: string): [number, number] =>
          places(words.split('everything: jog to')[1]!)[0]!;
        expect(jog(firstWork!)).toEqual([fx - zx, fy - zy]);
        expect(jog(secondWork!)).toEqual([mx - zx, my - zy]);
        const pushed = {
          anywhere: 'it may lie anywhere in it',
          left: 'Push the blank to the left',
          near: 'Push the blank towards you',
        };
        expect(secondWork).toContain(pushed[takeUp as 'left']);
      }),
      { seed: 3, numRuns: 12 },
    );
  });
});

describe('dowels drilled separately', () => {
  it('are made before the first blank is laid, and hold it both times', () => {
    expectInOrder(workOf(offMiddle), [
      'First placing: back up',
      'Drill the bed',
      'From now on do not touch X and Y zero',
      'Tap the 2 dowels in',
      'Drill the blank apart from the bed',
      'each within ±0.1 mm along X',
      'hole 1 over dowel 1',
      'Push the blank to the left',
      'Turn over',
      'Second placing: front up',
      'hole 2 over dowel 1, hole 1 over dowel 2',
      'Push the blank to the left',
    ]);
    expect(workOf(offMiddle)).not.toContain('Drill the holes now');
    expect(workOf(offMiddle)).toContain('dowels of 7.98 mm ±0.01 mm in holes of 8.05 mm ±0.02 mm');
  });

  // The line is at 130, the middle at 140: with the back up the blank lies from -20 to 260, and zero is 20 inside it.
  it('tell places from the blank as it really lies', () => {
    const [, first, second] = workOf(offMiddle).split(/First placing:|Second placing:/);
    expect(first).toContain(
      'the place 20 mm from the left side of the blank as it lies, level with the near side',
    );
    expect(first).toContain(
      'touch Z of the picture, 120 mm from the left side of the blank as it will lie',
    );
    expect(second).toContain('the near-left corner of the blank');
  });
});

describe('a nest', () => {
  it('round the blank is cut first, round the part between the placings', () => {
    expectInOrder(workOf(roundBlank), [
      'First placing',
      'Cut the nest',
      'Relieve the inside corners',
      'Try the blank in it',
      'nest and zero now belong together',
      "touch the nest's floor",
      'Lower the blank level into the nest',
      'Push the blank towards you',
      'The nest holds nothing down',
      'Second placing',
      'Lower the blank level into the nest',
    ]);
    expectInOrder(workOf(roundPart), [
      'inside body outline, which becomes the part',
      'First placing',
      'Lay the blank down',
      'Cut 4 body outline',
      'sets a piece free',
      'Turn over',
      'Turn the part over',
      'Second placing',
      'the nest is cut from the zero of the first placing',
      'Cut the nest',
      'mirrored',
      'Lower the part level into the nest',
      'the edge of the part beside the M',
    ]);
    expect(workOf(roundBlank).match(/Cut the nest/g)).toHaveLength(1);
  });

  // 280 + 2 x 0.1 wide, cutter 6: its centre runs from 3 - 0.1 = 2.9 to 280 + 0.1 - 3 = 277.1.
  it('round the blank has its runs and reliefs worked out by hand', () => {
    expect(workOf(roundBlank)).toContain('near wall Y 3.2 mm Y 2.9 mm X 2.9 mm → 277.1 mm');
    expect(workOf(roundBlank)).toContain('right wall X 276.8 mm X 277.1 mm Y 2.9 mm → 177.1 mm');
    // From the corner (3 - 0.1 - 0.5) / root 2 = 1.697 in along each side.
    expect(workOf(roundBlank)).toContain('X 1.7 mm, Y 1.7 mm; X 278.3 mm, Y 1.7 mm');
  });

  // The part spans 30..230 by 15..155 in the blank; turned about Y 280 - 230 = 50 to 250; 0.1 wider.
  it('round the part spans what the part does when it is turned over', () => {
    expect(workOf(roundPart)).toContain('spans X 49.9 mm to 250.1 mm and Y 14.9 mm to 155.1 mm');
    // By the M the cutter stands over the arc of 2 mm about [32, 17], which lies at 280 - 32 now.
    const jog = workOf(roundPart).split('Second placing')[1]!.split('everything: jog to')[1]!;
    const [x, y] = places(jog)[0]!;
    expect(Math.hypot(x - 248, y - 17)).toBeCloseTo(2, 1);
    expect(x).toBeGreaterThan(248);
    expect(y).toBeLessThan(17);
  });

  // Brute force: whatever part of the wall the round cutter cannot reach must be cleared by a relief.
  it('leaves no inside corner that the piece cannot enter', () => {
    fc.assert(
      fc.property(
        fc.record({
          w: fc.integer({ min: 40, max: 200 }),
          h: fc.integer({ min: 40, max: 140 }),
          round: fc.double({ min: 0, max: 5, noNaN: true }),
          cutter: fc.constantFrom(flat3, flat6),
          turnedRad: fc.constantFrom(0, 0.3),
        }),
        ({ w, h, round, cutter, turnedRad }) => {
          const body = {
            ...roundPart.features[3]!,
            shape: { kind: 'rectangle', widthMm: w, heightMm: h, cornerRadiusMm: round } as const,
            turnedRad,
          };
          const job = {
            ...roundPart,
            features: [body],
            nest: { ...aNest, around: body.name, cutter },
          };
          const { placings } = bedInputFor(job);
          const { reliefs } = nestShape(job, job.nest, placings.backUp);
          const r = cutter.diameterMm / 2;
          // In the part's own frame: the centre runs on a rectangle, gap and radius inside.
          const [a, b] = [w / 2 + 0.1 - r, h / 2 + 0.1 - r];
          const cos = Math.cos(turnedRad),
            sin = Math.sin(turnedRad);
          const own = reliefs.map(({ x, y }) => {
            const [dx, dy] = [280 - x - 130, y - 85];
            return { x: cos * dx + sin * dy, y: cos * dy - sin * dx };
          });
          for (let k = 0; k < 200; k++) {
            const t = (k / 200) * 2 * Math.PI;
            // The outermost place of the rounded rectangle in each direction, and its corner arcs.
            const [sx, sy] = [Math.sign(Math.cos(t)) || 1, Math.sign(Math.sin(t)) || 1];
            const p = {
              x: sx * (w / 2 - round) + round * Math.cos(t),
              y: sy * (h / 2 - round) + round * Math.sin(t),
            };
            const out = Math.hypot(Math.max(0, Math.abs(p.x) - a), Math.max(0, Math.abs(p.y) - b));
            const reached =
              out <= r + 1e-9 || own.some((c) => Math.hypot(c.x - p.x, c.y - p.y) <= r);
            expect(reached, `${w} x ${h}, corners ${round}, at ${p.x}, ${p.y}`).toBe(true);
          }
        },
      ),
      { seed: 5, numRuns: 20 },
    );
  });
});

describe('a fence and a dowel', () => {
  it('shows the fence that is printed as it is made, screws and all, in place of a bar', () => {
    const job = { ...atFence, onBed: { ...atFence.onBed, value: { x: 100, y: 90 } } };
    const input = bedInputFor(job);
    const answer = stopsOf(fenceAlone(job)!, input.placings);
    if (answer.kind === 'cannot') throw new Error(`${answer.because}; ${answer.wouldFit}`);
    const [stop] = answer.parts;
    const page = benchSheet({
      ...input,
      clearances: clearancesInBed(job, input.placings, answer.parts.flatMap(bodiesOf)),
      printedFence: { stop: stop!, picture: '<svg></svg>', fileName: 'fence-stop-near.stl' },
    });
    expect(page).toContain('<b>fence-stop-near.stl</b>');
    expect(page).not.toContain('Make the fence');
    expect(page).toContain('<figcaption>A</figcaption><svg></svg>');
    // What passes over it is told of the very part: its name stands in the table of heights.
    expect(page).toContain('fence stop, near');
  });

  it('are set, drilled with the blank at the fence, and both used after the turn', () => {
    expectInOrder(workOf(atFence), [
      'Make the fence',
      'Have a dowel',
      'File two flats',
      'near and far',
      'Mill the face of the fence',
      'press its lower edge against the fence',
      'Drill the hole now',
      'Tap the dowel in',
      'hole 1 over dowel 1',
      'Press its lower edge against the fence, and keep it pressed',
    ]);
  });

  // Lands 10 wide round 30 and 240, cutter 6: 3 past each end, 3 off the face, climbing to the right along the near side.
  it('has the runs of its milling worked out by hand', () => {
    expect(workOf(atFence)).toContain('A fence Y 3.3 mm Y 3 mm X 22 mm → 38 mm 10 mm to 14 mm');
    expect(workOf(atFence)).toContain('X 232 mm → 248 mm');
  });
});
