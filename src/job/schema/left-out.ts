import { BY_DRIVE, DEFAULTS, EDGES, GOOD_ENOUGH_SHARE, TIP_FLAT } from '../defaults.ts';

const edge = (which: keyof (typeof EDGES)['sawn']): string =>
  Object.entries(EDGES)
    .map(([word, row]) => `${row[which]} when ${word}`)
    .join(', ');
const stops = (hand: string, pins: string): string =>
  `${hand} when set by hand, ${pins} on bed pins; milled in place, what the machine itself is off by`;

/**
 * What is taken when a key is left out, in words; made from the very table that fills it in
 * (`../defaults.ts`), so that the two cannot differ. Keys not here are either needed or have
 * nothing taken for them.
 */
const LEFT_OUT: Readonly<Record<string, string>> = {
  'good-enough': `${GOOD_ENOUGH_SHARE * 100} %`,
  'on-bed': 'chosen where inserts suit the stops',
  'blank.size': `of a size without its ±: ${edge('size')}`,
  'blank.edges': 'sawn',
  'blank.square': edge('square'),
  'blank.taper-x': edge('square'),
  'blank.taper-y': edge('square'),
  'blank.bevel': edge('bevel'),
  'blank.crook': edge('crook'),
  'blank.bumps': edge('bumps'),
  'blank.board': 'flat-sawn',
  'blank.thickness-taper': DEFAULTS.thicknessTaper.text,
  'blank.swarf': DEFAULTS.swarf.text,
  'blank.cup': `${DEFAULTS.cupHump.text}, either face up`,
  'blank.cup.up': 'either face',
  'blank.cup.pressed-flat': 'no',
  'blank.movement': `${DEFAULTS.movement.text}: ${DEFAULTS.movement.because}`,
  'blank.movement.x': DEFAULTS.movement.text,
  'blank.movement.y': DEFAULTS.movement.text,
  first: 'front',
  'stops.angle': stops(DEFAULTS.handAngle.text, DEFAULTS.pinAngle.text),
  'stops.square': stops(DEFAULTS.handSquare.text, DEFAULTS.pinSquare.text),
  'stops.spacing': stops(DEFAULTS.handSpacing.text, DEFAULTS.pinSpacing.text),
  'stops.seat-gap': DEFAULTS.seatGap.text,
  'stops.give': DEFAULTS.give.text,
  'stops.dowel.clearance': DEFAULTS.dowelClearance.text,
  'stops.dowel.drill-error': DEFAULTS.drillError.text,
  'stops.dowel.take-up': 'anywhere',
  'stops.dowel.laid': DEFAULTS.laid.text,
  'dowels.clearance': DEFAULTS.dowelClearance.text,
  'dowels.drill-error': DEFAULTS.drillError.text,
  'dowels.take-up': 'anywhere',
  'dowels.laid': DEFAULTS.laid.text,
  'nest.around': 'the blank, in both placings',
  'nest.clearance': DEFAULTS.nestClearance.text,
  'nest.wall': 'half the thickness',
  'nest.take-up': 'anywhere',
  'nest.seat-gap': DEFAULTS.seatGap.text,
  'nest.laid': DEFAULTS.laid.text,
  'hold.pusher': 'none',
  'hold.clamp-drag': `${DEFAULTS.clampDrag.text}; with pusher: towards-stops, ${DEFAULTS.noClampDrag.text}`,
  'hold.clamps': 'auto',
  'hold.friction': '0.2, an estimate',
  'hold.cutting-force': 'estimated from the cutter and its feed',
  'hold.lifting-force': 'estimated from the cutter and its feed',
  'hold.tape.strength': '20 kPa, an estimate',
  'between-placings.temperature': '20 C',
  units: 'mm',
  'machine.drive': 'screw',
  'machine.lean': DEFAULTS.lean.text,
  'machine.scale-x': DEFAULTS.scaleX.text,
  'machine.scale-y': DEFAULTS.scaleY.text,
  'machine.lost-motion': `${BY_DRIVE.screw.lostMotion} with screws, ${BY_DRIVE.belt.lostMotion} with belts`,
  'machine.repeatability': DEFAULTS.repeatability.text,
  'machine.local-error': 'none',
  'machine.local-error-over': '100',
  'machine.homing': DEFAULTS.homing.text,
  'machine.power-off': `${BY_DRIVE.screw.powerOff.text} with screws, ${BY_DRIVE.belt.powerOff.text} with belts`,
  'machine.cutter-lean-x': DEFAULTS.cutterLeanX.text,
  'machine.cutter-lean-y': DEFAULTS.cutterLeanY.text,
  'bed.lean-x': DEFAULTS.bedLean.text,
  'bed.lean-y': DEFAULTS.bedLean.text,
  'bed.unevenness': DEFAULTS.unevenness.text,
  'cutters[ ].diameter': `of a diameter without its ±: radius ${DEFAULTS.cutterRadius.text}`,
  'cutters[ ].flutes': '2, for the cutting force',
  'cutters[ ].helix': 'up, for the cutting force',
  'cutters[ ].tip-flat': TIP_FLAT,
  'cutters[ ].push-off': DEFAULTS.pushOff.text,
};

/** What is taken when this key is left out; null where nothing is, or where it must be there. */
export const takenWhenLeftOut = (key: string): string | null => LEFT_OUT[key] ?? null;

/** Every key that something is taken for. */
export const keysWithDefaults = (): readonly string[] => Object.keys(LEFT_OUT);
