/** A short job and shop that are sound; tests change one line at a time. */
export const JOB = `flipwright: 1
name: Tray
shop: shop.yaml
blank:
  size: [200 ±0.4, 120 ±0.4, 18 ±0.15]
  edges: sawn
front:
  - {name: dish, circle: 80, at: [100, 60], depth: 6, cutter: flat 6}
back:
  - {name: foot, circle: 60, at: [100, 60], depth: 3, cutter: flat 6}
turn: about-y
stops:
  corner: {front-up: near-left, back-up: near-left}
  fence: lower-edge
  fence-touch: [20, 100]
  side-touch: 60
  height: 8
  made: set-by-hand
zero:
  front-up: {xy: stops, z: top, with: paper}
  back-up: {xy: kept, kept: held, z: top, with: paper}
needs:
  - {name: foot under the dish, concentric: [dish, foot], within: 0.5}
`;

export const SHOP = `flipwright-shop: 1
machine:
  travel: [400, 300, 80]
bed:
  spoilboard: {size: [400, 300], thickness: 18}
cutters:
  - {name: flat 6, kind: flat, diameter: 6 ±0.04, flute: 22, stick-out: 32}
touch-off:
  paper: {thick: 0.1, spread: ±0.02}
`;

/** The text with one part of it written otherwise; fails when that part is not there. */
export function otherwise(text: string, part: string, instead: string): string {
  if (!text.includes(part)) throw new Error(`no "${part}" in the text`);
  return text.replace(part, () => instead);
}
