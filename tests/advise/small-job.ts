/** A board with one front and one back feature, in a shop where nothing is off but what a test says. */
export interface SmallJob {
  readonly blank?: string;
  readonly stops?: string;
  readonly zero?: string;
  readonly features?: string;
  readonly needs?: string;
  readonly more?: string;
  readonly machine?: string;
  readonly bed?: string;
  readonly paper?: string;
}

const STOPS = `stops:
  corner: {front-up: near-left, back-up: near-left}
  fence: lower-edge
  fence-touch: [20, 180]
  side-touch: 60
  touch-height: 10
  made: milled-in-place
  cutter: flat 6
  seat-gap: 0
  give: 0`;

export const ZERO_MILLED = `zero:
  front-up: {xy: milled-stops, z: top, z-touched: [100, 60], with: paper}
  back-up: {xy: kept, kept: held, z: top, z-touched: [100, 60], with: paper}`;

const FEATURES = `front:
  - {name: hole, circle: 10, at: [100, 60], depth: 8, cutter: flat 6}
back:
  - {name: pocket, rectangle: [40, 30], corner-radius: 3.2, at: [100, 60], depth: 9, cutter: flat 6}`;

const NEEDS = `needs:
  - {name: hole in the pocket, concentric: [hole, pocket], within: 0.2}`;

export const smallJob = ({
  blank = '',
  stops = STOPS,
  zero = ZERO_MILLED,
  features = FEATURES,
  needs = NEEDS,
  more = '',
  machine = '',
}: SmallJob): string => `flipwright: 1
name: Small board
shop: shop.yaml
on-bed: [100, 100]
blank:
  size: [200 ±0, 120 ±0, 20 ±0]
  square: 0
  taper-x: 0
  taper-y: 0
  bevel: 0
  crook: 0
  bumps: 0
  thickness-taper: 0
  swarf: 0
  cup: {hump: 0, along: x, pressed-flat: yes}
${blank}
${features}
turn: about-y
${stops}
${zero}
${needs}
hold: {pusher: towards-stops, clamp-drag: 0}
${machine === '' ? '' : `machine: {${machine}}`}
${more}
`;

export const exactShop = ({ bed = '', paper = '±0' }: SmallJob = {}): string => `flipwright-shop: 1
name: exact
machine:
  travel: [600, 400, 90]
  lean: 0
  scale-x: 0
  scale-y: 0
  lost-motion: 0
  repeatability: 0
  homing: 0
  power-off: ±0.4
  cutter-lean-x: 0
  cutter-lean-y: 0
bed:
  spoilboard: {size: [600, 400], thickness: 18}
  unevenness: 0
${bed === '' ? '  lean-x: 0\n  lean-y: 0' : bed}
cutters:
  - {name: flat 6, kind: flat, diameter: 6 ±0.02, push-off: 0, flute: 22, stick-out: 32}
  - {name: flat 5, kind: flat, diameter: 5 ±0.02, push-off: 0, flute: 22, stick-out: 32}
touch-off:
  paper: {thick: 0.10, spread: ${paper}, bias: 0}
gauges: {caliper: ±0.03}
`;

/** A job whose blank keys are replaced: later keys win over the exact ones. */
export function withBlank(text: string, keys: Readonly<Record<string, string>>): string {
  return Object.entries(keys).reduce(
    (job, [key, value]) =>
      new RegExp(`^  ${key}:.*$`, 'm').test(job)
        ? job.replace(new RegExp(`^  ${key}:.*$`, 'm'), `  ${key}: ${value}`)
        : job.replace('blank:\n', `blank:\n  ${key}: ${value}\n`),
    text,
  );
}
