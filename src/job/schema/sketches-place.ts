import { sketch, type Sketch } from './sketch.ts';

/** The blank, and how it comes to lie. */
export const PLACE_SKETCHES: readonly Sketch[] = [
  sketch(
    'on-bed',
    `
  +------------------------ bed --+
  |     +-----------+             |
  |     |   blank   |             |
  | y   o-----------+             |   o  the corner of the stops,
  |.....:                         |      front up: on-bed: [x, y]
  +--x--+-------------------------+`,
  ),
  sketch(
    'blank.size',
    `
   +------- size[0] -------+
   |                       |          side view:
   |     front face     size[1]       ========  size[2], thick
   |                       |
   +-----------------------+
  (0, 0): the lower-left corner, seen from the front`,
  ),
  sketch(
    'blank.square',
    `
     /-------------/
    /             /     the left edge leans: further right
   /             /      at the top is positive
  +-------------+`,
  ),
  sketch(
    'blank.taper-x, blank.taper-y',
    `
   +---------------/        taper-x: the right edge leans
   |              /         more than the left one
   |             /          taper-y: the upper edge leans
   +------------+           against the lower one`,
  ),
  sketch(
    'blank.bevel',
    `
  side view:   /--------- top
              /            the edge is not square to the faces
             /----------- underside`,
  ),
  sketch(
    'blank.crook',
    `
   .---------------------.
  +     the edge bows     +   how far the middle stands off
  |                       |   the straight line`,
  ),
  sketch(
    'blank.bumps',
    `
   _.-._   _.-.__.-._     single places of an edge stand out`,
  ),
  sketch(
    'blank.thickness-taper, blank.thickness-taper.x, blank.thickness-taper.y',
    `
  side view:      _____---+
          +-------        |   thicker at the right (x)
          |               |   or at the upper edge (y)
          +---------------+`,
  ),
  sketch(
    'blank.cup, blank.cup.hump, blank.cup.along, blank.cup.up, blank.cup.pressed-flat',
    `
  side view:   .-~~~~~-.     up: front, the front face uppermost
            .-'   hump  '-.  hump: the middle over the edges
  ~~~~~~~~~~~~~~~~~~~~~~~~~~~~~ bed`,
  ),
  sketch(
    'blank.swarf, stops.seat-gap, nest.seat-gap',
    `
  | stop |.| blank      swarf: a chip under the blank
         |^|            seat-gap: a chip between stop and blank
  ~~~~~~~~~~~~~ bed`,
  ),
  sketch(
    'blank.marked',
    `
   |            |
   v left       |       marked: [lower, left]: the two edges
   +------------+       with the pencil marks
       lower ^`,
  ),
  sketch(
    'turn',
    `
      about-y:  |            about-x:
   +-----+  |  +-----+        +-----+
   | F   |  |  |   B |        | F   |
   +-----+  |  +-----+        +-----+
   left and right change    ------------- (the line along X)
   places, lower stays      lower and upper change places`,
  ),
  sketch(
    'stops.corner, stops.corner.front-up, stops.corner.back-up',
    `
   far-left         far-right
      +---------------+
      |     blank     |        the corner in which the two
      +---------------+        stops meet
   near-left        near-right     (you stand here)`,
  ),
  sketch(
    'stops.fence, stops.fence-touch, stops.side-touch, stops.spacing',
    `
   side-touch
      |  +------------------+
     [=] |                  |
         |      blank       |
         +-o--------------o-+
           |              |
       fence-touch: two places along the fence, counted
       from the corner; spacing: the second side stop, off
       along the fence`,
  ),
  sketch(
    'stops.touch-height, stops.height',
    `
  side view:          +--------
        +---+         |
        |   >=========|  <- touch-height, over the bed
        |   |  blank  |
  ~~~~~~~~~~~~~~~~~~~~~~~~~~~~~ bed    height: a plain stop touches
                                     from the bed up to there`,
  ),
  sketch(
    'stops.angle, stops.square',
    `
    |            |
    |             |         square: the side stop against
    |  __---       |_____   the fence
    o--     angle           angle: the fence against X`,
  ),
  sketch(
    'dowels.at, dowels.diameter, dowels.clearance',
    `
   +----------(o)---------+    (o) a dowel through the blank
   |                      |        into the bed
   |      blank           |    clearance: hole less dowel,
   +----------(o)---------+        in diameter`,
  ),
  sketch(
    'dowels.take-up, nest.take-up, stops.dowel.take-up',
    `
   .---.        .---.
  ( (o) )      ((o)  )      anywhere: somewhere in its play
   '---'        '---'       right: pushed to the right, so the
  anywhere      right       hole's left side lies on the dowel`,
  ),
  sketch(
    'nest.around, nest.clearance, nest.wall',
    `
   #######################
   #.....................#   #  wall of the nest
   #.+-----------------+.#   .  clearance, on every side
   #.|      blank      |.#
   #.+-----------------+.#
   #######################`,
  ),
  sketch(
    'zero.front-up.xy-touched, zero.back-up.xy-touched',
    `
          +----------------+
   X ---->|                |   [x, y]: X is touched on the edge
   at y   |     blank      |   at that y, Y on the edge at
          +-------^--------+   that x
                  | Y at x`,
  ),
  sketch(
    'zero.front-up.z, zero.back-up.z',
    `
  side view:   top  v
              +-----------+
              |   blank   |        v  bed
  ~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~~`,
  ),
];
