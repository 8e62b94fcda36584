/** A commented job file to start from: a part that works as it stands, with `newShopText` as shop.yaml. */
export const newJobText = (): string => `\
# yaml-language-server: $schema=schema/job.schema.json
# A job of two sides. Lengths are in mm; write another unit with the number, as in 1/4 in or 3/8".
# Places are seen from the front, from the blank's lower-left corner, on both sides.
# How far something may be off: ±0.4, 0.05 sd, 0..0.2, half-normal 0.03; 0 switches it off.
# What is left out is assumed from a table, and "flipwright check" shows it.
flipwright: 1
name: Instrument lid
shop: shop.yaml
good-enough: 99 % # chance of each need that counts as met

blank:
  size: [220.3 -0.6..0, 150 ±0.3, 18 ±0.15] # along X (at the longest), along Y, thick
  material: maple
  grain: along-x
  edges: sawn # as-bought, sawn, jointed or cut-here: how true the edges are
  marked: [lower, left] # the edges with a pencil mark

front: # pockets unless cut: says otherwise; at is the centre
  - { name: gauge recess, circle: 70, at: [110, 75], depth: 5, cutter: flat 6 }
back:
  - { name: gauge body, circle: 52, at: [110, 75], depth: through, cutter: flat 6 }
  - { name: lid rim, rectangle: [150, 100], corner-radius: 6, at: [110, 75], depth: 3, cutter: flat 6 }

turn: about-y # left and right edges change places; about-x: near and far
stops:
  corner: { front-up: near-left, back-up: near-right } # of the bed; the same twice is one side stop
  fence: lower-edge # this edge goes against the stops first
  fence-touch: [25, 195] # two buttons, from the front-up corner; or { arm: [15, 205] }
  side-touch: 75 # one button; or { arm: [15, 135] }
  touch-height: 9 # a narrow band at half thickness; or height: 8 for a plain stop
  made: milled-in-place # or set-by-hand, on-bed-pins
  cutter: flat 6 # what mills them

zero:
  front-up: { xy: milled-stops, z: top, z-touched: [110, 75], with: paper }
  back-up: { xy: kept, kept: held, z: bed, z-touched: [110, 75], with: paper }

needs:
  - { name: body in the recess, concentric: [gauge recess, gauge body], within: 0.2 }
  - { name: rim at the corner, misalignment: [10, 10], within: 0.3 }

hold: { pusher: towards-stops } # keeps the blank on the stops while the clamps go on
`;

/** A commented shop file to start from: the machine, its cutters, what it is touched off with. */
export const newShopText = (): string => `\
# yaml-language-server: $schema=schema/shop.schema.json
# What stays the same from job to job. A job may say any of it otherwise.
# Only travel, spoilboard and cutters are needed; measure the rest when you can, and write it here.
flipwright-shop: 1
name: My router
units: mm # or inch: what sheets and terminal speak

machine:
  travel: [600, 400, 90] # X, Y, Z
  drive: screw # or belt
  # lean: ±0.3 per 200 # how the Y axis leans against X
  # lost-motion: 0.06 # both ways together
  # repeatability: 0.02 sd
  above-the-tip: # what turns or hangs above the cutter's tip
    collet-nut: { radius: 10, from: 30 }

bed:
  spoilboard: { size: [600, 400], thickness: 18 }
  inserts: { thread: M6, first: [50, 50], pitch: [100, 75], count: [6, 5] }

cutters:
  - { name: flat 6, kind: flat, diameter: 6 ±0.04, flute: 22, stick-out: 32, speed: 18000, feed: 1800, step: 3 }

touch-off:
  paper: { thick: 0.10, spread: ±0.02, bias: 0 }

gauges: { caliper: ±0.03 }

hold-downs: # what is at hand; "flipwright hold" chooses places and bolts
  - { name: strap, kind: strap-clamp, count: 4, slot: [20, 60], pad: [20, 12], height: 12, bolt: M6, torque: 2.5 Nm }
`;
