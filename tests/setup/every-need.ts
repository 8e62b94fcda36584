import type { Cutter, Feature, Job, Need } from '../../src/job/job.ts';
import { FLAT6, NONE } from './plain-job.ts';

const VEE90: Cutter = {
  ...FLAT6,
  name: 'vee 90',
  kind: 'vee',
  vee: { includedRad: Math.PI / 2, tipFlatMm: NONE },
};

const feature = (name: string, face: Feature['face'], changes: Partial<Feature>): Feature => ({
  name,
  face,
  shape: { kind: 'circle', diameterMm: 40 },
  at: { x: 100, y: 60 },
  turnedRad: 0,
  cut: 'pocket',
  depthMm: 5,
  through: false,
  cutter: FLAT6,
  ...changes,
});

const OUTER: Partial<Feature> = {
  shape: {
    kind: 'polygon',
    vertices: [
      { x: -50, y: -35 },
      { x: 55, y: -30 },
      { x: 40, y: 38 },
      { x: -45, y: 30 },
    ],
  },
  at: { x: 150, y: 95 },
  cut: 'profile-outside',
  depthMm: 12,
};

const FEATURES: readonly Feature[] = [
  feature('dial', 'front', { shape: { kind: 'circle', diameterMm: 70 } }),
  feature('movement', 'back', {
    shape: { kind: 'rectangle', widthMm: 44, heightMm: 30, cornerRadiusMm: 4 },
    at: { x: 103, y: 58 },
    turnedRad: 0.2,
    depthMm: 14,
  }),
  feature('groove', 'front', { cutter: VEE90, cut: 'chamfer', depthMm: 2, at: { x: 60, y: 130 } }),
  feature('slot', 'back', {
    shape: { kind: 'slot', lengthMm: 50, widthMm: 12 },
    at: { x: 210, y: 40 },
    turnedRad: -0.4,
  }),
  feature('body front', 'front', OUTER),
  feature('body back', 'back', OUTER),
];

const LOW = { lowMm: 0.1, highMm: null };

export const EVERY_NEED: readonly Need[] = [
  { kind: 'concentric', name: 'concentric', features: ['dial', 'movement'], withinMm: 0.2 },
  { kind: 'misalignment', name: 'misalignment', at: { x: 70, y: 120 }, withinMm: 0.25 },
  { kind: 'depth', name: 'depth front', feature: 'dial', limits: LOW },
  { kind: 'depth', name: 'depth back', feature: 'movement', limits: LOW },
  { kind: 'web', name: 'web', features: ['dial', 'movement'], limits: LOW },
  { kind: 'wall', name: 'wall', feature: 'slot', to: 'lower', limits: LOW },
  { kind: 'wall', name: 'wall to the right', feature: 'slot', to: 'right', limits: LOW },
  { kind: 'wall', name: 'any wall', feature: 'groove', to: null, limits: LOW },
  {
    kind: 'lip',
    name: 'lip',
    features: ['dial', 'movement'],
    limits: { lowMm: 0.1, highMm: 60 },
  },
  { kind: 'size', name: 'size along X', feature: 'movement', along: 'x', limits: LOW },
  { kind: 'size', name: 'size of a groove', feature: 'groove', along: 'y', limits: LOW },
  { kind: 'meets', name: 'meets', features: ['body front', 'body back'], withinMm: 0.3 },
  { kind: 'parallel', name: 'parallel', features: ['slot', 'movement'], withinTangent: 0.003 },
];

/** The job with features on both faces and one need of every kind, cut by cutters of its own shop. */
export const withEveryNeed = <J extends Job>(job: J): J => ({
  ...job,
  features: FEATURES,
  needs: EVERY_NEED,
  shop: { ...job.shop, cutters: [FLAT6, VEE90] },
});
