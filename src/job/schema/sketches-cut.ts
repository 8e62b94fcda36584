import { sketch, type Sketch } from './sketch.ts';

/** What is cut, what is needed, machine and bed. */
export const CUT_SKETCHES: readonly Sketch[] = [
  sketch(
    'front[ ].at, back[ ].at, front[ ].turned, back[ ].turned',
    `
   +----------------------+
   |         ___          |    at: from the lower-left corner of the
   |        (   )         |    blank, seen from the front, for the
   |         '+'          |    back too
   o-----at---|-----------+`,
  ),
  sketch(
    'front[ ].chamfer, back[ ].chamfer',
    `
  side view:   ____   ____ face
                   \\_/           chamfer: width in plan of one
                  |-|            slope`,
  ),
  sketch(
    'front[ ].tabs, back[ ].tabs, front[ ].tabs.count, front[ ].tabs.width, front[ ].tabs.thick',
    `
  side view along the cut:
  ====      ====      ====    cut through
  ====[tab ]====[tab ]====    thick: how high it is left
       |--| width`,
  ),
  sketch(
    'needs[ ].concentric, needs[ ].misalignment',
    `
     .-----.
    /  .--. \\      x  centre of the front cut
   |  ( x+ ) |     +  centre of the back cut
    \\  '--' /      how far + is from x, any direction
     '-----'`,
  ),
  sketch(
    'needs[ ].lip',
    `
   +-------------+
   | +---------+ |    lip: the least that is left between the
   | |         | |    inner and the outer outline, all round
   | +---------+ |
   +-------------+`,
  ),
  sketch(
    'needs[ ].web',
    `
  side view:   ----+      +----  front
                   |______|
                      ||  web     the thickness left between
               ----+~~~~~~+----   a front and a back pocket
                   |      |`,
  ),
  sketch(
    'needs[ ].wall, needs[ ].to',
    `
   +----------------+
   |   +-----+      |
   |   |     |<---->|  wall: from the outline to an edge
   |   +-----+      |
   +----------------+`,
  ),
  sketch(
    'needs[ ].meets',
    `
  side view:   |  front profile
               |__
                 |  <- the step where they meet
                 |  back profile`,
  ),
  sketch(
    'needs[ ].parallel',
    `
   ------------------  front groove
      _____-----       back rebate: turned by so much`,
  ),
  sketch(
    'machine.lean',
    `
      Y /
       /        the Y axis leans against the X axis
      /
     +--------- X`,
  ),
  sketch(
    'machine.lost-motion',
    `
   --> |  .  | <--     coming from the left and from the right
       |--|--|         the axis stops this far apart`,
  ),
  sketch(
    'machine.cutter-lean-x, machine.cutter-lean-y',
    `
  side view:     /
                /  the cutter leans
               /
  ~~~~~~~~~~~~~~~~~~~ bed`,
  ),
  sketch(
    'machine.above-the-tip, machine.above-the-tip.collet-nut, machine.above-the-tip.spindle, machine.above-the-tip.dust-shoe, machine.above-the-tip.collet-nut.from, machine.above-the-tip.spindle.from, machine.above-the-tip.dust-shoe.from',
    `
  side view:    |      |   spindle
              ==|======|== dust shoe
                 [____]    collet nut
                   ||
                   ||  ^ from: height over the tip
                   \\/  | (one for each of them)`,
  ),
  sketch(
    'bed.lean-x, bed.lean-y, bed.unevenness',
    `
  side view:                ___---~~   lean: the bed rises
               ___--~_.-~~             against the travel
   ___---~~.--                         unevenness: what is left
  - - - - - - - - - - - - - - - - - -  travel of the axis`,
  ),
  sketch(
    'bed.inserts, bed.inserts.first, bed.inserts.pitch, bed.inserts.count',
    `
   o    o    o    o
                        first: the near-left one, from the
   o    o    o    o     corner of the bed
   |----|               pitch: from one to the next
   first  count: [4, 2]`,
  ),
  sketch(
    'bed.t-tracks, bed.t-tracks[ ].along, bed.t-tracks[ ].at, bed.t-tracks[ ].from, bed.t-tracks[ ].to',
    `
   |  ====================  |   along: x
   |  from               to |   at: its Y`,
  ),
  sketch(
    'hold-downs[ ].slot, hold-downs[ ].length, hold-downs[ ].pad',
    `
        |------ length -----|
        [pad]===( slot )====]     slot: nearest and furthest the
          ^       o bolt    heel  bolt stands from the nose
        nose, on the blank`,
  ),
];
