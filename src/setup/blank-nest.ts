import type { Edge, Job, Nest } from '../job/job.ts';
import type { Columns } from './columns.ts';
import { edgeInFrame, type EdgeInFrame } from './edge-in-frame.ts';
import type { NestWalls } from './nest-walls.ts';
import { oppositeEdge } from './place.ts';
import type { Placing } from './placing.ts';
import type { SeatFrame } from './seat-frame.ts';
import { strikeOf, type Striking } from './strike.ts';
import { bevelFelt, placingKey } from './touching.ts';

/**
 * A nest round the whole blank. Its walls along X are parallel to the machine's X, the others lean with its Y; each edge
 * of the blank touches its wall at either end (bump and seat gap there, felt as by an arm) or, bulging, between. The nest's inside
 * corners are relieved. The seat frame of a nest is the layout itself.
 */
export function blankNest(
  job: Job,
  nest: Nest,
  placing: Placing,
  frame: SeatFrame,
  striking: Striking,
  columns: Columns,
): NestWalls {
  const { lengthMm, depthMm } = frame;
  const strike = strikeOf(job, striking, { x: 0, y: 0 }, columns, {
    x: lengthMm / 2,
    y: depthMm / 2,
  });
  const radius = columns.of({ kind: 'cutter-radius', cutter: nest.cutter.name });
  const clearance = columns.of({ kind: 'nest-clearance' });
  const thick = columns.of({ kind: 'thickness' });
  const felt = bevelFelt({ kind: 'plain', heightMm: nest.wallMm }, placing.faceUp);
  const above = nest.wallMm - striking.anchor.heightMm;
  const [left, near] = [placing.end.edge, placing.base.edge];
  const inA = frame.blankAlongSign;
  const inB = frame.blankInwardSign;
  // Counter-clockwise by their normals: right, far, left, near.
  const sides: readonly NestSide[] = [
    sideOf(oppositeEdge(left), inB, depthMm),
    sideOf(oppositeEdge(near), inA, lengthMm),
    sideOf(left, inB, depthMm),
    sideOf(near, inA, lengthMm),
  ];
  function sideOf(edge: Edge, sign: 1 | -1, alongMm: number): NestSide {
    const key = placingKey(placing.faceUp);
    const ends = ([1, 2] as const).map((end) => ({
      bump: columns.of({ kind: 'bump', edge, alongMm: end === 1 ? 0 : alongMm }),
      gap: columns.of({ kind: 'seat-gap', placing: key, contact: `${edge}-${end}` }),
    }));
    return {
      edge: edgeInFrame(edge, sign, alongMm, columns),
      ends: [ends[0]!, ends[1]!],
      outs: [0, 0],
      felt: 0,
      line: { out: 0, slope: 0, curve: 0, span: 0 },
    };
  }
  const normalA = new Float64Array(4);
  const normalB = new Float64Array(4);
  const wall = new Float64Array(4);

  return {
    count: 4,
    middle: [lengthMm / 2, depthMm / 2],
    normalA,
    normalB,
    load: (draws, i, shape) => {
      strike.load(draws, i, above);
      const { xx, xy, yy } = strike.perMm();
      const [x0, y0] = [strike.x(), strike.y()];
      const larger = draws[clearance + i]! + draws[radius + i]!;
      const lean = xy / (1 + yy);
      const long = Math.sqrt(1 + lean * lean);
      normalA[0] = 1 / long;
      normalB[0] = -lean / long;
      normalA[2] = -1 / long;
      normalB[2] = lean / long;
      normalB[1] = 1;
      normalB[3] = -1;
      wall[0] = (lengthMm * (1 + xx) + x0 - lean * y0) / long + larger;
      wall[1] = depthMm * (1 + yy) + y0 + larger;
      wall[2] = (lean * y0 - x0) / long + larger;
      wall[3] = -y0 + larger;
      const thickMm = job.blank.thickMm + draws[thick + i]!;
      for (const side of sides) read(side, draws, i, shape, felt, thickMm);
    },
    gaps: (cos, sin, gaps) => {
      for (let k = 0; k < 4; k++) {
        // The wall's normal as the blank sees it.
        const a = cos * normalA[k]! + sin * normalB[k]!;
        const b = cos * normalB[k]! - sin * normalA[k]!;
        const acrossIsA = k === 0 || k === 2;
        const outward = k < 2 ? 1 : -1;
        const from = k === 0 ? lengthMm : k === 1 ? depthMm : 0;
        const [across, along] = acrossIsA ? [a, b] : [b, a];
        gaps[k] = wall[k]! - reachOf(sides[k]!, across, along, outward, from);
      }
    },
  };
}

interface NestSide {
  readonly edge: EdgeInFrame;
  readonly ends: readonly [End, End];
  /** What its ends stand out more than the line, mm. */
  readonly outs: [number, number];
  felt: number;
  readonly line: { out: number; slope: number; curve: number; span: number };
}

interface End {
  readonly bump: number;
  readonly gap: number;
}

function read(
  side: NestSide,
  draws: Float64Array,
  i: number,
  shape: Float64Array,
  felt: (bevel: number, thickMm: number) => number,
  thickMm: number,
): void {
  const { edge, ends, outs, line } = side;
  side.felt = felt(draws[edge.bevel + i]!, thickMm);
  for (const k of [0, 1] as const)
    outs[k] = Math.max(0, draws[ends[k].bump + i]! + draws[ends[k].gap + i]!) + side.felt;
  line.out = shape[edge.at]!;
  line.slope = shape[edge.at + 1]!;
  line.curve = shape[edge.at + 2]!;
  line.span = shape[edge.at + 3]!;
}

/** How far an edge reaches in a direction whose parts across (outwards or not) and along it are given, mm. */
function reachOf(
  { edge, outs, felt, line }: NestSide,
  across: number,
  along: number,
  outward: 1 | -1,
  from: number,
): number {
  const { out, slope, curve, span } = line;
  const perOut = outward * across;
  const perT = edge.sign * along;
  const start = across * from + along * (edge.sign === 1 ? 0 : edge.from);
  const atStart = start + perOut * (out + outs[0]);
  const atEnd = start + perT * span + perOut * (out + slope * span + outs[1]);
  let most = Math.max(atStart, atEnd);
  if (curve > 0 && perOut > 0) {
    const top = (span + (slope + perT / perOut) / curve) / 2;
    const t = Math.max(0, Math.min(span, top));
    const here = out + slope * t + curve * t * (span - t) + felt;
    most = Math.max(most, start + perT * t + perOut * here);
  }
  return most;
}
