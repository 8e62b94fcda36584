/**
 * Figures of holding down. Those without a source are estimates or common practice, and the outputs that
 * use them say so.
 */
export const holdNumbers = {
  /**
   * Friction of wood or board on a wooden bed, and under pads. Estimate: published static values run from
   * 0.12 (planed pine, Aira et al.) to 0.77 (bare MDF on steel, Kukla et al. 2021); dust and vibration
   * lower them.
   */
  friction: 0.2,
  /** On laminated or plastic faces. Estimate. */
  frictionSmooth: 0.1,
  /**
   * Nut factor K of T = K F d. The high figure for what surely holds, the low one for what may crush.
   * Source: Shigley's Mechanical Engineering Design, as restated; 0.30 rusty, 0.15 oiled.
   */
  nutFactor: { high: 0.3, low: 0.15 },
  /** Share of a bolt's force that is left when the wood under it has yielded. Estimate. */
  keptShare: 0.7,
  /** Worn cutter, and entering or leaving the wood: factors on the force of a sharp one. Estimates. */
  dullFactor: 1.5,
  dynamicFactor: 1.25,
  /** No cutter of 3 mm or more is taken to pull less than this, N. Estimates. */
  leastSidewaysN: 30,
  leastLiftN: 15,
  /** Tangent of the helix of an upcut spiral: 35 degrees, the steepest of wood spirals. */
  helixTangent: Math.tan((35 * Math.PI) / 180),
  /** Assumed when the shop file does not say. */
  fluteCount: 2,
  chipMm: 0.1,
  /**
   * How many times the estimated force must be held. Milling practice: 2 or more; the higher ones are
   * estimates.
   */
  safety: { againstStop: 2, byFriction: 2.5, freed: 3 },
  /** The withdrawal formula gives the average ultimate: divided by this. NDS uses 5.5 and less. */
  screwSafety: 4,
  tabSafety: 3,
  /** One strap may work loose, and the blank turns under it. Common practice, no source. */
  fewestStraps: 2,
  /** A skin of this much or less, mm, is what holds a piece. */
  skinMm: 1.5,
  /** Kept beside clamps and screws, and over them, mm. Common practice, no source. */
  besideMm: 3,
  overMm: 2,
  /** A new hole in the bed is this far from an old one, mm. */
  holesApartMm: 10,
  /** A screw ends at least this far above the bed under the spoilboard, mm. Common practice, no source. */
  aboveBedMm: 2,
  /** Tape: 20 kPa allowable shear, no hold against lifting. Estimate; test a sample. */
  tapeKPa: 20,
  /**
   * A pusher is counted as a wedge of 7 degrees that a thumb drives, both its faces rough: its low side. Estimates; 6 to 8
   * degrees are common practice.
   */
  pusher: { thumbN: 20, slopeRad: (7 * Math.PI) / 180, friction: 0.3 },
  /** Share of a gauge's vacuum that counts under a leaking board. Estimate. */
  vacuumShare: 0.5,
} as const;
