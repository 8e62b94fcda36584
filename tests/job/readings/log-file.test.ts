import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultText, noteText } from '../../../src/job/fault.ts';
import { LOG_HEAD, logLine, logName, readLog } from '../../../src/job/readings/log-file.ts';

const read = (text: string) =>
  readLog({ name: 'j.log.csv', bytes: new TextEncoder().encode(text) });
const row = (part: number, value: string, what = 'shaft in the pocket') =>
  logLine({ date: '2026-11-25', part, what, value, gauge: 'caliper', note: '' });
const TEN = LOG_HEAD + Array.from({ length: 10 }, (_, k) => row(k + 1, `0.1${k}`)).join('');

describe('the log of finished parts', () => {
  it('is read back as it was written, names with commas and quotes too', () => {
    const words = fc.stringMatching(/^[a-z,;"#' ]{1,12}$/).map((text) => `n${text}`.trim());
    fc.assert(
      fc.property(
        fc.array(fc.tuple(words, fc.integer({ min: -999, max: 999 })), {
          minLength: 1,
          maxLength: 6,
        }),
        (rows) => {
          const text =
            LOG_HEAD + rows.map(([what, n], k) => row(k + 1, String(n / 100), what)).join('');
          const { rows: found, faults, cutShort } = read(text);
          expect(faults).toEqual([]);
          expect(cutShort).toBeNull();
          expect(found.map(({ what, value }) => [what, value])).toEqual(
            rows.map(([what, n]) => [what, n / 100]),
          );
        },
      ),
      { seed: 5, numRuns: 60 },
    );
    expect(logName('jigs/wall-clock.yaml')).toBe('jigs/wall-clock.log.csv');
  });

  it('tells of a mistake in line 7 and keeps every other row', () => {
    const lines = TEN.split('\n');
    for (const [wrong, message] of [
      [
        '2026-11-25,6,shaft in the pocket,0,15,caliper,',
        /j\.log\.csv:7:1: the row has 7 cells, and a log has 6/,
      ],
      [
        '25.11.2026,6,shaft in the pocket,0.15,caliper,',
        /j\.log\.csv:7:1: 25\.11\.2026 is not a date/,
      ],
      [
        '2026-11-25,six,shaft in the pocket,0.15,caliper,',
        /j\.log\.csv:7:12: six is not the number of a part/,
      ],
      ['2026-11-25,6,shaft in the pocket,o.15,caliper,', /j\.log\.csv:7:34: o\.15 is not a length/],
      ['2026-11-25,6,,0.15,caliper,', /j\.log\.csv:7:14: nobody says what was measured/],
      ['2026-11-25,6,shaft,NaN,caliper,', /NaN is not a length/],
    ] as const) {
      const text = lines.map((line, k) => (k === 6 ? wrong : line)).join('\n');
      const { rows, faults } = read(text);
      expect(faults.map(faultText)).toHaveLength(1);
      expect(faultText(faults[0]!)).toMatch(message);
      expect(rows.map(({ part }) => part)).toEqual([1, 2, 3, 4, 5, 7, 8, 9, 10]);
    }
  });

  it('cut at any byte keeps every whole row, and never takes half a figure for a whole one', () => {
    const bytes = new TextEncoder().encode(TEN);
    for (let end = LOG_HEAD.length; end <= bytes.length; end++) {
      const { rows, faults, cutShort } = readLog({
        name: 'j.log.csv',
        bytes: bytes.subarray(0, end),
      });
      expect(faults).toEqual([]);
      const whole = TEN.slice(0, end).split('\n').length - 2;
      expect(rows.length === whole || rows.length === whole + 1).toBe(true);
      rows.forEach(({ value }, k) => {
        expect(value).toBe(Number(`0.1${k}`));
      });
      if (cutShort !== null) expect(noteText(cutShort)).toMatch(/the last row was cut short/);
    }
  });

  it('is refused as a whole only when its first line is gone', () => {
    expect(read('').faults.map(faultText)[0]).toMatch(
      /1:1: the first line is not that of a log; write date,part,/,
    );
    expect(read(row(1, '0.1')).faults).toHaveLength(1);
    expect(read(TEN.replaceAll('\n', '\r\n')).rows).toHaveLength(10);
  });
});
