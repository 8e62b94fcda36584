import { angleOf, cosineOf, sineOf } from '../num/elementary.ts';
import { featurePath } from '../job/feature-path.ts';
import type { Job, Nest } from '../job/job.ts';
import { tangentsOf } from '../plane/tangents.ts';
import { affineLanding } from './affine-landing.ts';
import type { Columns } from './columns.ts';
import { landingOn, type Laid } from './landing.ts';
import type { NestWalls } from './nest-walls.ts';
import { blankInLayout, featureNamed } from './place.ts';
import { strikeOf, type Striking } from './strike.ts';
import type { Strains } from './wood-moves.ts';

/**
 * A nest round what the first placing cut out: both outlines go through the machine's errors of their own placing, the part's then
 * through its pose there; the part is smaller, the nest larger by the radius error of its cutter. They touch at sides and at
 * tangents of arcs, the nest's inside corners being relieved.
 */
export function partNest(
  job: Job,
  nest: Nest,
  [first, second]: readonly [Laid, Laid],
  striking: Striking,
  strains: Strains,
  columns: Columns,
): NestWalls {
  const feature = featureNamed(job, nest.around!);
  const { mirror } = second.placing;
  // A nest is looked at in the layout's own directions.
  const flipX = mirror === 'x' ? -1 : 1;
  const flipY = mirror === 'y' ? -1 : 1;
  const tangents = tangentsOf(featurePath(feature)).map(({ normalRad, at, radiusMm }) => ({
    // The part is turned over: its normals are mirrored.
    normal: {
      a: flipX * cosineOf(normalRad),
      b: flipY * sineOf(normalRad),
    },
    at,
    radiusMm,
  }));
  tangents.sort((one, other) => angle(one.normal) - angle(other.normal));
  const cut = `feature ${feature.name}`;
  const landed = affineLanding(feature.at, (at) =>
    landingOn(job, first, { cut, at, height: 'face', strains: null }, columns),
  );
  const { off } = landed;
  const { x: cx, y: cy } = feature.at;
  const lying = blankInLayout(job, mirror, feature.at);
  const strike = strikeOf(job, striking, { x: 0, y: 0 }, columns, lying);
  const above = nest.wallMm - striking.anchor.heightMm;
  const clearance = columns.of({ kind: 'nest-clearance' });
  const nestRadius = columns.of({ kind: 'cutter-radius', cutter: nest.cutter.name });
  const partRadius = columns.of({ kind: 'cutter-radius', cutter: feature.cutter.name });
  const push = columns.of({ kind: 'push-off', cut });
  const count = tangents.length;
  const normalA = new Float64Array(count);
  const normalB = new Float64Array(count);
  /** Where the nest's wall is along its normal, and the part's places as the blank lies unmoved. */
  const wall = new Float64Array(count);
  const partA = tangents.map(({ at }) => new Float64Array(at.length));
  const partB = tangents.map(({ at }) => new Float64Array(at.length));
  let [growX, growY, smaller] = [0, 0, 0];
  const lies = tangents.map(({ at }) => at.map((place) => blankInLayout(job, mirror, place)));
  const origin = second.frame.origin;

  return {
    count,
    middle: [lying.x - origin.x, lying.y - origin.y],
    normalA,
    normalB,
    load: (draws, i) => {
      landed.locate(draws, i);
      growX = strains.x;
      growY = strains.y;
      smaller = draws[partRadius + i]! - draws[push + i]!;
      strike.load(draws, i, above);
      const [x0, y0] = [strike.x(), strike.y()];
      const per = strike.perMm();
      const larger = draws[clearance + i]! + draws[nestRadius + i]!;
      for (let k = 0; k < count; k++) {
        const { normal, at, radiusMm } = tangents[k]!;
        // A side's normal turns with the machine's axes: it is the inverse transposed map of the nominal one.
        const a = normal.a / (1 + per.xx);
        const b = (normal.b - per.xy * a) / (1 + per.yy);
        const long = Math.sqrt(a * a + b * b);
        normalA[k] = a / long;
        normalB[k] = b / long;
        const { x, y } = lies[k]![0]!;
        const wallX = x + x0 + per.xx * x + per.xy * y - origin.x;
        const wallY = y + y0 + per.yy * y - origin.y;
        const [na, nb] = [normalA[k]!, normalB[k]!];
        const round = radiusMm === 0 ? 0 : mappedReach(radiusMm, na, nb, per.xx, per.xy, 0, per.yy);
        wall[k] = na * wallX + nb * wallY + round + larger;
        for (let p = 0; p < at.length; p++) {
          const [px, py] = [at[p]!.x, at[p]!.y];
          const offX = off[0]! + off[2]! * (px - cx) + off[3]! * (py - cy);
          const offY = off[1]! + off[4]! * (px - cx) + off[5]! * (py - cy);
          const nominal = lies[k]![p]!;
          partA[k]![p] = nominal.x - origin.x + flipX * (offX * (1 + growX) + growX * px);
          partB[k]![p] = nominal.y - origin.y + flipY * (offY * (1 + growY) + growY * py);
        }
      }
    },
    gaps: (cos, sin, gaps) => {
      for (let k = 0; k < count; k++) {
        const a = cos * normalA[k]! + sin * normalB[k]!;
        const b = cos * normalB[k]! - sin * normalA[k]!;
        const { at, radiusMm } = tangents[k]!;
        let most = -Infinity;
        for (let p = 0; p < at.length; p++)
          most = Math.max(most, a * partA[k]![p]! + b * partB[k]![p]!);
        if (radiusMm !== 0) {
          const [x, y] = [flipX * a * (1 + growX), flipY * b * (1 + growY)];
          most += mappedReach(radiusMm, x, y, off[2]!, off[3]!, off[4]!, off[5]!);
        }
        gaps[k] = wall[k]! - (most - smaller);
      }
    },
  };
}

const angle = ({ a, b }: { readonly a: number; readonly b: number }): number => angleOf(b, a);

/** Reach of a disc that went through a map, whose parts less the identity are given. */
function mappedReach(
  radiusMm: number,
  a: number,
  b: number,
  xx: number,
  xy: number,
  yx: number,
  yy: number,
): number {
  const x = a + xx * a + yx * b;
  const y = b + xy * a + yy * b;
  return radiusMm * Math.sqrt(x * x + y * y);
}
