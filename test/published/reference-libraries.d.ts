/** The few functions of the numerical library that serve as oracles; it comes without types. */
declare module 'jstat' {
  interface Inverse {
    readonly inv: (probability: number, ...parameters: number[]) => number;
    readonly cdf: (x: number, ...parameters: number[]) => number;
  }
  const library: {
    readonly jStat: {
      readonly normal: Inverse;
      readonly studentt: Inverse;
      readonly chisquare: Inverse;
      readonly beta: Inverse;
      readonly gammaln: (x: number) => number;
    };
  };
  export default library;
}

/** The one class that serves as an oracle; it comes without types. */
declare module 'ml-regression-theil-sen' {
  export class TheilSenRegression {
    constructor(x: readonly number[], y: readonly number[]);
    readonly slope: number;
    readonly intercept: number;
  }
}
