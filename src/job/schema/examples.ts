/** What to write for a key that is missing or has the wrong form, by its place (lists as `*`). */
export const EXAMPLES: Readonly<Record<string, string>> = {
  flipwright: 'flipwright: 1',
  'flipwright-shop': 'flipwright-shop: 1',
  name: 'name: Wall clock',
  shop: 'shop: shop.yaml',
  blank: 'blank: {size: [280 ±0.4, 180 ±0.4, 24 ±0.15], edges: sawn}',
  'blank.size': 'size: [280 ±0.4, 180 ±0.4, 24 ±0.15]',
  'blank.marked': 'marked: [lower, left]',
  'blank.cup.hump': 'hump: 0..0.1',
  front: 'front: [{name: dial recess, circle: 120, at: [140, 90], depth: 6, cutter: flat 6}]',
  back: 'back: [{name: pocket, rectangle: [58, 58], at: [140, 90], depth: 15, cutter: flat 6}]',
  turn: 'turn: about-y',
  stops:
    'stops: {corner: {front-up: near-left, back-up: near-left}, fence: lower-edge, fence-touch: [30, 250], side-touch: 90, height: 8, made: set-by-hand}',
  'stops.corner': 'corner: {front-up: near-left, back-up: near-right}',
  'stops.fence': 'fence: lower-edge',
  'stops.fence-touch': 'fence-touch: [30, 250], or {arm: [20, 260]}',
  'stops.side-touch': 'side-touch: 90, or {arm: [20, 160]}',
  'stops.fence-touch.arm': 'arm: [20, 260]',
  'stops.side-touch.arm': 'arm: [20, 160]',
  'stops.made': 'made: set-by-hand, on-bed-pins or milled-in-place',
  zero: 'zero: {front-up: {xy: stops, z: top, with: paper}, back-up: {xy: kept, kept: held, z: top, with: paper}}',
  'zero.front-up': 'front-up: {xy: stops, z: top, with: paper}',
  'zero.back-up': 'back-up: {xy: kept, kept: held, z: top, with: paper}',
  'zero.front-up.xy': 'xy: stops, milled-stops, edges, middle, hole or kept',
  'zero.back-up.xy': 'xy: stops, milled-stops, edges, middle, hole or kept',
  'zero.front-up.z': 'z: top, or z: bed',
  'zero.back-up.z': 'z: top, or z: bed',
  'between-placings': 'between-placings: {hours: 20, humidity: 45..60 %}',
  'between-placings.hours': 'hours: 20',
  'between-placings.humidity': 'humidity: 45..60 %',
  repeat: 'repeat: {count: [2, 3], pitch: [90, 70]}',
  'repeat.count': 'count: [2, 3]',
  'repeat.pitch': 'pitch: [90, 70]',
  hold: 'hold: {pusher: towards-stops}',
  needs: 'needs: [{name: shaft in the pocket, concentric: [shaft hole, pocket], within: 0.2}]',
  'needs.*.within': 'within: 0.2',
  'needs.*.at-least': 'at-least: 2.5',
  'needs.*.from': 'from: 60.5',
  'needs.*.up-to': 'up-to: 61.5',
  'needs.*.wall': 'wall: movement pocket',
  'needs.*.depth': 'depth: dial recess',
  'needs.*.size': 'size: movement pocket',
  'needs.*.concentric': 'concentric: [shaft hole, movement pocket]',
  'needs.*.lip': 'lip: [dial recess, movement pocket]',
  'needs.*.web': 'web: [dial recess, movement pocket]',
  'needs.*.meets': 'meets: [upper half, lower half]',
  'needs.*.parallel': 'parallel: [groove, rebate]',
  'front.*.outline': 'outline: {drawing: part.dxf, named: rebate}',
  'back.*.outline': 'outline: {drawing: part.dxf, named: rebate}',
  'front.*.outline.drawing': 'drawing: part.dxf',
  'back.*.outline.drawing': 'drawing: part.dxf',
  'front.*.outline.named': 'named: rebate, the layer or id',
  'back.*.outline.named': 'named: rebate, the layer or id',
  'front.*.depth': 'depth: 6, or through',
  'back.*.depth': 'depth: 6, or through',
  'front.*.cutter': 'cutter: flat 6',
  'back.*.cutter': 'cutter: flat 6',
  'front.*.at': 'at: [140, 90]',
  'back.*.at': 'at: [140, 90]',
  'machine.travel': 'travel: [600, 400, 90]',
  'bed.spoilboard': 'spoilboard: {size: [600, 400], thickness: 18}',
  'cutters.*.diameter': 'diameter: 6 ±0.04',
  'cutters.*.kind': 'kind: flat',
  cutters: 'cutters: [{name: flat 6, kind: flat, diameter: 6 ±0.04}]',
};

type Path = readonly PropertyKey[];

/** A path with its list places left open: `front.*.depth`. */
export const openPath = (path: Path): string =>
  path.map((step) => (typeof step === 'number' ? '*' : String(step))).join('.');

/** `write ...` for the value at a path. */
export function exampleAt(path: Path): string {
  const last = String(path.at(-1) ?? '');
  return `write ${EXAMPLES[openPath(path)] ?? `${last}: with its value`}`;
}
