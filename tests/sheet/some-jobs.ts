import type { StopsJob } from '../../src/job/job.ts';
import { clock, clockPlain, flat3, flat6, paper } from './a-job.ts';

/** Jobs as different as the page must stand. */
export const someJobs: Readonly<Record<string, StopsJob>> = {
  clock,
  'plain clock': clockPlain,
  'long thin tray': {
    ...clockPlain,
    name: 'Long thin pencil tray',
    blank: { ...clock.blank, widthMm: 560, heightMm: 60, widthAtYMm: 30, heightAtXMm: 280 },
    features: ['near end', 'far end'].map((name, i) => ({
      ...clock.features[0]!,
      name: `${name} hollow`,
      face: i === 0 ? 'front' : 'back',
      shape: { kind: 'slot', lengthMm: 200, widthMm: 40 },
      at: { x: 150 + 260 * i, y: 30 },
    })),
    needs: [{ kind: 'misalignment', name: 'ends in line', at: { x: 280, y: 30 }, withinMm: 0.3 }],
  },
  'small lid, about X, far right, inch': {
    ...clockPlain,
    name: 'Small enclosure lid',
    first: 'back',
    turn: 'about-x',
    blank: {
      ...clock.blank,
      widthMm: 63.5,
      heightMm: 44.45,
      thickMm: 9.525,
      marked: ['upper', 'right'],
      widthAtYMm: 22.225,
      heightAtXMm: 31.75,
    },
    features: [
      {
        ...clock.features[0]!,
        name: 'gasket groove',
        shape: { kind: 'rectangle', widthMm: 50, heightMm: 30, cornerRadiusMm: 6 },
        at: { x: 31.75, y: 22.225 },
        depthMm: 2,
        cutter: flat3,
      },
      {
        ...clock.features[0]!,
        name: 'plug hole',
        face: 'back',
        shape: { kind: 'circle', diameterMm: 12.7 },
        at: { x: 31.75, y: 22.225 },
        depthMm: 9.525,
        through: true,
        cut: 'profile-inside',
        cutter: flat6,
      },
      {
        ...clock.features[0]!,
        name: 'label',
        face: 'back',
        shape: { kind: 'slot', lengthMm: 25, widthMm: 3 },
        at: { x: 15, y: 36 },
        depthMm: 1,
        cutter: flat3,
        turnedRad: 0.2,
      },
    ],
    stops: {
      ...clockPlain.stops,
      corner: { frontUp: 'far-right', backUp: 'far-right' },
      fence: 'right',
      fenceTouch: { kind: 'buttons', atMm: [8, 36] },
      sideTouch: { kind: 'buttons', atMm: [30] },
      made: { ...clockPlain.stops.made, kind: 'on-bed-pins' } as StopsJob['stops']['made'],
    },
    zero: {
      frontUp: {
        xy: { kind: 'kept', how: 'power-off', extra: null },
        z: { on: 'bed', at: null, tool: paper },
      },
      backUp: {
        xy: { kind: 'stops', at: { x: 30, y: 20 }, tool: paper },
        z: { on: 'bed', at: { x: 30, y: 20 }, tool: paper },
      },
    },
    needs: [
      {
        kind: 'concentric',
        name: 'plug in the groove',
        features: ['gasket groove', 'plug hole'],
        withinMm: 0.127,
      },
    ],
    shop: { ...clock.shop, units: 'inch' },
  },
  'corner features, long names': {
    ...clockPlain,
    name: 'Soundboard of a <b>psaltery</b> & its "bridge" — a name that goes on and on, longer than any drawing is wide',
    blank: { ...clock.blank, marked: [] },
    features: [
      [14, 14],
      [266, 14],
      [14, 166],
      [266, 166],
      [14, 30],
      [30, 14],
      [140, 90],
    ].map(([x, y], i) => ({
      ...clock.features[0]!,
      name: `foot number ${i + 1} of the very long-named supporting arrangement <script>`,
      face: i % 2 === 0 ? 'front' : 'back',
      shape: { kind: 'circle', diameterMm: 12 },
      at: { x: x!, y: y! },
      cut: 'drill',
    })),
    zero: {
      frontUp: { ...clockPlain.zero.frontUp, xy: { kind: 'middle', at: null, tool: paper } },
      backUp: { ...clockPlain.zero.backUp, xy: { kind: 'middle', at: null, tool: paper } },
    },
    needs: [
      { kind: 'misalignment', name: 'feet & <i>bridge</i>', at: { x: 14, y: 14 }, withinMm: 0.3 },
    ],
  },
  'tall panel about X': {
    ...clock,
    name: 'Tall panel',
    turn: 'about-x',
    blank: {
      ...clock.blank,
      widthMm: 90,
      heightMm: 350,
      marked: ['left', 'upper'],
      widthAtYMm: 175,
      heightAtXMm: 45,
    },
    features: clock.features.map((feature) => ({
      ...feature,
      at: { x: 45, y: 100 },
      shape:
        feature.shape.kind === 'circle'
          ? { kind: 'circle', diameterMm: Math.min(70, feature.shape.diameterMm) }
          : feature.shape,
    })),
    stops: {
      ...clock.stops,
      corner: { frontUp: 'far-left', backUp: 'near-left' },
      fence: 'left',
      fenceTouch: { kind: 'buttons', atMm: [30, 320] },
      sideTouch: { kind: 'buttons', atMm: [45] },
    },
    zero: {
      ...clock.zero,
      frontUp: { ...clock.zero.frontUp, xy: { kind: 'edges', at: null, tool: paper } },
      backUp: {
        xy: { kind: 'kept', how: 're-homed', extra: null },
        z: { on: 'top', at: null, tool: paper },
      },
    },
  },
};
