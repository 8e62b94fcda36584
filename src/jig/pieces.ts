import type { StopsJob } from '../job/job.ts';
import type { Contact, Placing } from '../setup/placing.ts';
import type { Placings } from '../sweep/clearances.ts';
import { cornerFrame, layoutInCorner, type CornerFrame } from './corner-frame.ts';
import { stopNumbers } from './numbers.ts';
import { given } from './parts/size.ts';

/** One piece of the stops before anything is drawn: its corner and the flats it must carry. */
export interface Piece {
  readonly name: string;
  readonly frame: CornerFrame;
  /** Along the fence from the corner, and along the side stop, in rising order. */
  readonly fenceLands: readonly Reach[];
  readonly sideLands: readonly Reach[];
  /** Steel pins that touch instead of printed flats, one in the middle of each land; null: none. */
  readonly buttons: SteelButtons | null;
}

/** Pins that stand in grooves of a stop, open towards the blank; diameters mm. */
export interface SteelButtons {
  readonly diameterMm: number;
  readonly grooveMm: number;
}

/** A piece without a side stop is a bar along the fence. */
export const isBar = ({ sideLands }: Pick<Piece, 'sideLands'>): boolean => sideLands.length === 0;

/** A flat between two distances from the corner, on the final face, mm. */
export interface Reach {
  readonly fromMm: number;
  readonly toMm: number;
  readonly contacts: readonly string[];
}

/** One piece when both placings use one side stop; else one at each end of the fence. */
export function piecesOf(job: StopsJob, placings: Placings): readonly Piece[] {
  const { frontUp, backUp } = placings;
  return frontUp.end.side === backUp.end.side || frontUp.sideStop === null
    ? [piece(job, frontUp, 'alone')]
    : [piece(job, frontUp, 'shares the fence'), piece(job, backUp, 'shares the fence')];
}

function piece(job: StopsJob, placing: Placing, company: 'alone' | 'shares the fence'): Piece {
  const frame = cornerFrame(job, placing.base.side, placing.end.side);
  const ends = [placing.base.side, placing.end.side];
  const along = ['near', 'far'].find((side) => ends.includes(side as 'near'));
  const across = ['left', 'right'].find((side) => ends.includes(side as 'left'));
  const buttons = steelButtons(job);
  const fence = lands(frame, placing, 'fence', buttons);
  return {
    name:
      placing.sideStop === null
        ? `fence stop, ${placing.base.side}`
        : `corner stop, ${along!} ${across!}`,
    frame,
    buttons,
    fenceLands: company === 'alone' ? fence : ownShare(fence, frame.fenceLengthMm / 2),
    sideLands: lands(frame, placing, 'side', buttons),
  };
}

function steelButtons({ jig }: StopsJob): SteelButtons | null {
  const wish = jig['steel-buttons'];
  if (wish === undefined) return null;
  const diameterMm = given(wish.diameter);
  return { diameterMm, grooveMm: diameterMm + given(wish.clearance) };
}

function lands(
  frame: CornerFrame,
  placing: Placing,
  face: Contact['face'],
  buttons: SteelButtons | null,
): readonly Reach[] {
  const halfMm = Math.max(stopNumbers.landMm, buttons?.diameterMm ?? 0) / 2;
  const contacts = placing.contacts
    .filter((contact) => contact.face === face)
    .map((contact) => {
      const at = layoutInCorner(frame, contact.at);
      return { ...contact, alongMm: face === 'fence' ? at.x : at.y };
    })
    .sort((a, b) => a.alongMm - b.alongMm);
  const [first, second] = contacts;
  return first?.kind === 'arm-end' && second !== undefined
    ? [{ fromMm: first.alongMm, toMm: second.alongMm, contacts: [first.id, second.id] }]
    : contacts.map(({ alongMm, id }) => ({
        fromMm: alongMm - halfMm,
        toMm: alongMm + halfMm,
        contacts: [id],
      }));
}

/** Of a fence that two pieces share, what lies nearer to this one; an arm across is parted. */
function ownShare(fence: readonly Reach[], halfMm: number): readonly Reach[] {
  const { betweenPiecesMm, betweenBackMm, pastLandMm } = stopNumbers;
  const lastMm = halfMm - betweenPiecesMm / 2 - betweenBackMm - pastLandMm;
  return fence.flatMap((land) => {
    const [low, high] = land.contacts;
    if (low === undefined || high === undefined)
      // A button right on the middle belongs to neither more than the other: the first one named.
      return (land.fromMm + land.toMm) / 2 < halfMm ? [land] : [];
    if (land.toMm <= halfMm) return [land];
    return land.fromMm < halfMm ? [{ ...land, toMm: lastMm, contacts: [low] }] : [];
  });
}
