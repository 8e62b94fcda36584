/** Stands on every program. Defers to those who know the machine and the place. */
export const CAUTIONS: readonly string[] = [
  'The makers of machine and cutter and your local rules come first.',
  'Eyes, ears, lungs. Hands off until the spindle stands still.',
  'Never leave it alone. Emergency stop in reach.',
  'Run the air cut first, whenever zero, cutter or jig has changed.',
];

/** Says what a dust shoe would do. */
export const SHOE_OFF = 'Take the dust shoe off: it would strike what stands on the bed.';
