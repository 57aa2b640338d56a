// Every figure of the sample athlete, worked out a second time: the notes are read here with regular expressions, and
// the numbers come from general-purpose libraries (jstat, ml-regression-theil-sen) and formulas written out by hand.
import assert from 'node:assert/strict';
import jstat from 'jstat';
import { TheilSenRegression } from 'ml-regression-theil-sen';
import { describe, it } from 'mocha';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { adherenceFigures } from '../../src/training/adherence/adherence-figures';
import { plannedSessions } from '../../src/training/adherence/planned-sessions';
import { weekLoads } from '../../src/training/load/week-loads';
import { workloadRatios } from '../../src/training/load/workload-ratios';
import { goalFigures } from '../../src/training/progress/goal-figures';
import type { SeriesFigures } from '../../src/training/progress/metric-figures';
import { recoveryFigures } from '../../src/training/recovery/recovery-figures';
import { weekReader } from '../../src/training/training-week';
import { checkContext } from '../../src/training/week-under-check';
import { date, week } from './dates';
import {
  dateOf,
  daysSince1970,
  linesUpTo,
  mean,
  sampleNotes,
  type WrittenSession,
  wilsonByHand,
  writtenSessions,
} from './sample-by-hand';

const { jStat } = jstat;
const today = date('2026-02-25');
const zone = 'Europe/Lisbon';

const journal = new JournalIndex();
for (const [path, text] of sampleNotes) journal.replace(openNote(path, text));

const lines = linesUpTo(today);

function close(actual: number | undefined, expected: number | undefined, about: string): void {
  assert.ok(actual !== undefined && expected !== undefined, `${about}: ${actual} and ${expected}`);
  const tolerance = 1e-7 * Math.max(1, Math.abs(expected));
  assert.ok(Math.abs(actual - expected) <= tolerance, `${about}: ${actual}, by hand ${expected}`);
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return mean([sorted[Math.ceil(half) - 1] ?? Number.NaN, sorted[Math.floor(half)] ?? Number.NaN]);
}

/** The readings by day whose line, behind `#measure`, matches; a group of successes and attempts is a share. */
function readings(pattern: RegExp): ReadonlyMap<string, readonly number[]> {
  const days = new Map<string, number[]>();
  for (const [on, line] of lines) {
    const found = /#measure (.*)$/.exec(line)?.[1];
    const match = found === undefined ? null : pattern.exec(found);
    if (!match) continue;
    const value = match[2] === undefined ? Number(match[1]) : (100 * Number(match[1])) / Number(match[2]);
    days.set(on, [...(days.get(on) ?? []), value]);
  }
  return days;
}

function seriesOf(goal: string, metric: string, side?: string, condition?: string): SeriesFigures {
  const found = goalFigures(journal, goal, { today })
    ?.metrics.find(({ name }) => name === metric)
    ?.series.find((one) => one.side === side && one.condition === condition);
  assert.ok(found, `${goal} ${metric} ${side} ${condition}`);
  return found;
}

/** Slope, bounds, score and chance of a series of day means, worked out from the definitions. */
function byHand(days: ReadonlyMap<string, readonly number[]>) {
  const xs = [...days.keys()].map(daysSince1970);
  const ys = [...days.values()].map(mean);
  const slopes: number[] = [];
  let s = 0;
  for (const [i, x] of xs.entries()) {
    for (const [j, y] of ys.entries()) {
      if (j <= i) continue;
      const rise = y - (ys[i] ?? Number.NaN);
      slopes.push(rise / ((xs[j] ?? Number.NaN) - x));
      s += Math.sign(rise);
    }
  }
  slopes.sort((a, b) => a - b);
  const n = xs.length;
  const ties = [...new Set(ys)].map((y) => ys.filter((one) => one === y).length);
  const variance =
    (n * (n - 1) * (2 * n + 5) - ties.reduce((sum, t) => sum + t * (t - 1) * (2 * t + 5), 0)) / 18;
  const reach = jStat.normal.inv(0.975, 0, 1) * Math.sqrt(variance);
  const ranked = (rank: number): number => {
    const below = slopes[Math.floor(rank) - 1] ?? Number.NaN;
    const above = slopes[Math.min(Math.floor(rank), slopes.length - 1)] ?? Number.NaN;
    return below + (rank - Math.floor(rank)) * (above - below);
  };
  return {
    n,
    slope: middle(slopes),
    // Of an even number of slopes the library takes one of the two in the middle, not their mean.
    library: new TheilSenRegression(xs, ys).slope,
    middleSlopes: [slopes[Math.ceil(slopes.length / 2) - 1], slopes[Math.floor(slopes.length / 2)]],
    lower: ranked((slopes.length - reach) / 2),
    upper: ranked((slopes.length + reach) / 2 + 1),
    middleX: middle(xs),
    middleY: middle(ys),
    last: Math.max(...xs),
    s,
    variance,
    p: 2 * (1 - jStat.normal.cdf((Math.abs(s) - 1) / Math.sqrt(variance), 0, 1)),
  };
}

interface Written {
  readonly about: string;
  readonly series: SeriesFigures;
  readonly days: ReadonlyMap<string, readonly number[]>;
  readonly target: number;
  readonly by: string;
}

const all: readonly Written[] = [
  {
    about: 'pelvis gap, warm',
    series: seriesOf('low-split', 'pelvis-gap', undefined, 'warm'),
    days: readings(/^low-split pelvis-gap ([\d.]+)cm()? warm/),
    target: 4,
    by: '2026-06-14',
  },
  {
    about: 'hold',
    series: seriesOf('handstand', 'hold'),
    days: readings(/^handstand hold ([\d.]+)s/),
    target: 30,
    by: '2026-05-31',
  },
  {
    about: 'entries',
    series: seriesOf('handstand', 'entries'),
    days: readings(/^handstand entries (\d+)\/(\d+)/),
    target: 80,
    by: '2026-05-31',
  },
  ...(['left', 'right'] as const).map((side) => ({
    about: `opening, ${side}, warm`,
    series: seriesOf('shoulder-opening', 'opening', side, 'warm'),
    days: readings(new RegExp(`^shoulder-opening opening ([\\d.]+)deg()? side:${side} warm`)),
    target: 175,
    by: '2026-07-31',
  })),
];

describe('the readings of the sample athlete, by a second way', () => {
  for (const { about, series, days, target, by } of all) {
    describe(about, () => {
      const hand = byHand(days);
      const { trend, forecast, pace, verdict } = series;
      assert(trend.status === 'estimated', about);

      it(`has a mean for each of its ${hand.n} days`, () => {
        assert.deepEqual(
          series.days.map((day) => day.date),
          [...days.keys()],
        );
        for (const day of series.days) close(day.value, mean(days.get(day.date) ?? []), day.date);
        assert.equal(series.readings.length, [...days.values()].flat().length);
      });

      it('has the slope of the reference library, and the bounds of its ranked slopes', () => {
        close(trend.perWeek, 7 * hand.slope, 'slope');
        assert.ok(hand.middleSlopes.includes(hand.library), 'the library’s slope is a middle one');
        assert(!('status' in trend.perWeekInterval));
        close(trend.perWeekInterval.lower, 7 * hand.lower, 'lower');
        close(trend.perWeekInterval.upper, 7 * hand.upper, 'upper');
      });

      it('has the score, variance and chance of a test for a trend', () => {
        assert(trend.test.status === 'estimated');
        assert.equal(trend.test.s, hand.s);
        close(trend.test.variance, hand.variance, 'variance');
        close(trend.test.p, hand.p, 'p');
      });

      it('has the change since the first day', () => {
        const values = [...days.values()].map(mean);
        assert(series.sinceFirst.status === 'estimated');
        close(series.sinceFirst.change, (values.at(-1) ?? Number.NaN) - (values[0] ?? Number.NaN), 'change');
      });

      it('arrives on the dates of the line and its bounds, drawn through the middle of the readings', () => {
        const rises = hand.slope > 0;
        const reached = [...days].find(([, values]) =>
          rises ? mean(values) >= target : mean(values) <= target,
        );
        if (reached) {
          assert.equal(verdict.code, 'reached');
          assert.equal(series.reachedOn, reached[0]);
          return;
        }
        const meets = (slope: number): number => hand.middleX + (target - hand.middleY) / slope;
        const dates = [meets(hand.lower), meets(hand.upper)].sort((a, b) => a - b);
        assert(forecast.status === 'estimated');
        assert.equal(forecast.earliest, dateOf(Math.floor(dates[0] ?? Number.NaN)));
        assert.equal(forecast.latest, dateOf(Math.ceil(dates[1] ?? Number.NaN)));
        assert.equal(forecast.at, dateOf(Math.round(meets(hand.slope))));
        const code = forecast.latest <= by ? 'in-time' : forecast.earliest > by ? 'late' : 'may-be-late';
        assert.equal(verdict.code, code);
      });

      it('needs the pace from the end of its line to the target', () => {
        const level = hand.middleY + hand.slope * (hand.last - hand.middleX);
        assert(pace.status === 'estimated');
        close(pace.level, level, 'level');
        close(pace.perWeek, (7 * (target - level)) / (daysSince1970(by) - daysSince1970(today)), 'pace');
      });
    });
  }

  it('wander by the pooled deviation of the repeats, with the interval of chi-square', () => {
    const repeated = [/cm warm/, /cm cold/].flatMap((state) => [
      ...readings(new RegExp(`^low-split pelvis-gap ([\\d.]+)${state.source}()?`)).values(),
    ]);
    const deviations = repeated.flatMap((values) => values.map((value) => (value - mean(values)) ** 2));
    const freedom = repeated.reduce((sum, values) => sum + values.length - 1, 0);
    const error = Math.sqrt(deviations.reduce((sum, one) => sum + one, 0) / freedom);
    const { noise } = seriesOf('low-split', 'pelvis-gap', undefined, 'warm');
    assert.equal(noise.basis, 'repeats');
    close(noise.typicalError, error, 'typical error');
    close(noise.interval?.lower, error * Math.sqrt(freedom / jStat.chisquare.inv(0.975, freedom)), 'lower');
    close(noise.interval?.upper, error * Math.sqrt(freedom / jStat.chisquare.inv(0.025, freedom)), 'upper');
    close(noise.detectableChange, jStat.normal.inv(0.975, 0, 1) * Math.SQRT2 * error, 'detectable change');
    assert.equal(noise.n, repeated.filter((values) => values.length > 1).flat().length);
  });

  it('of the two shoulders differ by five degrees on the last day, within the noise of 3 degrees a reading', () => {
    const sides = goalFigures(journal, 'shoulder-opening', { today })?.metrics[0]?.sides;
    assert(sides?.status === 'estimated');
    assert.equal(sides.difference, 171 - 166);
    close(sides.noise, 1.959963985 * 3 * Math.SQRT2, 'noise');
    assert.equal(sides.beyondNoise, false);
  });

  it('have four cold days, too few for a date', () => {
    const { days, forecast } = seriesOf('low-split', 'pelvis-gap', undefined, 'cold');
    assert.equal(days.length, 4);
    assert.equal(forecast.status, 'not-estimable');
  });
});

const sessions = writtenSessions('2026-03-01');

const doneBefore = sessions.filter(({ state, on }) => state === 'done' && on <= today);

describe('the load of the sample athlete, by a second way', () => {
  const found = weekLoads(journal, { today, first: week('2025-W46'), last: week('2026-W09') });
  const monday = daysSince1970('2025-11-10');
  const daily = (index: number): readonly number[] =>
    Array.from({ length: 7 }, (_, offset) => {
      const on = dateOf(monday + 7 * index + offset);
      const own = doneBefore.filter((one) => one.on === on);
      return own.reduce((sum, { rating, minutes }) => sum + rating * minutes, 0);
    });
  const total = (index: number): number => daily(index).reduce((sum, one) => sum + one, 0);

  it('is effort x minutes, week by week, with mean over sample deviation of the days', () => {
    assert.equal(found.length, 16);
    for (const [index, { load, spread, isOver }] of found.entries()) {
      assert.equal(load.total, total(index));
      if (!isOver) continue;
      const days = daily(index);
      const deviation = Math.sqrt(days.reduce((sum, one) => sum + (one - mean(days)) ** 2, 0) / 6);
      assert(spread.status === 'estimated' && typeof spread.monotony === 'number');
      close(spread.monotony, mean(days) / deviation, `monotony ${index}`);
      assert(typeof spread.strain === 'number');
      close(spread.strain, (total(index) * mean(days)) / deviation, `strain ${index}`);
    }
  });

  it('changes against the mean of the three weeks before', () => {
    for (const [index, { change }] of found.entries()) {
      if (index < 3) {
        assert.equal(change.status, 'not-estimable');
        continue;
      }
      const before = mean([1, 2, 3].map((ago) => total(index - ago)));
      assert(change.status === 'estimated');
      close(change.percent, (100 * (total(index) - before)) / before, `change ${index}`);
    }
  });

  it('has the ratios of the last 7 days to longer ones, up to yesterday', () => {
    const days = Array.from({ length: 16 }, (_, index) => daily(index))
      .flat()
      .slice(0, daysSince1970(today) - monday);
    const ratios = workloadRatios(journal, today);
    assert(ratios?.rolling.status === 'estimated' && ratios.exponential.status === 'estimated');
    assert.equal(ratios.upTo, '2026-02-24');
    close(ratios.rolling.ratio, mean(days.slice(-7)) / mean(days.slice(-28, -7)), 'rolling');
    const weighted = (over: number): number => {
      const lambda = 2 / (over + 1);
      return days.reduce((average, load) => lambda * load + (1 - lambda) * average);
    };
    close(ratios.exponential.ratio, weighted(7) / weighted(28), 'exponential');
  });

  it('by kind adds up to the whole', () => {
    for (const { byKind, load } of found) {
      assert.equal(
        byKind.reduce((sum, share) => sum + share.load.knownTotal, 0),
        load.knownTotal,
      );
    }
  });
});

describe('the adherence of the sample athlete, by a second way', () => {
  const past = sessions.filter(({ on, state }) => on < today && state !== 'moved');
  const excused = past.filter(({ line }) => /skipped:(ill|injured|work|travel)\b/.test(line));
  const done = past.filter(({ state }) => state === 'done');
  const first = daysSince1970('2025-11-10');
  const figures = adherenceFigures(
    plannedSessions(weekReader(journal, today), first, daysSince1970(today) - 1),
  );

  it('is done of planned, without what was excused', () => {
    const { all: whole } = figures;
    assert.deepEqual(
      [whole.done, whole.n, whole.excused],
      [done.length, past.length - excused.length, excused.length],
    );
    assert(!('status' in whole.share));
    const [lower, upper] = wilsonByHand(whole.done, whole.n);
    close(whole.share.lower, lower, 'lower');
    close(whole.share.upper, upper, 'upper');
  });

  it('of each kind and month, too', () => {
    for (const { key, done: own, n } of figures.byKind) {
      assert.equal(own, done.filter(({ kind }) => kind === key).length);
      assert.equal(n, past.filter((one) => one.kind === key && !excused.includes(one)).length);
    }
    for (const { key, done: own } of figures.byMonth) {
      assert.equal(own, done.filter(({ on }) => on.startsWith(key)).length);
    }
  });

  it('counts every reason', () => {
    const reasons = past.flatMap(({ line }) => /skipped:(\w+)/.exec(line)?.[1] ?? []);
    for (const { reason, count } of figures.all.reasons) {
      assert.equal(count, reasons.filter((one) => one === reason).length);
    }
    assert.equal(
      figures.all.reasons.reduce((sum, { count }) => sum + count, 0),
      reasons.length,
    );
  });
});

describe('the recovery of the sample athlete’s hamstrings, by a second way', () => {
  const found = recoveryFigures(checkContext(journal, { today, zone })).find(
    ({ subject }) => subject.name === 'hamstrings',
  );

  /** Minutes since 1970; the clock of Lisbon in winter is that of Greenwich. */
  const startOf = ({ on, line }: WrittenSession): number =>
    Date.parse(`${on}T${/ (\d\d:\d\d) /.exec(line)?.[1]}Z`) / 60_000;

  const legs = sessions.filter(
    ({ line, state, on }) =>
      on < '2026-02-23' &&
      (line.includes('routine:front-split') || / flexibility .*for:low-split/.test(line)) &&
      (state === 'done' || line.includes('skipped:sore')),
  );

  const pairs: { readonly hours: number; readonly sore: boolean }[] = [];
  let before: WrittenSession | undefined;
  for (const session of legs) {
    if (before && session.on > before.on) {
      const hours = (startOf(session) - startOf(before) - before.minutes) / 60;
      const isSore = lines.some(([on, line]) => {
        const rating = /^[-*]? ?#sore hamstrings (\d+)\/10/.exec(line)?.[1];
        return on === session.on && rating !== undefined && Number(rating) >= 3;
      });
      const days = daysSince1970(session.on) - daysSince1970(before.on);
      if (days < 14) pairs.push({ hours, sore: isSore || session.state === 'skipped' });
    }
    if (session.state === 'done') before = session;
  }

  it('stands on the same pairs', () => {
    assert.ok(found);
    assert.deepEqual(
      found.pairs.map(({ hours, sore }) => ({ hours, sore })),
      pairs,
    );
  });

  it('has the gap of the highest posterior, searched for without any derivative', () => {
    const hours = pairs.map((pair) => pair.hours);
    const spread = Math.sqrt(
      hours.reduce((sum, one) => sum + (one - mean(hours)) ** 2, 0) / (hours.length - 1),
    );
    const logitOf = Math.log(0.2 / 0.8);
    const posterior = (a: number, b: number): number =>
      pairs.reduce((sum, pair) => {
        const odds = a + (b * (pair.hours - 48)) / (2 * spread);
        return sum + (pair.sore ? odds : 0) - Math.log1p(Math.exp(odds));
      }, 0) -
      Math.log1p(((a - logitOf) / 2.5) ** 2) -
      Math.log1p((b / 2.5) ** 2);
    let [a, b] = [0, 0];
    for (let step = 4; step > 1e-10; ) {
      const tries = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j) => [a + i * step, b + j * step] as const));
      const better = tries.find(([c, d]) => posterior(c, d) > posterior(a, b));
      if (better) [a, b] = better;
      else step /= 2;
    }
    assert(found?.learned.status === 'estimated');
    const expected = 48 + (2 * spread * (logitOf - a)) / b;
    assert.ok(
      Math.abs(found.learned.hours - expected) < 1e-3,
      `${found.learned.hours}, searched ${expected}`,
    );
    assert.equal(found.learned.sore, pairs.filter((pair) => pair.sore).length);
  });
});
