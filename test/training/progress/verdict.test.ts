import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { figuresOf, seriesOf, verdictOf, withReadings } from './figures-of';

const today = '2026-02-25';
const goal = (by: string, to = '6cm') => `- #goal low-split ${by}\n- #metric gap from:14cm to:${to}`;

/** About half a centimetre a week. */
const falling = {
  '2026-01-05': '14cm',
  '2026-01-12': '13.6cm',
  '2026-01-19': '12.9cm',
  '2026-01-26': '12.5cm',
  '2026-02-02': '12cm',
  '2026-02-09': '11.4cm',
  '2026-02-16': '11cm',
  '2026-02-23': '10.3cm',
};

const verdict = (by: string, readings: Readonly<Record<string, string>> = falling, to?: string) =>
  verdictOf(withReadings(readings, goal(by, to)), today);

describe('the verdict on a series', () => {
  const range = 'At this pace the target is reached between 2026-04-19 and 2026-04-27';
  const further = '. That is further ahead than the readings reach back';

  it('names both ends of the forecast and the date', () => {
    assert.equal(verdict('by:2026-05-31'), `in-time: ${range}; the date is 2026-05-31${further}`);
    assert.equal(
      verdict('by:2026-04-22'),
      `may-be-late: ${range}; the date, 2026-04-22, lies between the two${further}`,
    );
    assert.equal(verdict('by:2026-03-31'), `late: ${range}; the date, 2026-03-31, is earlier${further}`);
    assert.equal(verdict(''), `no-date: ${range}; no date is set${further}`);
  });

  it('says nothing of looking ahead when it does not look further than back', () => {
    assert.equal(
      verdict('by:2026-05-31', falling, '9.5cm'),
      'in-time: At this pace the target is reached between 2026-03-05 and 2026-03-09; the date is 2026-05-31',
    );
  });

  it('never begins before today: the fast end would have been there already', () => {
    const { forecast, verdict: said } = seriesOf(
      withReadings(falling, goal('by:2026-05-31', '10.25cm')),
      today,
    );
    assert(forecast.status === 'estimated');
    assert(forecast.earliest < today);
    assert(said.earliest !== undefined && said.earliest >= today);
  });

  it('is reached with the first day whose mean is at the target, whatever comes after', () => {
    assert.equal(
      verdict('by:2026-05-31', falling, '11.2cm'),
      'reached: The target was reached on 2026-02-16',
    );
    assert.equal(
      verdict('by:2026-05-31', { '2026-02-02': '5cm + 8cm', '2026-02-09': '7cm' }),
      'not-estimable: Not enough notes yet for a date: 2 of 5 days measured',
      'one of two repeats at the target is not the day',
    );
  });

  it('gives no date while the slope may be zero, and none when it leads away', () => {
    const level = Object.fromEntries(
      Object.keys(falling).map((day, i) => [day, `${12 + ((i * 5) % 4) / 10}cm`] as const),
    );
    assert.equal(
      verdict('by:2026-05-31', level),
      'not-estimable: No date can be given: the readings of 8 days may as well stand still',
    );
    const rising = Object.fromEntries(
      Object.keys(falling).map((day, i) => [day, `${12 + i / 2}cm`] as const),
    );
    assert.equal(
      verdict('by:2026-05-31', rising),
      'not-estimable: No date can be given: the readings of 8 days move away from the target',
    );
  });

  it('gives no date that is more than ten years away', () => {
    const slow = Object.fromEntries(
      Object.keys(falling).map((day, i) => [day, `${(14 - i / 1000).toFixed(3)}cm`] as const),
    );
    assert.equal(
      verdict('by:2026-05-31', slow, '0cm'),
      'not-estimable: No date can be given: at this pace it is more than ten years away',
    );
  });

  it('of the goal is that of the side or metric that stands worst, in the main state', () => {
    const sided = Object.fromEntries(
      Object.entries(falling).map(([day, value], i) => [
        day,
        `${value} side:left warm + ${14 - i / 4}cm side:right warm + ${18 + i}cm side:right cold`,
      ]),
    );
    const { worst } = figuresOf(withReadings(sided, goal('by:2026-05-31')), today);
    assert.deepEqual(
      [worst?.series.side, worst?.series.condition, worst?.series.verdict.code],
      ['right', 'warm', 'late'],
    );
  });
});

describe('the pace that is needed', () => {
  it('leads from the line at the latest reading to the target, in the time left from today', () => {
    const { pace } = seriesOf(withReadings(falling, goal('by:2026-04-22')), today);
    assert(pace.status === 'estimated');
    assert.equal(pace.daysLeft, 56);
    assert.equal(pace.levelFrom, 'line');
    assert.ok(Math.abs(pace.perWeek - (6 - pace.level) / 8) < 1e-12);
  });

  it('is not needed when the target is reached, and has no time when the date has passed', () => {
    const reason = (by: string, to: string) => {
      const { pace } = seriesOf(withReadings(falling, goal(by, to)), today);
      return pace.status === 'not-estimable' ? pace.reason : pace.status;
    };
    assert.equal(reason('by:2026-05-31', '11cm'), 'target-reached');
    assert.equal(reason('by:2026-02-24', '6cm'), 'date-passed');
    assert.equal(reason('by:2026-02-25', '6cm'), 'date-passed');
    assert.equal(reason('', '6cm'), 'no-date');
  });

  it('works upwards, too', () => {
    const rising = Object.fromEntries(Object.keys(falling).map((day, i) => [day, `${10 + i}s`] as const));
    const notes = withReadings(rising, '- #goal low-split by:2026-04-22\n- #metric gap from:10s to:60s');
    const { pace } = seriesOf(notes, today);
    assert(pace.status === 'estimated');
    assert.ok(Math.abs(pace.perWeek - 43 / 8) < 1e-9);
    assert.equal(pace.comparison, 'faster-than-observed');
  });
});
