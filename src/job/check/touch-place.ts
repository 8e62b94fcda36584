import { isInsidePath } from '../../plane/path-distance.ts';
import { featurePath } from '../feature-path.ts';
import type { Feature } from '../job.ts';
import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { pointMm } from '../resolve/lengths.ts';
import { featureOfCopy } from '../resolve/repeat.ts';
import { said } from '../text/said.ts';
import { shiftWhenTurned } from '../turned.ts';
import type { Known } from './job.ts';

/** Z cannot be touched on top where the first placing has cut right through. */
export function checkTouchPlaces(context: Context, known: Known): void {
  const { raw, features, copies, blank } = known;
  if (raw.zero === undefined || blank === null) return;
  const first = raw.first ?? 'front';
  const second = first === 'front' ? 'back' : 'front';
  const zero = raw.zero[`${second}-up`];
  const touched = zero['z-touched'];
  if (touched === undefined || zero.z !== 'top') return;
  const place = pointMm(touched);
  const size = { x: blank.widthMm, y: blank.heightMm };
  const lies = shiftWhenTurned(known.locating, raw.turn, blank);
  // With the back up the blank lies mirrored about the turn.
  const mirrored = second === 'back';
  const at = {
    x: mirrored && raw.turn === 'about-y' ? size.x + lies.x - place.x : place.x,
    y: mirrored && raw.turn === 'about-x' ? size.y + lies.y - place.y : place.y,
  };
  const everywhere = features.flatMap(({ feature }) =>
    copies.map((copy) => featureOfCopy(feature, copy)),
  );
  const hole = everywhere.find(
    (feature) => feature.face === first && feature.through && isOver(feature, at),
  );
  if (hole === undefined) return;
  fault(
    context,
    [zero, 'z-touched'],
    `${hole.name} is cut right through before, so at [${said(place.x)}, ${said(place.y)}] there is no top to touch`,
    'name a place that is still there',
  );
}

/** Where a feature that is cut through leaves nothing: within its outline, unless that is the part itself. */
const isOver = (feature: Feature, at: Feature['at']): boolean =>
  feature.cut !== 'profile-outside' && isInsidePath(at, featurePath(feature));
