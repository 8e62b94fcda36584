import { exactShop, smallJob, withBlank } from './small-job.ts';

/** Numbers from 0 to 1, the same for the same seed (a Lehmer generator; only to vary jobs). */
export function luckOf(seed: number): () => number {
  let state = (seed * 48271 + 11) % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** A board with rough edges, plain or careful stops and a need that is sometimes missed, as the seed has it. */
export function randomJob(seed: number): { readonly job: string; readonly shop: string } {
  const next = luckOf(seed);
  for (let k = 0; k < 5; k++) next();
  const up = (most: number): string => (next() ** 2 * most).toFixed(3);
  const one = <T>(...of: readonly T[]): T =>
    of[Math.min(of.length - 1, Math.floor(next() * of.length))]!;
  const made = one('set-by-hand', 'on-bed-pins', 'milled-in-place');
  const milled = made === 'milled-in-place';
  const stops = [
    'stops:',
    `  corner: {front-up: near-left, back-up: ${one('near-left', 'near-right')}}`,
    '  fence: lower-edge',
    `  fence-touch: ${one('[20, 180]', '[15, 110]', '{arm: [10, 90]}')}`,
    `  side-touch: ${one('60', '15', '{arm: [10, 80]}')}`,
    `  ${one('touch-height: 10', 'height: 6')}`,
    `  made: ${made}`,
    ...(milled ? ['  cutter: flat 6'] : []),
    `  seat-gap: half-normal ${up(0.05)}`,
  ].join('\n');
  const first = milled ? 'milled-stops' : one('stops', 'middle');
  const second =
    first === 'middle'
      ? '{xy: middle'
      : one('{xy: kept, kept: held', '{xy: kept, kept: power-off', '{xy: stops');
  const zero = [
    'zero:',
    `  front-up: {xy: ${first}, z: ${one('top', 'bed')}, z-touched: ${one('[100, 60]', '[20, 15]')}, with: paper}`,
    `  back-up: ${second}, z: ${one('top', 'bed')}, z-touched: ${one('[100, 60]', '[20, 15]')}, with: paper}`,
  ].join('\n');
  const needs = [
    'needs:',
    `  - {name: hole in the pocket, concentric: [hole, pocket], within: ${(0.1 + 0.25 * next()).toFixed(2)}}`,
    `  - {name: corner, misalignment: [${Math.round(20 + 160 * next())}, ${Math.round(15 + 90 * next())}], within: ${(0.15 + 0.3 * next()).toFixed(2)}}`,
    ...(next() < 0.5
      ? []
      : ['  - {name: wood between, web: [hole, pocket], from: 2.75, up-to: 3.25}']),
  ].join('\n');
  const job = withBlank(smallJob({ stops, zero, needs, machine: `lean: ±${up(0.5)} per 200` }), {
    size: `[200 ±${up(0.8)}, 120 ±${up(0.8)}, 20 ±${up(0.3)}]`,
    square: `±${up(0.5)} per 200`,
    'taper-x': `±${up(0.4)} per 200`,
    'taper-y': `±${up(0.4)} per 200`,
    bevel: `±${up(1)} deg`,
    crook: `±${up(0.3)} per 300`,
    bumps: `${up(0.08)} sd`,
    cup: `{hump: 0..${up(0.3)}, along: x, pressed-flat: no}`,
  });
  const bed = `  lean-x: ±${up(0.4)} per 200\n  lean-y: ±${up(0.4)} per 200`;
  return { job, shop: exactShop({ bed, paper: `±${up(0.08)}` }) };
}
