import { about, keyed, listOf, oneOf, optional, pairOf, text } from './build.ts';
import * as q from './quantities.ts';
import { tabs } from './schema-hold.ts';
import type * as raw from './raw-job.ts';

/** Keys of a feature, on either face. */
export const feature = keyed<raw.RawFeature>({
  name: about(text(), 'what needs call it', 'dial recess'),
  circle: optional(about(q.size(), 'diameter', 120)),
  rectangle: optional(about(pairOf(q.size()), 'along X and along Y', [58, 58])),
  slot: optional(about(pairOf(q.size()), 'length with its round ends, and width', [60, 8])),
  polygon: optional(
    about(listOf(pairOf(q.place())), 'corners, from `at`', [
      [0, 0],
      [30, 0],
      [0, 20],
    ]),
  ),
  outline: optional(
    about(
      keyed<raw.RawOutline>({
        drawing: about(text(), 'a DXF or SVG file, from this file', 'part.dxf'),
        named: about(text(), 'a layer of the DXF, or an id or label in the SVG', 'rebate'),
        units: optional(
          about(oneOf('mm', 'inch'), 'of a DXF that does not say its units itself', 'mm'),
        ),
      }),
      "one closed outline of a drawing, with the drawing's own origin (of an SVG, the lower-left corner of its page) at `at`",
      { drawing: 'part.dxf', named: 'rebate' },
    ),
  ),
  'corner-radius': optional(about(q.distance(), "of a rectangle; left out, the cutter's", 3.2)),
  at: optional(
    about(
      pairOf(q.place()),
      "centre, from the blank's lower-left corner seen from the front; left out for a polygon or outline, that corner",
      [140, 90],
    ),
  ),
  turned: optional(about(q.angle(), 'counter-clockwise about `at`, seen from the front', '30 deg')),
  cut: optional(
    about(
      oneOf('pocket', 'profile-outside', 'profile-inside', 'drill', 'chamfer', 'chamfer-outside'),
      'how; left out, pocket',
      'pocket',
    ),
  ),
  chamfer: optional(
    about(
      q.size(),
      'width of a chamfer in plan; the outline is where it meets the face, of a hole as of the outside of a part (cut: chamfer-outside)',
      3,
    ),
  ),
  depth: optional(about(q.depth(), 'below the face it is cut from', 6, 'through')),
  tabs: optional(about(tabs, 'links of uncut wood that keep the piece where it is')),
  cutter: about(text(), 'which cutter of the shop file', 'flat 6'),
});
