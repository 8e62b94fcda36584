import type { PlacingPlan } from '../../hold/placing-plan.ts';
import type { Facet } from '../../jig/mesh.ts';
import { facetsOf, solidOf } from '../../jig/solid.ts';
import type { Job } from '../../job/job.ts';
import { unionOf } from '../../plane/clip.ts';
import { boundsOf } from '../../plane/measure.ts';
import type { Outline } from '../../plane/outline.ts';
import type { Placing } from '../../setup/placing.ts';
import { standingIn } from '../../sheet/locating/way-of.ts';
import type { Body } from '../../sweep/body.ts';
import type { ReportInput } from '../report-input.ts';
import { blankBlock } from './blank-block.ts';
import { blockOf, type Block } from './block.ts';

/** What stands on the bed in one placing, in the order in which it is drawn and listed. */
export interface Scene {
  readonly placing: Placing;
  readonly things: readonly Thing[];
}

export interface Thing {
  readonly kind: 'bed' | 'blank' | 'locates' | 'holds';
  /** In plain words: `stops`, `dowels`. */
  readonly words: string;
  /** Walls and level faces: of printed stops those of their bodies, for the still picture. */
  readonly blocks: readonly Block[];
  /** The printed solid itself, where there is one; it is shown in place of the blocks. */
  readonly facets: readonly Facet[];
}

/** What of a report's input stands on the bed. */
type Stood = Pick<ReportInput, 'job' | 'placings' | 'stops' | 'hold'>;

/** Both placings in the order of work, at their end: what is cut by then is cut. */
export function scenesOf(input: Stood): readonly [Scene, Scene] {
  const { job, placings } = input;
  const { frontUp, backUp } = placings;
  const [one, two] = job.first === 'front' ? [frontUp, backUp] : [backUp, frontUp];
  return [sceneOf(input, one), sceneOf(input, two)];
}

function sceneOf(input: Stood, placing: Placing): Scene {
  const { job } = input;
  const blank: Thing = {
    kind: 'blank',
    words: 'the blank',
    blocks: [blankBlock(job, placing)],
    facets: [],
  };
  const things = [blank, ...located(input, placing), ...held(input, placing)];
  return { placing, things: [bed(things), ...things] };
}

function located({ job, placings, stops }: Stood, placing: Placing): readonly Thing[] {
  if (job.locating === 'stops') {
    if (stops.length === 0) return [];
    return [
      {
        kind: 'locates',
        words: 'stops',
        blocks: stops.flatMap(({ body, heads }) => [body, ...heads].map(blockOfBody)),
        facets: stops.flatMap(({ profile }) => facetsOf(solidOf(profile))),
      },
    ];
  }
  const there = standingIn(job, placings)
    .filter((one) => one.placings.includes(placing.faceUp))
    .map(({ body }) => body);
  if (there.length === 0) return [];
  return [
    { kind: 'locates', words: LOCATED_BY[job.locating], blocks: joinedBodies(there), facets: [] },
  ];
}

const LOCATED_BY: Readonly<Record<Exclude<Job['locating'], 'stops'>, string>> = {
  dowels: 'dowels',
  'fence-and-dowel': 'fence and dowel',
  nest: 'nest',
};

function held({ hold }: Stood, placing: Placing): readonly Thing[] {
  if (hold.plan === null) return [];
  const plan: PlacingPlan = placing.faceUp === 'front' ? hold.plan.frontUp : hold.plan.backUp;
  const bodies = [
    ...(plan.layout?.straps ?? []).flatMap((strap) => strap.bodies),
    ...plan.screws.map(({ body }) => body),
  ];
  if (bodies.length === 0) return [];
  return [
    { kind: 'holds', words: 'clamps and screws', blocks: bodies.map(blockOfBody), facets: [] },
  ];
}

const blockOfBody = ({ outline, lowMm, highMm }: Body): Block =>
  blockOf([outline], lowMm, highMm, []);

/** Bodies of one height as one: the walls of a nest run into each other. */
function joinedBodies(bodies: readonly Body[]): readonly Block[] {
  const heights = [...new Set(bodies.map(({ lowMm, highMm }) => `${lowMm} ${highMm}`))];
  return heights.map((key) => {
    const same = bodies.filter(({ lowMm, highMm }) => `${lowMm} ${highMm}` === key);
    const { lowMm, highMm } = same[0]!;
    return blockOf(unionOf(same.map(({ outline }) => outline)), lowMm, highMm, []);
  });
}

const BED_AROUND_MM = 18;
const BED_THICK_MM = 6;

/** The bed under all of it, no larger than a picture needs. */
function bed(things: readonly Thing[]): Thing {
  const places = things.flatMap(({ blocks }) =>
    blocks.flatMap(({ layers }) => layers.flatMap(({ loops }) => loops.flat())),
  );
  const { lowX, lowY, highX, highY } = boundsOf(places);
  const outline: Outline<'layout'> = [
    { x: lowX - BED_AROUND_MM, y: lowY - BED_AROUND_MM },
    { x: highX + BED_AROUND_MM, y: lowY - BED_AROUND_MM },
    { x: highX + BED_AROUND_MM, y: highY + BED_AROUND_MM },
    { x: lowX - BED_AROUND_MM, y: highY + BED_AROUND_MM },
  ];
  return {
    kind: 'bed',
    words: 'the bed',
    blocks: [blockOf([outline], -BED_THICK_MM, 0, [])],
    facets: [],
  };
}
