/** One observation of a quantity that changes: `x` is usually a day number, `y` the reading in its own unit. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
