/** How a block is laid out. */
export interface BlockSettings {
  /**
   * The most that a building week may hold above the mean of the three building weeks before it, in percent. Ten percent
   * a week is a rule of thumb of runners that a trial did not find to prevent injuries (Buist and others, 2008, Am J
   * Sports Med 36(1):33-39); no figure is known for flexibility or skills.
   */
  readonly mostIncrease: number;
  /** Every how many weeks one is lighter; 0 for none. Common practice; see {@link LIGHTER_WEEK_SURVEY}. */
  readonly lighterEvery: number;
  /** What a lighter week keeps of the volume of the last building week, in percent. Common practice, no source. */
  readonly lighterVolume: number;
  /** How much less the last week of a taper holds than the last building week, in percent. */
  readonly taperReduction: number;
  /** Weeks of a taper before an event. */
  readonly taperWeeks: number;
}

/** The smallest and the largest value of each setting; `lighterEvery` may be 0 as well. */
export const blockSettingRanges: Readonly<Record<keyof BlockSettings, readonly [number, number]>> = {
  mostIncrease: [1, 30],
  lighterEvery: [3, 6],
  lighterVolume: [40, 90],
  taperReduction: [41, 60],
  taperWeeks: [1, 3],
};

/** What holds where nothing is set. */
export const defaultBlockSettings: BlockSettings = {
  mostIncrease: 10,
  lighterEvery: 5,
  lighterVolume: 60,
  taperReduction: 50,
  taperWeeks: 2,
};

/** Fewest and most weeks of a block; eight to twelve are usual. */
export const fewestBlockWeeks = 4;
export const mostBlockWeeks = 12;

/** The settings with whatever cannot be used taken for not set. */
export function usableBlockSettings(
  values: { readonly [name in keyof BlockSettings]?: unknown },
): BlockSettings {
  const usable = (name: keyof BlockSettings): number => {
    const value = values[name];
    const [least, most] = blockSettingRanges[name];
    const isNone = name === 'lighterEvery' && value === 0;
    const isUsable = typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most;
    return isNone || isUsable ? (value as number) : defaultBlockSettings[name];
  };
  return {
    mostIncrease: usable('mostIncrease'),
    lighterEvery: usable('lighterEvery'),
    lighterVolume: usable('lighterVolume'),
    taperReduction: usable('taperReduction'),
    taperWeeks: usable('taperWeeks'),
  };
}
