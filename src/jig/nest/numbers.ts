/** The board of a nest is at least this much wider on each side, mm. Common practice, no source. */
export const RIM_MM = 25;
/** Left of the board under the nest, mm. Common practice, no source. */
export const UNDER_MM = 6;
