import { describe, expect, it } from 'vitest';
import { faultsOf, jobOf, onStops, readTexts } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const edges = (word: string) => jobOf(otherwise(JOB, 'edges: sawn', word), SHOP).blank;
const rectangular = (high: number) => ({ kind: 'rectangular', low: -high, high });
const because = (because: string) => ({ kind: 'assumed', because });

describe('where a figure comes from', () => {
  it('is the file and line it is written on, or the table', () => {
    const job = jobOf(JOB, SHOP);
    expect(job.blank.widthSpread.origin).toEqual({ kind: 'stated', file: 'job.yaml', line: 5 });
    expect(job.features[0]!.cutter.radiusError.origin).toEqual({
      kind: 'stated',
      file: 'shop.yaml',
      line: 7,
    });
    expect(job.shop.machine.lean.origin).toEqual(because('common practice, no source'));
  });

  it('is the job where the job says it otherwise than the shop', () => {
    const lean = otherwise(JOB, 'turn: about-y', 'turn: about-y\nmachine: {lean: 0}');
    const { machine } = jobOf(
      lean,
      otherwise(SHOP, 'travel:', 'scale-x: ±0.2 per 300\n  travel:'),
    ).shop;
    expect(machine.lean).toEqual({
      distribution: { kind: 'exactly', value: 0 },
      recurs: 'shop',
      origin: { kind: 'stated', file: 'job.yaml', line: 12 },
      text: '0',
    });
    expect(machine.scaleX.origin).toEqual({ kind: 'stated', file: 'shop.yaml', line: 3 });
    expect(machine.travelMm).toEqual({ x: 400, y: 300, z: 80 });
  });

  it('takes a cutter of the job for the one of that name in the shop, as a whole', () => {
    const own = 'turn: about-y\ncutters: [{name: flat 6, kind: flat, diameter: 5.9}]';
    const job = jobOf(otherwise(JOB, 'turn: about-y', own), SHOP);
    expect(job.shop.cutters).toHaveLength(1);
    expect(job.features[0]!.cutter).toMatchObject({ diameterMm: 5.9, fluteMm: null });
  });

  it('tells a fault of a part that the job overrides in the file it is written in', () => {
    const own = 'turn: about-y\ntouch-off: {paper: {spread: half-normal 0.02, bias: 0.01}}';
    expect(faultsOf(otherwise(JOB, 'turn: about-y', own), SHOP)).toEqual([
      'job.yaml:12:53: paper has a bias, and its spread half-normal 0.02 starts at 0 already; take out the bias, or write a spread such as ±0.02',
    ]);
  });
});

describe('one word about the edges', () => {
  // The table of defaults; slopes over 200 (square, taper) and 300 mm (crook), bevel in degrees.
  it.each([
    ['as-bought', 1, 1, 0.5, 0.1],
    ['sawn', 0.3, 0.4, 0.15, 0.04],
    ['jointed', 0.1, 0.15, 0.05, 0.02],
  ])('%s fills what nobody stated', (word, square, bevelDeg, crook, bump) => {
    const blank = edges(`edges: ${word}`);
    expect(blank.widthSpread.distribution).toEqual(rectangular(0.4));
    for (const spread of [blank.squareSpread, blank.taperXSpread, blank.taperYSpread])
      expect(spread).toMatchObject({
        distribution: rectangular(square / 200),
        recurs: 'part',
        origin: because(`edges: ${word}; common practice, no source`),
      });
    const tangent = Math.tan((bevelDeg * Math.PI) / 180);
    expect(blank.bevelSpread.distribution).toEqual(rectangular(tangent));
    expect(blank.crookSpread.distribution).toEqual(rectangular(crook / 300));
    expect(blank.bumpSpread.distribution).toEqual({ kind: 'normal', mean: 0, sd: bump });
  });

  it('fills the size only where none is given', () => {
    const bare = otherwise(JOB, '200 ±0.4', '200');
    expect(jobOf(bare, SHOP).blank.widthSpread).toMatchObject({
      distribution: rectangular(0.4),
      origin: because('edges: sawn; common practice, no source'),
    });
    const bought = otherwise(bare, 'edges: sawn', 'edges: as-bought');
    expect(jobOf(bought, SHOP).blank.widthSpread.distribution).toEqual(rectangular(2));
    expect(jobOf(bought, SHOP).blank.heightSpread.distribution).toEqual(rectangular(0.4));
  });

  it('leaves alone what is stated, and is sawn when it is not said', () => {
    expect(edges('edges: sawn\n  bevel: 0').bevelSpread).toMatchObject({
      distribution: { kind: 'exactly', value: 0 },
      origin: { kind: 'stated', file: 'job.yaml', line: 7 },
    });
    expect(edges('material: ash').squareSpread.origin).toEqual(
      because('no edges are given, so sawn; common practice, no source'),
    );
  });

  it('cut-here makes a size as true as the cutter and a corner as square as the machine', () => {
    const blank = jobOf(
      otherwise(otherwise(JOB, '200 ±0.4', '200'), 'edges: sawn', 'edges: cut-here'),
      otherwise(SHOP, 'travel:', 'lean: ±0.2 per 200\n  travel:'),
    ).blank;
    // Diameter ±0.04, so radius ±0.02, so two walls ±0.04.
    expect(blank.widthSpread).toMatchObject({ distribution: rectangular(0.04), recurs: 'part' });
    expect(blank.squareSpread).toMatchObject({ distribution: rectangular(0.001), recurs: 'part' });
    expect(blank.squareSpread.origin.kind).toBe('assumed');
  });
});

describe('what is assumed when nothing is said', () => {
  const job = jobOf(JOB, SHOP);
  const { machine } = job.shop;

  it.each([
    ['lean', machine.lean, 'shop', rectangular(0.3 / 200)],
    ['scale', machine.scaleX, 'shop', rectangular(0.1 / 300)],
    ['repeatability', machine.repeatability, 'feature', { kind: 'normal', mean: 0, sd: 0.02 }],
    ['lost motion', machine.lostMotion, 'feature', { kind: 'either', low: -0.03, high: 0.03 }],
    ['cutter lean', machine.cutterLeanX, 'shop', rectangular(0.1 / 100)],
    ['seat gap', onStops(job).seatGap, 'placing', { kind: 'half-normal', sigma: 0.03 }],
    ['give', onStops(job).give, 'placing', { kind: 'rectangular', low: 0, high: 0.02 }],
    ['clamp drag', job.hold.clampDrag, 'placing', { kind: 'rectangular', low: 0, high: 0.1 }],
    ['movement', job.blank.movementX, 'part', { kind: 'exactly', value: 0 }],
  ])('%s is as in the table', (_, spread, recurs, distribution) => {
    expect(spread.distribution).toEqual(distribution);
    expect(spread.recurs).toBe(recurs);
    expect(spread.origin.kind).toBe('assumed');
  });

  it('is set by hand, and new with each setting', () => {
    expect(onStops(job).made).toMatchObject({
      kind: 'set-by-hand',
      angle: { distribution: rectangular(0.3 / 200), recurs: 'setup' },
      square: { distribution: rectangular(0.1 / 100), recurs: 'setup' },
      spacing: { distribution: rectangular(0.3), recurs: 'setup' },
    });
  });

  it('depends on the drive and the pusher', () => {
    const power = otherwise(JOB, 'kept: held', 'kept: power-off');
    const belt = jobOf(power, otherwise(SHOP, 'travel:', 'drive: belt\n  travel:'));
    expect(belt.shop.machine.lostMotion.distribution).toEqual({
      kind: 'either',
      low: -0.1,
      high: 0.1,
    });
    expect(belt.zero.backUp.xy).toMatchObject({
      how: 'power-off',
      extra: { distribution: rectangular(0.4) },
    });
    expect(jobOf(power, SHOP).zero.backUp.xy).toMatchObject({
      extra: { distribution: rectangular(0.05) },
    });
    const pushed = jobOf(`${JOB}hold: {pusher: towards-stops}\n`, SHOP);
    expect(pushed.hold.clampDrag.distribution).toEqual({ kind: 'exactly', value: 0 });
  });

  it('takes a bare cutter as 0.02 off in radius', () => {
    const cutter = jobOf(JOB, otherwise(SHOP, '6 ±0.04', '6')).features[0]!.cutter;
    expect(cutter.radiusError).toMatchObject({ distribution: rectangular(0.02), recurs: 'shop' });
  });
});

describe('a zero', () => {
  const xy = (words: string, shop = SHOP) =>
    jobOf(otherwise(JOB, 'xy: stops, z: top, with: paper', words), shop).zero.frontUp.xy;

  it('is touched with what the shop has, its bias the centre of the error', () => {
    const biased = otherwise(SHOP, 'spread: ±0.02', 'spread: ±0.02, bias: 0.05');
    const zero = xy('xy: stops, z: top, with: paper', biased);
    expect(zero.kind === 'stops' && zero.tool.spread).toMatchObject({
      recurs: 'setup',
      text: '±0.02, always 0.05 off',
    });
    const read = zero.kind === 'stops' ? zero.tool.spread.distribution : null;
    expect(read?.kind === 'rectangular' && read.low).toBeCloseTo(0.03, 12);
    expect(read?.kind === 'rectangular' && read.high).toBeCloseTo(0.07, 12);
  });

  it('without a tool is paper on the stops and the cutter at rest on an edge', () => {
    expect(xy('xy: stops, z: top')).toMatchObject({
      tool: { name: 'paper', spread: { distribution: rectangular(0.02), recurs: 'setup' } },
    });
    for (const kind of ['edges', 'middle'])
      expect(xy(`xy: ${kind}, z: top`)).toMatchObject({
        kind,
        tool: {
          name: 'the cutter at rest',
          spread: { distribution: rectangular(0.1), recurs: 'placing' },
        },
      });
  });

  it('knows where it was touched', () => {
    expect(xy('xy: stops, xy-touched: [0, 2 in], z: top')).toMatchObject({ at: { x: 0, y: 50.8 } });
    expect(xy('xy: stops, z: top')).toMatchObject({ at: null });
  });
});

describe('readings', () => {
  const bumps = (words: string) => edges(`edges: sawn\n  bumps: ${words}`).bumpSpread.distribution;

  // Four readings 0, 0, 0.02, 0.02: mean 0.01, s = sqrt(4 * 0.01^2 / 3) = 0.0115470, by hand.
  it('of a part tell how the next part scatters (JCGM 101, 6.4.9)', () => {
    const read = bumps('{readings: [0, 0, 0.02, 0.02]}');
    expect(read).toMatchObject({ kind: 'scaled-t', mean: 0.01, dof: 3 });
    expect(read.kind === 'scaled-t' && read.scale).toBeCloseTo(0.011547 * Math.sqrt(1.25), 7);
  });

  it('of one fixed thing of the shop tell its mean', () => {
    const read = bumps('{readings: [0, 0, 0.02, 0.02], recurs: shop}');
    expect(read.kind === 'scaled-t' && read.scale).toBeCloseTo(0.011547 / 2, 7);
  });

  it('are noted when they are too few, and exact when they are all the same', () => {
    const of = (words: string) => {
      const read = readTexts(otherwise(JOB, 'edges: sawn', `edges: sawn\n  bumps: ${words}`), SHOP);
      return read.ok ? read.value.notes.map(({ line, message }) => `${line} ${message}`) : null;
    };
    expect(of('{readings: [0, 0.02]}')).toEqual([
      '7 bumps: two readings have neither a mean nor a standard deviation to predict with; take 5',
    ]);
    expect(of('{readings: [0.01, 0.01]}')).toEqual([
      '7 bumps: all readings are the same, so nothing is known about the spread; none is assumed',
    ]);
    expect(of('{readings: [0.01, 0.02, 0, 0.01]}')).toEqual([]);
    expect(bumps('{readings: [0.01, 0.01]}')).toEqual({ kind: 'exactly', value: 0.01 });
  });
});

describe('milled stops', () => {
  const milled = otherwise(JOB, 'set-by-hand', 'milled-in-place');

  it('take the only flat cutter, and say so', () => {
    const read = readTexts(milled, SHOP);
    expect(read.ok && onStops(read.value.job).made).toMatchObject({ cutter: { name: 'flat 6' } });
    expect(read.ok && read.value.notes).toEqual([
      {
        file: 'job.yaml',
        line: 18,
        column: 9,
        message: 'the stops are taken as milled with flat 6, the only flat cutter',
      },
    ]);
  });

  it('must name one of several', () => {
    const two = otherwise(
      SHOP,
      'touch-off:',
      '  - {name: flat 3, kind: flat, diameter: 3}\ntouch-off:',
    );
    expect(faultsOf(milled, two)).toEqual([
      'job.yaml:18:9: milled-in-place does not say which cutter mills the stops; write cutter: flat 6',
    ]);
  });
});
