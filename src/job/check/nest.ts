import type { Context } from '../resolve/context.ts';
import { fault } from '../resolve/context.ts';
import { suggestion } from '../schema/closest.ts';
import { said } from '../text/said.ts';
import type { Known } from './job.ts';

/** A nest must hold the turn, be lower than what lies in it, and be round something that is there by then. */
export function checkNest(context: Context, known: Known): void {
  const { raw, blank, locating } = known;
  if (locating?.locating !== 'nest' || raw.nest === undefined) return;
  const { wallMm, around } = locating.nest;
  if (blank !== null && wallMm >= blank.thickMm)
    fault(
      context,
      [raw.nest, 'wall'],
      `the walls of the nest are ${said(wallMm)} mm high, and the blank is ${said(blank.thickMm)} mm thick`,
      `write less than ${said(blank.thickMm)}, with room for the cutter to pass`,
    );
  if (around !== null) checkAround(context, known, raw.nest, around);
}

function checkAround(
  context: Context,
  { raw, features, copies, names }: Known,
  nest: object,
  around: string,
): void {
  if (copies.length > 1) {
    fault(
      context,
      [nest, 'around'],
      `there are ${copies.length} parts in the blank, and a nest holds one`,
      'leave around out, so that the whole blank lies in the nest, or use dowels',
    );
    return;
  }
  const found = features.find(({ feature }) => feature.name === around);
  if (found === undefined) {
    if (!names.features.includes(around))
      fault(
        context,
        [nest, 'around'],
        `no feature is called ${around}`,
        suggestion(around, names.features, 'feature'),
      );
    return;
  }
  if (context.spoilt.has(found.raw)) return;
  const { face, cut, through, shape, cutter } = found.feature;
  const first = raw.first ?? 'front';
  const tell = (message: string, instead: string): void => {
    fault(context, [nest, 'around'], message, instead);
  };
  if (cut !== 'profile-outside' || !through)
    tell(
      `${around} is not an outline that the part is cut free along`,
      'name a feature with cut: profile-outside and depth: through, or leave around out',
    );
  else if (face !== first)
    tell(
      `${around} is cut from the ${face}, so the part is not free yet in the second placing`,
      `cut it from the ${first}, or leave around out`,
    );
  else if (shape.kind === 'circle')
    tell(`${around} is round, and a round part can turn in its nest`, 'use dowels or stops');
  else if (cutter.kind !== 'flat')
    tell(
      `${around} is cut with ${cutter.name}, whose walls are not upright`,
      'cut it with a flat cutter',
    );
}
