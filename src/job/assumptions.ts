import { unreachable } from '../num/invariant.ts';
import type {
  Bed,
  Blank,
  Cutter,
  DowelHoles,
  Fence,
  Job,
  Machine,
  Origin,
  Spread,
  Stops,
  TouchTool,
  Zero,
} from './job.ts';
import { jigCutterIn } from './located.ts';
import { said } from './text/said.ts';
import { depthCounts, outlinesThatCount } from './what-counts.ts';

/** A figure that nobody stated: what it is about, how large it was taken, and why. */
export interface Assumption {
  readonly what: string;
  readonly text: string;
  readonly because: string;
}

/** Everything in a job that is assumed, in plain words and in the order of the files; no figure twice. */
export function assumptionsOf(job: Job): readonly Assumption[] {
  const { x, y } = job.onBed.value;
  const corner = { origin: job.onBed.origin, text: `${said(x)}, ${said(y)} mm` };
  const withDepth = depthCounts(job);
  const figures: readonly Figure[] = [
    ['where the front-up corner stands on the bed', corner],
    ...blankFigures(job.blank),
    ...(withDepth ? depthFigures(job.blank) : []),
    ...locatingFigures(job),
    ...zeroFigures(job.zero.frontUp, 'front up', withDepth),
    ...zeroFigures(job.zero.backUp, 'back up', withDepth),
    ...machineFigures(job.shop.machine),
    ...(withDepth ? bedFigures(job.shop.bed) : []),
    ...cuttersInUse(job).map((cutter): Figure => [`radius of ${cutter.name}`, cutter.radiusError]),
    ...outlineCutters(job).flatMap(outlineFigures),
  ];
  return figures.flatMap(([what, { origin, text }]) =>
    origin.kind === 'assumed' ? [{ what, text, because: origin.because }] : [],
  );
}

type Figure = readonly [what: string, figure: { readonly origin: Origin; readonly text: string }];

const blankFigures = (blank: Blank): readonly Figure[] => [
  ['size along X', blank.widthSpread],
  ['size along Y', blank.heightSpread],
  ['thickness', blank.thickSpread],
  ['how square the left edge is to the lower', blank.squareSpread],
  ['left and right edges out of parallel', blank.taperXSpread],
  ['lower and upper edges out of parallel', blank.taperYSpread],
  ['bevel of the edges', blank.bevelSpread],
  ['crook of the edges', blank.crookSpread],
  ['bumps on the edges', blank.bumpSpread],
  ['movement of the wood along X', blank.movementX],
  ['movement of the wood along Y', blank.movementY],
];

const depthFigures = (blank: Blank): readonly Figure[] => [
  ['thickness changing along X', blank.thicknessTaperX],
  ['thickness changing along Y', blank.thicknessTaperY],
  ['how far the middle stands over the edges', blank.cup.hump],
  ...(blank.cup.up === null ? [EITHER_FACE] : []),
  ['chips under the blank', blank.swarf],
];

const EITHER_FACE: Figure = [
  'the face on which the middle stands up',
  { text: 'either', origin: { kind: 'assumed', because: 'nobody said which' } },
];

const bedFigures = (bed: Bed): readonly Figure[] => [
  ['lean of the bed along X', bed.leanX],
  ['lean of the bed along Y', bed.leanY],
  ['unevenness of the bed', bed.unevenness],
];

function locatingFigures(job: Job): readonly Figure[] {
  switch (job.locating) {
    case 'stops':
      return fenceFigures(job.stops, job.hold.clampDrag, isOpposite(job.stops));
    case 'fence-and-dowel':
      return [
        ...fenceFigures(job.fenceAndDowel, job.hold.clampDrag, false),
        ...dowelFigures(job.fenceAndDowel.dowel),
      ];
    case 'dowels':
      return [...dowelFigures(job.dowels), ...laidFigures(job.dowels)];
    case 'nest':
      return [
        ['clearance of the nest', job.nest.clearance],
        ...(job.nest.around === null
          ? ([['chips at the walls of the nest', job.nest.seatGap]] as const)
          : ([['how squarely the blank is laid', job.nest.laid]] as const)),
      ];
    default:
      return unreachable(job);
  }
}

const fenceFigures = (fence: Fence, clampDrag: Spread, isOpposite: boolean): readonly Figure[] => [
  ...madeFigures(fence, isOpposite),
  ['chips at the stops', fence.seatGap],
  ['how far a stop yields', fence.give],
  ['shift when clamping', clampDrag],
];

const dowelFigures = ({ clearance, drilled, drillError }: DowelHoles): readonly Figure[] => [
  ...(clearance.kind === 'stated'
    ? ([['clearance of the dowels', clearance.spread]] as const)
    : ([
        ['diameter of the dowels', clearance.pin],
        ['diameter of the holes', clearance.hole],
      ] as const)),
  ...(drilled === 'separately' ? ([['where the holes are drilled', drillError]] as const) : []),
];

const laidFigures = ({ drilled, laid }: DowelHoles): readonly Figure[] =>
  drilled === 'with-the-blank' ? [['how squarely the blank is laid', laid]] : [];

/** Spacing only counts where there is a second side stop. */
function madeFigures({ made }: Fence, isOpposite: boolean): readonly Figure[] {
  if (made.kind === 'milled-in-place') return [];
  const set: readonly Figure[] = [
    ['fence turned', made.angle],
    ['side stop out of square to the fence', made.square],
  ];
  return isOpposite ? [...set, ['distance of the second side stop', made.spacing]] : set;
}

const isOpposite = ({ corner }: Stops): boolean => corner.frontUp !== corner.backUp;

const zeroFigures = ({ xy, z }: Zero, placing: string, withZ: boolean): readonly Figure[] => {
  const touch = (what: string, tool: TouchTool): Figure => [
    `touch of ${what} with ${tool.name}, ${placing}`,
    tool.spread,
  ];
  const ofXy = (): readonly Figure[] => {
    if ('tool' in xy) return [touch('X and Y', xy.tool)];
    if (xy.kind !== 'kept' || xy.extra === null) return [];
    return [[`zero kept, ${xy.how}, ${placing}`, xy.extra]];
  };
  return [...ofXy(), ...(withZ ? [touch('Z', z.tool)] : [])];
};

const machineFigures = (machine: Machine): readonly Figure[] => [
  ['lean of the Y axis', machine.lean],
  ['scale of the X axis', machine.scaleX],
  ['scale of the Y axis', machine.scaleY],
  ['lost motion of an axis', machine.lostMotion],
  ['repeatability', machine.repeatability],
  ['lean of the cutter along X', machine.cutterLeanX],
  ['lean of the cutter along Y', machine.cutterLeanY],
];

function cuttersInUse(job: Job): Job['shop']['cutters'] {
  const names = new Set(job.features.map(({ cutter }) => cutter.name));
  const milling = jigCutterIn(job);
  if (milling !== null) names.add(milling.name);
  return job.shop.cutters.filter(({ name }) => names.has(name));
}

function outlineCutters(job: Job): readonly Cutter[] {
  const names = new Set(outlinesThatCount(job).map(({ cutter }) => cutter.name));
  return job.shop.cutters.filter(({ name }) => names.has(name));
}

const outlineFigures = ({ name, pushOff, vee }: Cutter): readonly Figure[] => [
  [`how far a cut pushes ${name} aside`, pushOff],
  ...(vee === null ? [] : [[`flat at the tip of ${name}`, vee.tipFlatMm] as const]),
];
