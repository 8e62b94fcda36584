/**
 * Where one blank lies in the seat frame of a placing: it is turned by the angle whose cosine and
 * sine are `cos`, `sin`, and a blank place is the machine place turned back, less (`backA`, `backB`).
 * A true set-up has cos 1 and all else 0. Mutable on purpose: one is filled again in each trial.
 * `spareMm`: the play that is left on each side of a dowel or of what lies in a nest; below 0 it does not go on by that much.
 */
export interface Pose {
  cos: number;
  sin: number;
  backA: number;
  backB: number;
  spareMm: number;
}

export const newPose = (): Pose => ({ cos: 1, sin: 0, backA: 0, backB: 0, spareMm: Infinity });
