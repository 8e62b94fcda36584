import type { Distribution } from '../../src/num/distribution.ts';
import type { StopsJob, Recurrence, Spread } from '../../src/job/job.ts';
import { FLAT6, PAPER, plainJob, spread } from './plain-job.ts';

const pm = (a: number): Distribution => ({ kind: 'rectangular', low: -a, high: a });
const of = (distribution: Distribution, recurs: Recurrence): Spread => ({
  ...spread(distribution),
  recurs,
});

/** The plain job in an ordinary shop: the defaults of the job description with sawn edges. */
export function shopJob(changes: (job: StopsJob) => Partial<StopsJob> = () => ({})): StopsJob {
  const plain = plainJob();
  const job: StopsJob = {
    ...plain,
    blank: {
      ...plain.blank,
      widthSpread: of(pm(0.4), 'part'),
      heightSpread: of(pm(0.4), 'part'),
      thickSpread: of(pm(0.15), 'part'),
      squareSpread: of(pm(0.3 / 200), 'part'),
      taperXSpread: of(pm(0.3 / 200), 'part'),
      taperYSpread: of(pm(0.3 / 200), 'part'),
      bevelSpread: of(pm(0.007), 'part'),
      crookSpread: of(pm(0.15 / 300), 'part'),
      bumpSpread: of({ kind: 'normal', mean: 0, sd: 0.04 }, 'part'),
      movementX: of(pm(1e-4), 'part'),
      movementY: of(pm(1e-4), 'part'),
    },
    features: [
      {
        name: 'shaft hole',
        face: 'front',
        shape: { kind: 'circle', diameterMm: 10 },
        at: { x: 140, y: 90 },
        turnedRad: 0,
        cut: 'pocket',
        depthMm: 12,
        through: false,
        cutter: FLAT6,
      },
      {
        name: 'movement pocket',
        face: 'back',
        shape: { kind: 'rectangle', widthMm: 58, heightMm: 58, cornerRadiusMm: 3.2 },
        at: { x: 140, y: 90 },
        turnedRad: 0,
        cut: 'pocket',
        depthMm: 15,
        through: false,
        cutter: FLAT6,
      },
    ],
    stops: {
      ...plain.stops,
      made: {
        kind: 'set-by-hand',
        angle: of(pm(0.3 / 200), 'setup'),
        square: of(pm(0.001), 'setup'),
        spacing: of(pm(0.3), 'setup'),
      },
      seatGap: of({ kind: 'half-normal', sigma: 0.03 }, 'placing'),
      give: of({ kind: 'rectangular', low: 0, high: 0.02 }, 'placing'),
    },
    zero: {
      frontUp: {
        xy: { kind: 'stops', at: null, tool: { name: 'paper', spread: of(pm(0.02), 'setup') } },
        z: { on: 'top', at: null, tool: PAPER },
      },
      backUp: plain.zero.backUp,
    },
    needs: [
      {
        kind: 'concentric',
        name: 'shaft in the pocket',
        features: ['shaft hole', 'movement pocket'],
        withinMm: 0.2,
      },
      { kind: 'misalignment', name: 'corner check', at: { x: 70, y: 120 }, withinMm: 0.25 },
    ],
    hold: { pusher: 'none', clampDrag: of({ kind: 'rectangular', low: 0, high: 0.1 }, 'placing') },
    shop: {
      ...plain.shop,
      machine: {
        ...plain.shop.machine,
        lean: of(pm(0.3 / 200), 'shop'),
        scaleX: of(pm(0.1 / 300), 'shop'),
        scaleY: of(pm(0.1 / 300), 'shop'),
        lostMotion: of({ kind: 'either', low: -0.03, high: 0.03 }, 'feature'),
        repeatability: of({ kind: 'normal', mean: 0, sd: 0.02 }, 'feature'),
        cutterLeanX: of(pm(0.001), 'shop'),
        cutterLeanY: of(pm(0.001), 'shop'),
      },
    },
  };
  return { ...job, ...changes(job) };
}
