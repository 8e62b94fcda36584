import type { BedSurvey } from './bed-survey.ts';

/** Cutting the spoilboard level instead of lifting it. */
export interface SkimPlan {
  /** Below the highest place of the board, mm: where everything is cut down to. */
  readonly depthMm: number;
  /** Thinnest that the board gets, if it is thickest or thinnest where it stands highest, mm. */
  readonly thinnestMm: number;
  /** How far the board is from parallel afterwards: what the cutter leaves, an estimate. */
  readonly expectedRangeMm: number;
  readonly isThickEnough: boolean;
}

/** Taken off below the lowest place, so that the cutter cleans up everywhere (common practice, no source). */
const CLEAN_MM = 0.1;
/** A thinner board gives under clamps and lets go of screws (common practice, no source). */
export const THINNEST_BOARD_MM = 9;
/** What a sound machine leaves of a board it has skimmed itself (estimate). */
const LEFT_MM = 0.05;

export function skimPlan(survey: BedSurvey, boardMm: number): SkimPlan {
  const depthMm = survey.rangeMm + CLEAN_MM;
  const thinnestMm = boardMm - depthMm;
  return {
    depthMm,
    thinnestMm,
    expectedRangeMm: LEFT_MM,
    isThickEnough: thinnestMm >= THINNEST_BOARD_MM,
  };
}
