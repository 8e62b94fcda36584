import type { Context } from '../resolve/context.ts';
import { note } from '../resolve/context.ts';
import { said } from '../text/said.ts';
import type { Known } from './job.ts';
import { roundWithinMm } from './overlap.ts';

/** Push of a cutter straight down, N: an estimate for a sharp cutter of 6 mm in wood. */
const PUSH_N = 20;
/** Told when it gives more than this share of what the need allows (common practice, no source). */
const TOLD_SHARE = 0.1;
/** In bending, MPa: wood across and along its grain together, MDF, acrylic; values from memory, all near this. */
const STIFFNESS_MPA = 3000;
const POISSON = 0.3;

/**
 * How far what is left between two pockets gives under the cutter, as a plate that is held all round and pushed in its
 * middle: w = F a^2 / (16 pi D), D = E t^3 / 12 (1 - nu^2). Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and
 * Shells (value from memory); force and stiffness are estimates, so the figure is one too.
 */
export function giveMm(thickMm: number, radiusMm: number): number {
  const plate = (STIFFNESS_MPA * thickMm ** 3) / (12 * (1 - POISSON * POISSON));
  return (PUSH_N * radiusMm * radiusMm) / (16 * Math.PI * plate);
}

/** Notes a web that thins or lifts under the tool by a good part of what its need allows. */
export function noteThinWeb(context: Context, { raw, blank, features, needs }: Known): void {
  if (blank === null) return;
  for (const { need, raw: written } of needs) {
    if (need.kind !== 'web') continue;
    const pair = need.features.map((name) => features.find(({ feature }) => feature.name === name));
    const [one, other] = pair;
    if (one === undefined || other === undefined || context.spoilt.has(written)) continue;
    const webMm = blank.thickMm - one.feature.depthMm - other.feature.depthMm;
    const { lowMm, highMm } = need.limits;
    const allowedMm = Math.min(
      lowMm === null ? Infinity : webMm - lowMm,
      highMm === null ? Infinity : highMm - webMm,
    );
    if (webMm <= 0 || allowedMm <= 0) continue;
    const radiusMm = roundWithinMm(one.feature, other.feature);
    const gives = giveMm(webMm, radiusMm);
    if (gives <= TOLD_SHARE * allowedMm) continue;
    const first = (raw.first ?? 'front') === one.feature.face ? one.feature : other.feature;
    note(
      context,
      [written, 'web'],
      `the ${said(webMm)} mm that are left stand free over ${first.name}, ${said(2 * Math.round(radiusMm))} mm across, and give about ${gives.toPrecision(1)} mm under ${PUSH_N} N from the cutter (an estimate): fill ${first.name} before the second placing, or take light last passes`,
    );
  }
}
