import { describe, expect, it } from 'vitest';
import type { StopsJob, Zero } from '../../src/job/job.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { benchSheet } from '../../src/sheet/bench-sheet.ts';
import { wayOf } from '../../src/sheet/locating/way-of.ts';
import { placingDrawing } from '../../src/sheet/placing-drawing.ts';
import { touchPlaces } from '../../src/sheet/touch-places.ts';
import { clock, clockPlain, paper } from './a-job.ts';
import { inputFor } from './an-input.ts';

// A place off the middle both ways, so that any mirroring shows: mirrored it would be 240 and 150.
const AT = { x: 40, y: 30 };
const topAt = { on: 'top', at: AT, tool: paper } as const;
const bedAt = { on: 'bed', at: AT, tool: paper } as const;

function placingWords(job: StopsJob): readonly [string, string] {
  const page = benchSheet(inputFor(job));
  const words = page
    .slice(page.indexOf('At the machine'))
    .replace(/<[^>]*>/g, '')
    .replace(/[\s\u00a0]+/g, ' ');
  const [, first, second] = words.split(/First placing:|Second placing:/);
  return [first!, second!];
}

const withZeros = (job: StopsJob, frontUp: Partial<Zero>, backUp: Partial<Zero>): StopsJob => ({
  ...job,
  zero: {
    frontUp: { ...job.zero.frontUp, ...frontUp },
    backUp: { ...job.zero.backUp, ...backUp },
  },
});

describe('the places of touches', () => {
  // job.md: every touched place is in the rectangle of the machine, whichever face is up.
  it('count from the left and the near side of the machine, for both placings alike', () => {
    for (const turn of ['about-y', 'about-x'] as const) {
      const job = withZeros({ ...clockPlain, turn }, { z: topAt }, { z: topAt });
      for (const words of placingWords(job)) {
        expect(words).toContain(
          '40 mm from the left side of the blank as it lies, 30 mm in from the near side: jog to X 40 mm, Y 30 mm',
        );
        expect(words).not.toMatch(/beyond|(left|near|lower|upper) edge of the blank/);
      }
    }
  });

  // The second zero of these stops is the near-right corner: 280 to the right of the near-left one.
  it('jog as each placing counts from its own zero', () => {
    const xy = { kind: 'stops', at: null, tool: paper } as const;
    const opposite = { ...clock, stops: { ...clockPlain.stops, corner: clock.stops.corner } };
    const [first, second] = placingWords(withZeros(opposite, { xy, z: topAt }, { xy, z: topAt }));
    expect(first).toContain('jog to X 40 mm, Y 30 mm');
    expect(second).toContain('jog to X \u2212240 mm, Y 30 mm');
  });

  it('say where X and Y are touched in the same way', () => {
    const xy = { kind: 'stops', at: AT, tool: paper } as const;
    for (const words of placingWords(withZeros(clockPlain, { xy }, { xy })))
      expect(words).toContain(
        '(X: 30 mm in from the near side; Y: 40 mm from the left side of the blank as it will lie)',
      );
  });

  it('on a bare bed count from a zero that is kept or milled', () => {
    const [, second] = placingWords(withZeros(clock, {}, { z: bedAt }));
    expect(second).toContain(
      'touch the bed at X 40 mm, Y 30 mm from the zero of this placing, the near-left corner of the blank',
    );
  });

  // The stops' front-up corner, near-left here, stands at [40, 40] on the bed.
  it('on a bare bed without a zero yet count from the corner of the bed', () => {
    for (const kind of ['edges', 'middle'] as const) {
      const xy = { kind, at: null, tool: paper } as const;
      const [, second] = placingWords(withZeros(clockPlain, {}, { xy, z: bedAt }));
      expect(second).toContain(
        'touch the bed at X 80 mm, Y 70 mm from the near-left corner of the bed',
      );
    }
    // With the stops' far-right corner there, the near-left one of the blank is at [-240, -140].
    const corner = { frontUp: 'far-right', backUp: 'far-right' } as const;
    const stops = { ...clockPlain.stops, corner, fence: 'upper' } as const;
    const xy = { kind: 'middle', at: null, tool: paper } as const;
    const far = withZeros({ ...clockPlain, stops }, {}, { xy, z: bedAt });
    expect(placingWords(far)[1]).toContain(
      'X \u2212200 mm, Y \u2212110 mm from the near-left corner',
    );
  });

  it('stand in the drawing at the same place of the paper, whichever face is up', () => {
    const job = withZeros(clockPlain, { z: topAt }, { z: topAt });
    const { frontUp, backUp } = placingsOf(job);
    const cross = (placing: typeof frontUp): string | undefined =>
      /<path d="(M[^"]+)"[^>]*stroke="#ffffff" stroke-width="1.6"/.exec(
        placingDrawing(job, placing, wayOf(inputFor(job)).in(placing)).html,
      )?.[1];
    expect(cross(frontUp)).toBeDefined();
    expect(cross(frontUp)).toBe(cross(backUp));
    expect(placingDrawing(job, backUp, wayOf(inputFor(job)).in(backUp)).html).toContain('touch Z');
    expect(benchSheet(inputFor(job))).toContain('Slanting cross');
  });

  it('of X and Y are on the sides where the stops stand, or on all four for a middle', () => {
    const of = (xy: Zero['xy']): unknown => {
      const job = withZeros(clockPlain, { xy, z: { ...topAt, at: null } }, {});
      return touchPlaces(job, placingsOf(job).frontUp).map(({ axis, at }) => [axis, at.x, at.y]);
    };
    expect(of({ kind: 'stops', at: AT, tool: paper })).toEqual([
      ['X', 0, 30],
      ['Y', 40, 0],
    ]);
    expect(of({ kind: 'middle', at: AT, tool: paper })).toEqual([
      ['X', 0, 30],
      ['X', 280, 30],
      ['Y', 40, 0],
      ['Y', 40, 180],
    ]);
    expect(of({ kind: 'milled-stops', at: AT })).toEqual([]);
  });
});
