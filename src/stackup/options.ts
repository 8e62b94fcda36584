export interface PredictOptions {
  readonly seed: number;
  readonly trials: number;
}
