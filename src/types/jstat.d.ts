/** The little of jstat that we use; the package ships no types. Default import only. */
declare module 'jstat' {
  interface Continuous {
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const jStat: {
    readonly normal: Continuous;
    readonly studentt: Continuous;
    readonly chisquare: Continuous;
    readonly binomial: { cdf(k: number, n: number, p: number): number };
    readonly beta: Continuous;
  };
  export default jStat;
}
