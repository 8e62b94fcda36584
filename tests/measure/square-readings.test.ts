import { describe, expect, it } from 'vitest';
import { faultText } from '../../src/job/fault.ts';
import { readReadings } from '../../src/job/readings/readings-file.ts';
import { machineGeometry } from '../../src/measure/machine-geometry.ts';
import { squareReadingOf } from '../../src/measure/square-readings.ts';
import { ok } from '../../src/num/result.ts';

const GAUGES = { caliper: '±0.03', dial: '±0.01', square: '0.02 per 100' };

function readingsOf(lines: string) {
  const text = `flipwright-readings: 1\nsquare:\n${lines}\n`;
  const read = readReadings(
    { name: 'r.yaml', bytes: new TextEncoder().encode(text) },
    '2026-11-25',
    () => ok({ gauges: GAUGES }),
  );
  if (!read.ok) return { faults: read.faults.map(faultText), readings: [] };
  const { raw, context } = read.value;
  const readings = (raw.square ?? []).flatMap((one) => squareReadingOf(context, one) ?? []);
  return { faults: context.faults.map(faultText), readings };
}

describe('square readings', () => {
  it('come in with their signs and with what their gauges allow', () => {
    const { faults, readings } = readingsOf(
      [
        '  - {by: square-and-dial, over: 200, points: right, dial: [0.02, 0.14], turned: [0, -0.12], gauge: dial}',
        '  - {by: square-and-dial, over: 200, points: left, dial: [0.14, 0.02], square: square, gauge: dial}',
        '  - {by: circle, diameter: 100, at-45: [100.10, 100.14], at-135: 100.02, gauge: digital caliper}',
      ].join('\n'),
    );
    expect(faults).toEqual([]);
    const [twice, once, circle] = readings;
    expect(twice).toMatchObject({ by: 'square-and-dial', change: { dof: Infinity } });
    const found = machineGeometry([twice!])[0]!;
    expect(found.all.estimate.value).toBeCloseTo(0.12 / 200, 12);
    // Pointing left it runs down where it would run up pointing right.
    expect(machineGeometry([once!])[0]!.all.estimate.value).toBeCloseTo(0.12 / 200, 12);
    if (once?.by === 'square-and-dial')
      expect(once.squareSdMm).toBeCloseTo(0.04 / Math.sqrt(3), 12);
    if (circle?.by !== 'circle') throw new Error('no circle');
    // DIN 862: 0.03 above 100 mm, rectangular; two repeats 0.04 apart: sd of their mean 0.02.
    expect(circle.at45.value).toBeCloseTo(100.12, 9);
    expect(circle.at45.sd).toBeCloseTo(Math.hypot(0.03 / Math.sqrt(3), 0.02), 9);
    expect(circle.at45.dof).toBeGreaterThan(1);
    expect(circle.at45.dof).toBeLessThan(10);
  });

  it('that are mixed up with the fence count only where nothing else was read', () => {
    const { readings } = readingsOf(
      [
        '  - {by: turned-over, over: 200, gap: 0.4, gauge: caliper}',
        '  - {by: diagonals, size: [300, 300], to-far-right: 424.3, to-far-left: 424.2, gauge: caliper}',
      ].join('\n'),
    );
    const both = machineGeometry(readings)[0]!;
    expect(both.ways.find(({ by }) => by === 'turned-over')!.weight).toBe(0);
    expect(machineGeometry(readings.slice(0, 1))[0]!.all.estimate.value).toBeCloseTo(0.001, 12);
  });

  it.each([
    [
      '{by: diagonals, size: [300, 200], to-far-left: 360.4}',
      /diagonals needs to-far-right; write to-far-right/,
    ],
    [
      '{by: diagonals, size: [300, 200], to-far-right: 360.4, to-far-left: 306.4}',
      /the diagonal 306\.4 mm is nowhere near 360\.6 mm/,
    ],
    ['{by: three-lengths, to-far-right: 140, to-far-left: 141, left-side: 200}', /of no rectangle/],
    [
      '{by: circle, diameter: 100, at-45: 100, at-135: 100, gap: 3}',
      /gap is not for circle; it takes diameter/,
    ],
    ['{by: circle, diameter: 100, at-45: 50, at-135: 100}', /50 mm is not a diameter/],
    [
      '{by: square-and-dial, over: 100, points: right, dial: [0, 9]}',
      /the dial ran 9\.00 mm over 100 mm/,
    ],
    [
      '{by: square-and-dial, over: 100, points: right, dial: [0, 0.1], square: oak}',
      /the square oak is not known/,
    ],
    ['{by: turned-over, over: 100, gap: 50}', /gap 50 mm is too wide/],
    ['{by: length, axis: x, commanded: 300, measured: 30.1}', /nowhere near 300/],
    [
      '{by: length, axis: x, commanded: 300, measured: 300, gauge: calliper}',
      /the gauge calliper is neither in the shop file nor a standard one; did you mean caliper\?/,
    ],
    ['{by: length, axis: z, commanded: 300, measured: 300}', /axis/],
    ['{by: length, axis: x, commanded: 300, measured: []}', /measured/],
    ['{by: length, axis: x, commanded: -300, measured: .nan}', /-300 is not above 0/],
  ])('%s is refused with its line', (line, message) => {
    const { faults } = readingsOf(`  - ${line}`);
    expect(faults.join('\n')).toMatch(message);
    for (const fault of faults) expect(fault).toMatch(/^r\.yaml:3:/);
  });
});
