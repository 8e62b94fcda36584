import { describe, expect, it } from 'vitest';
import type { StopPart, StopsAnswer } from '../../src/jig/stop-part.ts';
import { bodiesOf, stopsOf } from '../../src/jig/stops.ts';
import type { Cutter, StopsJob, Stops } from '../../src/job/job.ts';
import { boundsOf } from '../../src/plane/measure.ts';
import { aFeature, aJob, long6, placed, plainBed, type Wish } from './a-job.ts';

const answer = (wish: Partial<Wish>): StopsAnswer => stopsOf(...both(aJob(wish)));
const both = (job: StopsJob): [StopsJob, ReturnType<typeof placed>] => [job, placed(job)];

function parts(wish: Partial<Wish>): readonly StopPart[] {
  const found = answer(wish);
  if (found.kind === 'cannot') throw new Error(`${found.because}; ${found.wouldFit}`);
  return found.parts;
}

function refusal(wish: Partial<Wish>): { because: string; wouldFit: string } {
  const found = answer(wish);
  if (found.kind === 'made') throw new Error('a stop was made');
  return { because: found.because, wouldFit: found.wouldFit };
}

const twoCorners: Wish['stops'] = { corner: { frontUp: 'near-left', backUp: 'near-right' } };
const narrow: Wish['stops'] = { band: { kind: 'narrow', touchHeightMm: 12 } };

describe('which pieces there are', () => {
  it('one where both placings use the same corner, with every contact on it', () => {
    const [part, ...others] = parts({});
    expect(others).toEqual([]);
    expect(part!.name).toBe('corner stop, near left');
    expect(part!.lands.map((land) => land.contacts)).toEqual([
      ['fence-1'],
      ['fence-2'],
      ['side-1'],
    ]);
  });

  it('two where the corners differ, each with the fence contact nearer to it', () => {
    const found = parts({ stops: twoCorners });
    expect(found.map((part) => [part.name, part.lands.flatMap((land) => land.contacts)])).toEqual([
      ['corner stop, near left', ['fence-1', 'side-1']],
      ['corner stop, near right', ['fence-2', 'side2-1']],
    ]);
  });

  it('still two when both fence contacts are near one corner', () => {
    const found = parts({
      stops: { ...twoCorners, fenceTouch: { kind: 'buttons', atMm: [30, 110] } },
    });
    expect(found.map((part) => part.lands.flatMap((land) => land.contacts))).toEqual([
      ['fence-1', 'fence-2', 'side-1'],
      ['side2-1'],
    ]);
  });

  it('two, mirror images of each other, when everything else is', () => {
    const [left, right] = parts({ stops: { ...twoCorners, ...narrow }, inserts: null });
    const mirrored = right!.body.outline.map((p) => ({ x: 280 - p.x, y: p.y }));
    for (const p of left!.body.outline)
      expect(Math.min(...mirrored.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))).toBeLessThan(1e-9);
    expect(left!.towardsBlank).toEqual({ x: 1, y: 1 });
    expect(right!.towardsBlank).toEqual({ x: -1, y: 1 });
  });
});

describe('where a stop touches', () => {
  it('on flats 10 wide about a button, between the ends of an arm', () => {
    const [part] = parts({ stops: { sideTouch: { kind: 'arm', fromMm: 20, toMm: 100 } } });
    expect(part!.lands.map((land) => land.ends)).toEqual([
      [
        { x: 25, y: 0 },
        { x: 35, y: 0 },
      ],
      [
        { x: 245, y: 0 },
        { x: 255, y: 0 },
      ],
      [
        { x: 0, y: 20 },
        { x: 0, y: 100 },
      ],
    ]);
  });

  it('from above the chip relief (3.5) to its top, when it is plain', () => {
    const [part] = parts({});
    expect(part!.band).toEqual({ lowMm: 3.5, highMm: 8 });
    expect(part!.body.highMm).toBe(8);
  });

  it('in a band 4 high about the touch height, when it is narrow, with a rim of 2 above', () => {
    const [part] = parts({ stops: narrow });
    expect(part!.band).toEqual({ lowMm: 10, highMm: 14 });
    expect(part!.body.highMm).toBe(16);
  });

  it('after 1.5 are milled off, when it is milled in place; else as it is', () => {
    const [milled] = parts({ made: 'milled-in-place', stops: narrow });
    expect(milled!.allowanceMm).toBe(1.5);
    expect(milled!.milledWith).toBe('flat 6');
    expect(milled!.notes.join(' ')).toContain('Mill 1.5 mm off its faces');
    expect(parts({})[0]!.allowanceMm).toBe(0);
  });
});

describe('how a stop is held', () => {
  it('by screws in inserts of the bed, whose places it names on the bed', () => {
    for (const screw of parts({})[0]!.screws) {
      expect(screw.onBed).toEqual({
        x: 25 + 50 * screw.insert!.column,
        y: 25 + 50 * screw.insert!.row,
      });
      expect(screw.at).toEqual({ x: screw.onBed.x - 50, y: screw.onBed.y - 50 });
    }
  });

  it('set by hand: one round hole to turn about, slots across the line from it', () => {
    const [pivot, ...others] = parts({})[0]!.screws;
    expect(pivot!.at).toEqual({ x: -25, y: -25 });
    expect(pivot!.hole).toEqual({ kind: 'round' });
    for (const { at, hole } of others)
      expect(hole).toEqual({ kind: 'slot', along: at.y === -25 ? 'y' : 'x', travelMm: 3 });
    expect(others.length).toBeGreaterThan(1);
  });

  it('milled in place: round holes only, for nothing is to be moved', () => {
    for (const part of parts({ made: 'milled-in-place', stops: twoCorners }))
      expect(part.screws.every((screw) => screw.hole.kind === 'round')).toBe(true);
  });

  it('on pins: two of 6 mm besides the screws, well apart, clear of them', () => {
    for (const part of parts({ made: 'on-bed-pins', stops: twoCorners })) {
      expect(part.pins.map((pin) => pin.diameterMm)).toEqual([6, 6]);
      const [a, b] = part.pins;
      expect(Math.hypot(a!.at.x - b!.at.x, a!.at.y - b!.at.y)).toBeGreaterThan(60);
      for (const pin of part.pins)
        for (const screw of part.screws)
          expect(Math.hypot(pin.at.x - screw.at.x, pin.at.y - screw.at.y)).toBeGreaterThan(
            5.75 + 3 + 2.4,
          );
    }
  });

  it('leaves 5 under each head, and says how far heads stand above a low stop', () => {
    const [low] = parts({});
    // 8 high: seat 3 deep; head 6 and washer 1.6 stand 4.6 above the top.
    expect(low!.screws[0]!.counterboreMm).toBe(3);
    expect(low!.heads.map((head) => head.highMm)).toEqual(low!.screws.map(() => 12.6));
    expect(bodiesOf(low!)).toHaveLength(1 + low!.screws.length);
    const [high] = parts({ made: 'milled-in-place', stops: narrow });
    // 16 high: head 6 sunk, half a mm below the top.
    expect(high!.screws[0]!.counterboreMm).toBe(6.5);
    expect(high!.heads).toEqual([]);
  });

  it('reaches for a line of inserts 32 outside the face, wide enough for wall round them', () => {
    const [part] = parts({ onBed: { x: 57, y: 57 } });
    expect(boundsOf(part!.body.outline).lowY).toBeCloseTo(-32 - 12.3, 9);
  });

  it('asks for one more insert only where an arm would yield too far, and says where', () => {
    const far = { ...plainBed!, pitchMm: { x: 50, y: 300 } };
    const [part] = parts({ inserts: far, made: 'milled-in-place' });
    const added = part!.screws.filter((screw) => screw.insert === null);
    expect(added).toHaveLength(1);
    expect(added[0]!.at.y).toBe(90);
    expect(part!.notes.join(' ')).toContain(
      'The bed has no insert at [37.7, 140.0] mm: put one in there',
    );
    expect(parts({})[0]!.screws.every((screw) => screw.insert !== null)).toBe(true);
  });
});

describe('what a stop says of itself', () => {
  it('has mm after every number', () => {
    const far = { ...plainBed!, pitchMm: { x: 50, y: 300 } };
    const all = [
      ...parts({ inserts: far, made: 'milled-in-place' }),
      ...parts({ stops: { sideTouch: { kind: 'arm', fromMm: 20, toMm: 170 } }, inserts: null }),
      ...parts({ made: 'on-bed-pins', stops: twoCorners }),
    ];
    const said = all
      .flatMap((part) => part.notes)
      .join('\n')
      .replaceAll('flat 6', 'the cutter');
    const numbers = [...said.matchAll(/\[\d+\.\d, \d+\.\d\]|[\d.]*\d/g)];
    expect(numbers.length).toBeGreaterThan(6);
    for (const { 0: number, index } of numbers)
      expect(said.slice(index).startsWith(`${number} mm`), said.slice(index, index + 40)).toBe(
        true,
      );
  });
});

describe('when no stop can be made', () => {
  it('no insert under it: names a place on the bed where there is one, and that place works', () => {
    const said = refusal({ onBed: { x: 75, y: 75 } });
    expect(said.because).toBe(
      'no insert of the bed lies where the corner stop, near left, can be screwed down',
    );
    const [x, y] = /^on-bed: \[(\d+), (\d+)\]$/.exec(said.wouldFit)!.slice(1).map(Number);
    const [part] = parts({ onBed: { x: x!, y: y! } });
    expect(part!.screws.every((screw) => screw.insert !== null)).toBe(true);
  });

  it('off the spoilboard: says by how much', () => {
    expect(refusal({ onBed: { x: 10, y: 10 }, inserts: null }).because).toBe(
      'the corner stop, near left, reaches 17.6 mm beyond the spoilboard',
    );
  });

  it('the dust shoe comes too low over it: says what, by how much, over what', () => {
    const outline = aFeature({
      name: 'outline',
      shape: { kind: 'rectangle', widthMm: 260, heightMm: 160, cornerRadiusMm: 5 },
      cut: 'profile-outside',
      through: true,
      depthMm: 24,
    });
    // The tip goes 0.5 below the bed, the shoe hangs 12 above it: 11.5. A rim ends at 16, so 6.5 are
    // missing; without its rim at 14, still 4.5.
    expect(refusal({ features: [outline], stops: narrow, made: 'milled-in-place' })).toEqual({
      because:
        'the dust shoe passes 11.5 mm above the bed over the corner stop, near left (top at 14 mm) while cutting outline: 4.5 mm too low, with 2 mm to be kept free',
      // No lower stop: at 9.5 or less its screw heads stand out above 9.5.
      wouldFit: 'dust-shoe: {from: 16.5} (hung higher, or the cutter sticking out 4.5 mm further)',
    });
  });

  it('leaves the rim off where the rim alone is in the way', () => {
    const outline = aFeature({
      shape: { kind: 'rectangle', widthMm: 260, heightMm: 160, cornerRadiusMm: 5 },
      cut: 'profile-outside',
      depthMm: 20,
    });
    // Tip at 4, shoe at 16: room for a top at 14, not at 16.
    const [part] = parts({ features: [outline], stops: narrow, made: 'milled-in-place' });
    expect(part!.body.highMm).toBe(14);
  });

  it.each([
    [
      'a button in the inside corner',
      { stops: { sideTouch: { kind: 'buttons', atMm: [6] } } },
      "the corner stop, near left, would touch from 1 mm off its corner (side-touch), inside the corner's relief",
      'side-touch: a button at 10 or more, or the end of an arm at 5 or more',
    ],
    [
      'a button in the inside corner at the other end of the fence, counted from the front-up corner',
      { stops: { ...twoCorners, fenceTouch: { kind: 'buttons', atMm: [30, 274] } } },
      "the corner stop, near right, would touch from 1 mm off its corner (fence-touch), inside the corner's relief",
      'fence-touch: a button at 270 or less, or the end of an arm at 275 or less',
    ],
    [
      'a band above the blank',
      { stops: { band: { kind: 'narrow', touchHeightMm: 22 } } },
      'a stop 24 mm high stands above a blank 24 mm thick, less 1 mm',
      'touch-height: 21 or less',
    ],
    [
      'two buttons at one spot',
      { stops: { fenceTouch: { kind: 'buttons', atMm: [30, 40] } } },
      'the corner stop, near left, has buttons only 10 mm apart (fence-touch)',
      'fence-touch: buttons at least 16.5 mm apart, or an arm',
    ],
    [
      'a plain stop too low for its relief',
      { stops: { band: { kind: 'plain', heightMm: 3 } } },
      'a stop 3 mm high leaves no face above its chip relief',
      'height: 4 or more',
    ],
    [
      'a stop above the blank',
      { stops: { band: { kind: 'plain', heightMm: 23.5 } } },
      'a stop 23.5 mm high stands above a blank 24 mm thick, less 1 mm',
      'height: 23 or less',
    ],
    [
      'a band on the bed',
      { size: [280, 180, 12], stops: { band: { kind: 'narrow', touchHeightMm: 2.5 } } },
      'touching from 0.5 mm to 4.5 mm above the bed leaves no chip relief below',
      'touch-height: 3 or more, or height (a plain stop) instead',
    ],
  ] as const)('%s', (_name, wish, because, wouldFit) => {
    expect(refusal(wish as Partial<Wish>)).toEqual({ because, wouldFit });
  });
});

describe('milling the faces in place', () => {
  const milledBy = (change: Partial<Cutter>, heightMm: number): StopsAnswer => {
    const job = aJob({
      size: [280, 180, 50],
      onBed: { x: 300, y: 300 },
      spoilboard: { xMm: 900, yMm: 900 },
      inserts: null,
      stops: { band: { kind: 'plain', heightMm } },
      made: 'milled-in-place',
    });
    const made: Stops['made'] = { kind: 'milled-in-place', cutter: { ...long6, ...change } };
    const milled = { ...job, stops: { ...job.stops, made } };
    return stopsOf(milled, placed(milled));
  };

  it('is refused when the flutes are shorter than the faces', () => {
    expect(milledBy({ fluteMm: 22 }, 40)).toMatchObject({
      kind: 'cannot',
      because:
        'the flutes of flat 6 are 22 mm long, and the faces of the corner stop, near left are to be milled over 36.5 mm',
    });
  });

  it('is refused when the nut would come down on the stop', () => {
    // The tip goes down to 3.5, the nut hangs 30 above it: 33.5, and the stop stands 40 high.
    expect(milledBy({}, 40)).toMatchObject({
      kind: 'cannot',
      because:
        'the collet nut is 33.5 mm above the bed while flat 6 mills the faces of the corner stop, near left (top at 40 mm): 8.5 mm too low',
    });
  });

  it('is fine for a stop that both can pass', () => {
    expect(milledBy({}, 30).kind).toBe('made');
  });
});

describe('room beside a stop', () => {
  const ring = (edgeMm: number): StopsAnswer => {
    // A profile round a block whose cutter passes `edgeMm` outside the blank's left edge, 20 deep.
    const profile = aFeature({
      name: 'outline',
      shape: { kind: 'rectangle', widthMm: 200, heightMm: 60, cornerRadiusMm: 0 },
      at: { x: 106 - edgeMm, y: 90 },
      cut: 'profile-outside',
      depthMm: 20,
    });
    return answer({ features: [profile] });
  };

  it('is kept: a cutter below the top of a stop must pass 1 mm beside it', () => {
    expect(ring(-0.5).kind).toBe('cannot');
    expect(ring(-1.5).kind).toBe('made');
  });
});
