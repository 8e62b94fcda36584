import { describe, expect, it } from 'vitest';
import { checkMesh } from '../../src/jig/mesh.ts';
import { fenceAlone } from '../../src/jig/fence-job.ts';
import { stopFacets } from '../../src/jig/stop-solid.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import { defaultJigSizes } from '../../src/job/jig-sizes.ts';
import type { Job, StopsJob } from '../../src/job/job.ts';
import { isInside, toEdgeMm } from '../../src/plane/distance.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { aJob, placed } from './a-job.ts';
import { partsOf } from './program/some-programs.ts';

const jig = { 'steel-buttons': defaultJigSizes('steel-buttons') };
const pinned = (wish: Parameters<typeof aJob>[0] = {}): StopsJob => ({ ...aJob(wish), jig });

describe('stops with steel pins for buttons', () => {
  it.each([
    [{}, 1],
    [{ made: 'on-bed-pins' as const }, 1],
    [{ inserts: null }, 1],
    [{ stops: { corner: { frontUp: 'near-left', backUp: 'near-right' } } } as const, 2],
  ])('touch at every contact with a pin, and leave room for it: %o', (wish, count) => {
    const job = pinned(wish);
    const parts = partsOf(job);
    expect(parts).toHaveLength(count);
    for (const part of parts) {
      expect(checkMesh(stopFacets(part)).openEdgeCount).toBe(0);
      const level = part.profile.levels.at(-1)!;
      const ids = part.lands.flatMap(({ contacts }) => contacts);
      for (const { at } of placed(job).frontUp.contacts.filter(({ id }) => ids.includes(id))) {
        // With its pin in, the stop touches there; printed, it stands 3 back, and 10 at the groove.
        expect(toEdgeMm(at, part.body.outline)).toBeLessThan(1e-9);
        const [x, y] =
          at.y === 0 ? ([0, -1] as const) : at.x === 0 ? ([-1, 0] as const) : ([1, 0] as const);
        const axis = { x: at.x + 5 * x, y: at.y + 5 * y };
        expect(isInside(axis, level.outline)).toBe(false);
        // A pin of 10 in a groove of 10.1: no chord of it is nearer than 5 less the chord's own 0.02.
        expect(toEdgeMm(axis, level.outline)).toBeGreaterThan(5 - 0.02);
        expect(toEdgeMm(axis, level.outline)).toBeLessThan(5 + 1e-9);
      }
      for (const hole of level.holes)
        expect(hole.every((p) => isInside(p, part.body.outline))).toBe(true);
    }
  });

  it.each([
    [pinned({ made: 'milled-in-place' }), /made: set-by-hand or on-bed-pins/],
    [pinned({ stops: { band: { kind: 'narrow', touchHeightMm: 12 } } }), /^height: 14 instead/],
    [
      pinned({ stops: { fenceTouch: { kind: 'arm', fromMm: 20, toMm: 90 } } }),
      /as places of buttons, such as \[30, 250\]/,
    ],
    [
      { ...aJob(), jig: { 'steel-buttons': { diameter: 6, clearance: 0.1 } } },
      /^diameter: 10 or more/,
    ],
  ])('are refused with what would fit', (job, wouldFit) => {
    expect(stopsOf(job, placed(job))).toMatchObject({
      kind: 'cannot',
      wouldFit: expect.stringMatching(wouldFit) as string,
    });
  });
});

describe('the label of a stop', () => {
  it('says that its face is up, where X points, where it stands, how thick the blank is, and the job', () => {
    const [part] = partsOf(aJob());
    expect(part!.words.map(({ words }) => words)).toEqual(['UP X> NL T24 Case lid']);
  });
});

describe('a fence by itself', () => {
  it('is a bar with both lands and no side stop', () => {
    const { stops, ...rest } = aJob();
    const job: Job = {
      ...rest,
      locating: 'fence-and-dowel',
      fenceAndDowel: {
        fence: stops.fence,
        fenceTouch: stops.fenceTouch,
        band: stops.band,
        made: stops.made,
        seatGap: stops.seatGap,
        give: stops.give,
        dowel: {
          at: [{ x: 140, y: 160 }],
          diameterMm: 8,
          clearance: { kind: 'stated', spread: stops.give },
          drilled: 'separately',
          drillError: stops.give,
          takeUp: 'anywhere',
          laid: stops.give,
        },
      },
    };
    const answer = stopsOf(fenceAlone(job)!, placingsOf(job));
    if (answer.kind === 'cannot') throw new Error(answer.because);
    const [bar] = answer.parts;
    expect(answer.parts).toHaveLength(1);
    expect(bar!.name).toBe('fence stop, near');
    expect(bar!.lands.map(({ ends }) => ends.map(({ x, y }) => [x, y]))).toEqual([
      [
        [25, 0],
        [35, 0],
      ],
      [
        [245, 0],
        [255, 0],
      ],
    ]);
    expect(Math.max(...bar!.body.outline.map(({ y }) => y))).toBe(0);
    expect(checkMesh(stopFacets(bar!)).openEdgeCount).toBe(0);
  });
});
