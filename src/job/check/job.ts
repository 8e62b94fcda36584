import type { Blank, Job, Locating, Shop, Stops } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import type { KnownFeature } from '../resolve/features.ts';
import type { KnownNeed } from '../resolve/needs.ts';
import type { Copy } from '../resolve/repeat.ts';
import type { RawJob } from '../schema/raw-job.ts';
import { checkBed } from './bed.ts';
import { noteBetweenStops } from './between-stops.ts';
import { checkContacts } from './contacts.ts';
import { checkCorners } from './corners.ts';
import { noteDepth } from './depth.ts';
import { checkDowels } from './dowels.ts';
import { checkFeatures } from './features.ts';
import { noteMeeting } from './meeting.ts';
import { checkNeeds } from './needs.ts';
import { checkNest } from './nest.ts';
import { checkRepeat } from './repeat.ts';
import { noteThinWeb } from './thin-web.ts';
import { checkTouchPlaces } from './touch-place.ts';
import { checkZeros } from './zero.ts';

/** What could be made out of a job; null for what is faulty and told already. */
export interface Known {
  readonly raw: Partial<RawJob>;
  readonly shop: Shop;
  readonly blank: Blank | null;
  readonly features: readonly KnownFeature[];
  readonly locating: Locating | null;
  /** The stops, when they locate the blank. */
  readonly stops: Stops | null;
  readonly zero: Job['zero'] | null;
  readonly needs: readonly KnownNeed[];
  readonly onBed: Job['onBed'] | null;
  /** The parts in one blank; one alone when nothing is repeated. */
  readonly copies: readonly Copy[];
  readonly names: { readonly features: readonly string[]; readonly cutters: readonly string[] };
}

/** Tells the context what cannot be meant of how a job is laid, though each part of it reads well. */
export function checkJob(context: Context, known: Known): void {
  checkBed(context, known);
  checkCorners(context, known);
  checkContacts(context, known);
  checkDowels(context, known);
  checkNest(context, known);
  checkZeros(context, known);
  checkTouchPlaces(context, known);
  noteBetweenStops(context, known);
}

/** The same of what hangs on the drawing alone: features, needs, sizes. */
export function checkDrawing(context: Context, known: Known): void {
  checkFeatures(context, known);
  checkNeeds(context, known);
  checkRepeat(context, known);
  noteDepth(context, known);
  noteMeeting(context, known);
  noteThinWeb(context, known);
}
