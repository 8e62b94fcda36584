/** From where the bed is looked at. */
export interface Orbit {
  /** Turned about the upright, degrees; 0 looks away from the operator, 90 from the right. */
  readonly turnDeg: number;
  /** Above the bed, degrees: 90 looks straight down. */
  readonly aboveDeg: number;
  /** How many times as large as fits the window. */
  readonly zoom: number;
}

export const START: Orbit = { turnDeg: -28, aboveDeg: 38, zoom: 1 };
export const FROM_ABOVE: Orbit = { turnDeg: 0, aboveDeg: 90, zoom: 1 };

const LEAST_ABOVE_DEG = 5;
const MOST_ZOOM = 12;

/** Turned and tilted, never below the bed nor over the top. */
export function turned({ turnDeg, aboveDeg, zoom }: Orbit, byDeg: number, upDeg: number): Orbit {
  const round = ((((turnDeg + byDeg + 180) % 360) + 360) % 360) - 180;
  return { turnDeg: round, aboveDeg: within(aboveDeg + upDeg, LEAST_ABOVE_DEG, 90), zoom };
}

export const zoomed = (orbit: Orbit, times: number): Orbit => ({
  ...orbit,
  zoom: within(orbit.zoom * times, 0.5, MOST_ZOOM),
});

const STEP_DEG = 10;
const STEP_ZOOM = 1.2;

/** What a key does; null: nothing. */
export function byKey(orbit: Orbit, key: string): Orbit | null {
  switch (key) {
    case 'ArrowLeft':
      return turned(orbit, -STEP_DEG, 0);
    case 'ArrowRight':
      return turned(orbit, STEP_DEG, 0);
    case 'ArrowUp':
      return turned(orbit, 0, STEP_DEG);
    case 'ArrowDown':
      return turned(orbit, 0, -STEP_DEG);
    case '+':
    case '=':
      return zoomed(orbit, STEP_ZOOM);
    case '-':
      return zoomed(orbit, 1 / STEP_ZOOM);
    case 'a':
      return { ...FROM_ABOVE };
    case '0':
    case 'Home':
      return { ...START };
    default:
      return null;
  }
}

const SIDES = ['near', 'near right', 'right', 'far right', 'far', 'far left', 'left', 'near left'];

/** Said to those who cannot see it: `from near left, 38 degrees above the bed`. */
export function orbitWords({ turnDeg, aboveDeg }: Orbit): string {
  if (aboveDeg > 89) return 'from straight above';
  const side = SIDES[(Math.round(turnDeg / 45) + 8) % 8]!;
  return `from ${side}, ${Math.round(aboveDeg)} degrees above the bed`;
}

const within = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));
