import type { Job, Stops } from '../../job/job.ts';
import { BATCH } from '../../num/batch.ts';
import type { Columns } from '../columns.ts';
import { edgeInFrame } from '../edge-in-frame.ts';
import type { Contact, LyingEdge, Placing } from '../placing.ts';
import type { SeatFrame } from '../seat-frame.ts';
import { placingKey, type ContactColumns } from '../touching.ts';
import { edgeColumns, type StrainColumns } from './edge-columns.ts';
import type { FacesColumns } from './faces-columns.ts';
import { seatTogether } from './seat-passes.ts';
import type { Common, Meeting, PoseColumns } from './seat-parts.ts';

export interface SeatColumns extends PoseColumns {
  readonly load: (draws: Float64Array, count: number, strains: StrainColumns | null) => void;
}

interface Seated {
  readonly job: Job;
  readonly stops: Stops;
  readonly placing: Placing;
  readonly frame: SeatFrame;
  readonly faces: FacesColumns;
}

/**
 * The same as `seatOf` with `sideSlide`, and to the bit, over columns. Each pass is made of all trials before the next, so that
 * one trial's square root need not wait for another's division; what has settled takes no further part.
 */
export function seatColumns(
  { job, stops, placing, frame, faces }: Seated,
  columns: Columns,
  touching: (placing: Placing, contact: Contact) => ContactColumns,
): SeatColumns {
  const key = placingKey(placing.faceUp);
  const across = frame.along === 'x' ? 'y' : 'x';
  const aOf = ({ at }: Contact): number =>
    frame.alongSign * (at[frame.along] - frame.origin[frame.along]);
  const bOf = ({ at }: Contact): number => frame.inwardSign * (at[across] - frame.origin[across]);
  const meeting = (
    face: 'fence' | 'side',
    { edge }: LyingEdge,
    sign: 1 | -1,
    lengthMm: number,
    placeOf: (contact: Contact) => number,
  ): Meeting => {
    const contacts = placing.contacts.filter((contact) => contact.face === face);
    if (face === 'fence') contacts.sort((one, other) => placeOf(one) - placeOf(other));
    const one = contacts[0]!;
    const other = contacts[1] ?? one;
    const [first, second] = [touching(placing, one), touching(placing, other)];
    const isArm = face === 'fence' ? one.kind === 'arm-end' : contacts.length > 1;
    const { from, bevel } = edgeInFrame(edge, sign, lengthMm, columns);
    return {
      edge: edgeColumns(job, edge, columns),
      from,
      sign,
      bevel,
      give: columns.of({ kind: 'give', placing: key, face }),
      at1: placeOf(one),
      at2: placeOf(other),
      bump1: first.bump,
      gap1: first.gap,
      bump2: second.bump,
      gap2: second.gap,
      floor: isArm ? 0 : -Infinity,
      isArm,
    };
  };
  const fence = meeting('fence', placing.base, frame.blankAlongSign, frame.lengthMm, aOf);
  const side = meeting('side', placing.end, frame.blankInwardSign, frame.depthMm, bOf);
  const { band } = stops;
  const common: Common = {
    cornerA: frame.cornerA,
    rock: fence.isArm ? columns.of({ kind: 'rock', placing: key }) : 0,
    dragSide: columns.of({ kind: 'clamp-drag', placing: key, from: 'side' }),
    dragFence: columns.of({ kind: 'clamp-drag', placing: key, from: 'fence' }),
    thick: columns.of({ kind: 'thickness' }),
    thickMm: job.blank.thickMm,
    isNarrow: band.kind === 'narrow',
    feltMm: band.kind === 'narrow' ? band.touchHeightMm : band.heightMm,
    feltSign: placing.faceUp === 'front' ? 1 : -1,
  };
  const pose = {
    cos: new Float64Array(BATCH),
    sin: new Float64Array(BATCH),
    backA: new Float64Array(BATCH),
    backB: new Float64Array(BATCH),
  };
  return {
    ...pose,
    load: (draws, count, strains) => {
      faces.load(draws, count);
      fence.edge.load(draws, count, strains);
      side.edge.load(draws, count, strains);
      seatTogether(common, fence, side, faces, pose, draws, count);
    },
  };
}
