/**
 * Every dimension of a stop that the job does not give, mm.
 * Common practice, no source, unless a line says otherwise.
 */
export const stopNumbers = {
  /** Flat land of a button: narrower dents softwood. */
  landMm: 10,
  /** Half the height of a narrow contact band (bands of 3 to 4). */
  bandHalfMm: 2,
  /** Stop goes on this far above a narrow band, so that the band's upper edge is not the last layer. */
  aboveBandMm: 2,
  /** Above the band, the lands stand this far back from the contact line. */
  aboveBandBackMm: 2,
  /** ... and are narrower at each end by this (our own choice). */
  rimNarrowerMm: 0.5,
  /** Between the lands the body stands this far back; also keeps the blank's corner clear by as much. */
  betweenBackMm: 3,
  /** Chip relief under the faces: this far back, and as high again beneath the sloping underside. */
  reliefBackMm: 2.5,
  /** Upright part of the chip relief, above the bed; hides the swollen first layers of a print too. */
  reliefUprightMm: 1,
  /** Round relief in the inside corner (8 to 10, and wider than the cutter that mills the faces). */
  notchDiameterMm: 9,
  /** That relief over a milling cutter's diameter, at least. */
  notchOverCutterMm: 2,
  /** Stock left on faces that are milled where they stand (1 to 2). */
  millingAllowanceMm: 1.5,
  /** Body behind the faces: at least this thick when printed ... */
  bodyThickMm: 12,
  /** ... and its base at least this many times its height. */
  basePerHeight: 1.5,
  /** An arm is at least this long, or this share of the edge up to the longest below. */
  armShortestMm: 60,
  armShareOfEdge: 0.25,
  armLongestMm: 120,
  /** Arm goes on past the last land by this much. */
  pastLandMm: 5,
  /** Two pieces on one fence leave this much between them. */
  betweenPiecesMm: 4,
  /** Arms are widened to reach inserts up to this far outside the face. */
  reachMm: 40,
  /** Arms are lengthened to reach one more insert, by up to this much. */
  lengthenMm: 60,
  /** Outer corners, rounded (2 to 3). */
  outerRadiusMm: 2.5,
  /** First layers drawn in all round, against their swelling (0.5 to 0.8). */
  footChamferMm: 0.6,
  /** Material round a screw's hole, and round its counterbore (a thin rib). */
  holeWallMm: 6,
  counterboreWallMm: 2.4,
  /** Material under a screw's head. */
  headFloorMm: 5,
  /** Not worth boring a seat for less. */
  counterboreLeastMm: 1,
  /** Counterbore over the head, in diameter and in depth. */
  counterboreOverHeadMm: 1.5,
  counterboreBelowTopMm: 0.5,
  /** Slots: how far the screw may stand to either side of its nominal place (length 6.6 + 2 x 3 for M6). */
  slotTravelMm: 3,
  /** Two screws closer than this hold no better than one against turning. */
  screwsLeastApartMm: 40,
  /** Between the first and the last of an arm, screws closer than this hold nothing more. */
  screwSpacingMm: 80,
  /** Steel pins that bring a stop back: diameter and clearance of the drilled hole. */
  pinDiameterMm: 6,
  /** A stop must not yield further than this (0.03) under this push (30 N) ... */
  mostGiveMm: 0.03,
  pushN: 30,
  /** ... reckoned with half of what solid PETG resists (2000), for walls with fill between them. */
  stiffnessNPerMm2: 1000,
  /** Lower than this, use dowels or tape instead. */
  lowestStopMm: 4,
  /** Below the blank's top when nothing needs the height. */
  belowTopMm: 1,
  /** Room beside a stop that whatever passes below its top must keep, mm; an estimate. */
  clearBesideMm: 1,
  /** Kept between the top of a stop and anything that passes over it. */
  clearOverMm: 2,
  /** A cutter can be let out further by so much at most, to bring what hangs above it higher. */
  stickOutMoreMm: 10,
  /** Room that a tool needs beside an edge that it touches: up to 8 in diameter, 2 to either side. */
  touchRoomMm: 12,
  /** Printed curves stray from true ones by no more (a tenth of a nozzle's width). */
  chordMm: 0.02,
} as const;

/**
 * Screws by thread, mm. Clearance holes: ISO 273, medium. Heads: ISO 4762 (diameter, height).
 * Washers: ISO 7089 (outer diameter, thickness).
 */
export const screwNumbers = {
  M4: { holeMm: 4.5, headMm: 7, headHighMm: 4, washerMm: 9, washerThickMm: 0.8 },
  M5: { holeMm: 5.5, headMm: 8.5, headHighMm: 5, washerMm: 10, washerThickMm: 1 },
  M6: { holeMm: 6.6, headMm: 10, headHighMm: 6, washerMm: 12, washerThickMm: 1.6 },
  M8: { holeMm: 9, headMm: 13, headHighMm: 8, washerMm: 16, washerThickMm: 1.6 },
} as const;

/** Hexagon nuts by thread, mm: across flats and greatest height. ISO 4032. */
export const nutNumbers = {
  M4: { acrossFlatsMm: 7, highMm: 3.2 },
  M5: { acrossFlatsMm: 8, highMm: 4.7 },
  M6: { acrossFlatsMm: 10, highMm: 5.2 },
  M8: { acrossFlatsMm: 13, highMm: 6.8 },
} as const;

/** Sums of lengths below a metre are off by less than this, mm; no wall or gap is judged finer. */
export const roundingMm = 1e-9;

export type Thread = keyof typeof screwNumbers;
