import { describe, expect, it } from 'vitest';
import { stopPicture } from '../../src/sheet/solid-picture.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import { aJob, placed } from './a-job.ts';

function pictures(): readonly string[] {
  const job = aJob({
    stops: { corner: { frontUp: 'far-left', backUp: 'far-right' }, fence: 'upper' },
    onBed: { x: 50, y: 180 },
    inserts: null,
  });
  const answer = stopsOf(job, placed(job));
  if (answer.kind === 'cannot') throw new Error(`${answer.because}; ${answer.wouldFit}`);
  return answer.parts.map((part) => stopPicture(part, 120));
}

const drawn = pictures();

describe('the picture of a stop', () => {
  it('says what it is and how big, for eyes and for readers', () => {
    const [left, right] = drawn;
    expect(left).toContain('<title>corner stop, far left, seen from the blank</title>');
    expect(left).toMatch(/>corner stop, far left: \d+ × \d+ × 8 mm<\/text>/);
    expect(right).toContain('corner stop, far right');
  });

  it('draws in whole units inside its frame', () => {
    for (const picture of drawn) {
      const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(picture)!.map(Number);
      const places = [...picture.matchAll(/[ML](\S+?) (\S+?)(?=[MLZ"])/g)];
      expect(places.length).toBeGreaterThan(300);
      for (const [, x, y] of places) {
        expect(Number.isInteger(Number(x)) && Number.isInteger(Number(y))).toBe(true);
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(x)).toBeLessThanOrEqual(width!);
        expect(Number(y)).toBeGreaterThanOrEqual(0);
        expect(Number(y)).toBeLessThanOrEqual(height!);
      }
    }
  });

  it('tints the faces that touch the blank: two on each piece, one fence and one side', () => {
    // Tinted faces are the only ones with more red than blue.
    for (const picture of drawn) {
      const warm = [...picture.matchAll(/fill="#(..)(..)(..)"/g)].filter(
        ([, red, , blue]) => parseInt(red!, 16) > parseInt(blue!, 16),
      );
      expect(warm).toHaveLength(2);
    }
  });

  it('is the same text every time', () => {
    expect(pictures()).toEqual(drawn);
  });
});
