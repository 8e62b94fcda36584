import type { Band, Edge, Job } from '../../../src/job/job.ts';
import type { Placing } from '../../../src/setup/placing.ts';
import type { Off } from '../misalign.ts';
import type { XY } from './vectors.ts';

export interface RealBlank {
  readonly thickMm: number;
  /** (1 + strain) along each axis in this placing. */
  readonly stretch: XY;
  /** Sag of the edge as it is in this placing, at a coordinate along it as it is in this placing. */
  readonly sagNowMm: (edge: Edge, along: number) => number;
  /**
   * How far a blank place lies beyond the edge at the same coordinate along it, as they are in this
   * placing; `sagNow` replaces the edge's sag there.
   */
  readonly beyond: (edge: Edge, place: XY, sagNow?: number) => number;
  /** How far the edge's bevel makes it stand out where a stop feels it, mm. */
  readonly bevelMm: (edge: Edge) => number;
}

export const alongOf = (edge: Edge): 'x' | 'y' =>
  edge === 'lower' || edge === 'upper' ? 'x' : 'y';
export const acrossOf = (edge: Edge): 'x' | 'y' => (alongOf(edge) === 'x' ? 'y' : 'x');
/** Sign of the outward direction in the blank frame. */
export const outOf = (edge: Edge): 1 | -1 => (edge === 'upper' || edge === 'right' ? 1 : -1);

const HEIGHTS = 8;

/** The blank as it really is in one placing, all in the blank frame. */
export function realBlank(job: Job, off: Off, placing: Placing, band: Band): RealBlank {
  const { widthMm, heightMm, widthAtYMm, heightAtXMm } = job.blank;
  const get = (key: string): number => off[key] ?? 0;
  const thickMm = job.blank.thickMm + get('thickness');
  const moved = placing.order === 'second' ? 1 : 0;
  const stretch = { x: 1 + moved * get('movement/x'), y: 1 + moved * get('movement/y') };
  const lineAt = (edge: Edge, along: number): number => {
    switch (edge) {
      case 'lower':
        return 0;
      case 'upper':
        return heightMm + get('height') + get('taper/y') * (along - heightAtXMm);
      case 'left':
        return get('square') * along;
      case 'right':
        return (
          widthMm + get('width') + get('square') * along + get('taper/x') * (along - widthAtYMm)
        );
    }
  };
  const sagMm = (edge: Edge, along: number): number => {
    const length = alongOf(edge) === 'x' ? widthMm : heightMm;
    return ((4 * get(`crook/${edge}`)) / length) * along * (length - along);
  };
  const sagNowMm = (edge: Edge, along: number): number =>
    stretch[acrossOf(edge)] * sagMm(edge, along / stretch[alongOf(edge)]);
  return {
    thickMm,
    stretch,
    sagNowMm,
    beyond: (edge, place, sagNow) => {
      const [along, across] = [alongOf(edge), acrossOf(edge)];
      const line = stretch[across] * lineAt(edge, place[along] / stretch[along]);
      return outOf(edge) * (place[across] - line) - (sagNow ?? sagNowMm(edge, place[along]));
    },
    bevelMm: (edge) => {
      const outs = heightsOf(band).map((fromBedMm) => {
        const z = placing.faceUp === 'front' ? fromBedMm : thickMm - fromBedMm;
        return get(`bevel/${edge}`) * (z - thickMm / 2);
      });
      return Math.max(...outs);
    },
  };
}

/** Heights above the bed at which a stop can touch. */
function heightsOf(band: Band): readonly number[] {
  if (band.kind === 'narrow') return [band.touchHeightMm];
  return Array.from({ length: HEIGHTS + 1 }, (_, index) => (band.heightMm * index) / HEIGHTS);
}
