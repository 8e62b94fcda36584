import fc from 'fast-check';
import type { Corner, Edge, StopsJob, Stops, Touch } from '../../src/job/job.ts';
import { evenly } from '../plane/evenly.ts';
import { aJob } from './a-job.ts';

/**
 * Jobs of all kinds of stops on blanks that leave room for them: both ways of touching, both bands,
 * all three makes, every corner, one side stop or two, a bed without inserts.
 */
export const someJobs: fc.Arbitrary<StopsJob> = fc
  .record({
    widthMm: evenly(150, 400),
    heightMm: evenly(120, 260),
    thickMm: evenly(12, 40),
    corner: fc.constantFrom<Corner>('near-left', 'near-right', 'far-left', 'far-right'),
    company: fc.constantFrom('alone' as const, 'shares the fence' as const),
    fenceAlong: fc.constantFrom('x' as const, 'y' as const),
    fenceTouch: fc.constantFrom('buttons' as const, 'arm' as const),
    sideTouch: fc.constantFrom('buttons' as const, 'arm' as const),
    band: fc.constantFrom('plain' as const, 'narrow' as const),
    made: fc.constantFrom<Stops['made']['kind']>('set-by-hand', 'on-bed-pins', 'milled-in-place'),
    shares: fc.record({
      a: evenly(0, 1),
      b: evenly(0, 1),
      c: evenly(0, 1),
      d: evenly(0, 1),
      h: evenly(0, 1),
    }),
  })
  .map((wish) => {
    const { widthMm, heightMm, thickMm, shares } = wish;
    const [fenceMm, sideMm] = wish.fenceAlong === 'x' ? [widthMm, heightMm] : [heightMm, widthMm];
    const [farness, hand] = wish.corner.split('-') as ['near' | 'far', 'left' | 'right'];
    const other: Corner =
      wish.fenceAlong === 'x'
        ? `${farness}-${hand === 'left' ? 'right' : 'left'}`
        : `${farness === 'near' ? 'far' : 'near'}-${hand}`;
    const touch = (kind: Touch['kind'], lengthMm: number, low: number, high: number): Touch => {
      const fromMm = 12 + low * (lengthMm / 8);
      const toMm = lengthMm - 20 - high * (lengthMm / 8);
      return kind === 'arm' ? { kind, fromMm, toMm } : { kind, atMm: [fromMm, toMm] };
    };
    const fence: Edge =
      wish.fenceAlong === 'x'
        ? farness === 'near'
          ? 'lower'
          : 'upper'
        : hand === 'left'
          ? 'left'
          : 'right';
    const side = touch(wish.sideTouch, sideMm, shares.c, shares.d);
    return aJob({
      size: [widthMm, heightMm, thickMm],
      made: wish.made,
      onBed: { x: 900, y: 900 },
      inserts: null,
      spoilboard: { xMm: 2000, yMm: 2000 },
      stops: {
        corner: {
          frontUp: wish.corner,
          backUp: wish.company === 'alone' ? wish.corner : other,
        },
        fence,
        fenceTouch: touch(wish.fenceTouch, fenceMm, shares.a, shares.b),
        sideTouch: side.kind === 'buttons' ? { kind: 'buttons', atMm: [side.atMm[0]!] } : side,
        band:
          wish.band === 'plain'
            ? { kind: 'plain', heightMm: 7 + shares.h * (thickMm - 8 - 1) }
            : { kind: 'narrow', touchHeightMm: thickMm / 2 },
      },
    });
  })
  // About X the far and near edges change places; about Y the left and right ones do.
  .map((job) =>
    job.stops.fence === 'lower' || job.stops.fence === 'upper' ? job : { ...job, turn: 'about-x' },
  );
