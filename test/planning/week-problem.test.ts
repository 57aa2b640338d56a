import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { isoDate } from '../../src/notation/time/iso-date';
import { addWeeks, type IsoWeek, isoWeekOf } from '../../src/notation/time/iso-week';
import { formatTime } from '../../src/notation/time/wall-clock';
import type { Rule } from '../../src/planning/solver/problem';
import { newSessions } from '../../src/planning/week-problem/asked-sessions';
import {
  type AskedWithPlaces,
  buildProblem,
  type WeekProblem,
} from '../../src/planning/week-problem/build-problem';
import { habitsBefore } from '../../src/planning/week-problem/kept-habits';
import { checkContext } from '../../src/training/week-under-check';
import { date, journalOf, type Notes } from './journal-of';

/** Tuesday of week 9, 2026; the week that is asked about is 2 to 8 March. */
const options = { today: date('2026-02-24'), zone: 'Europe/Berlin' };
const noRecovery = '- #rule recovery min:0/week\n';

function problemOf(notes: Notes, weeks: readonly IsoWeek[] = [], today = options.today): WeekProblem {
  const asked = weeks.length > 0 ? weeks : [addWeeks(isoWeekOf(today), 1)];
  const context = checkContext(journalOf(notes), { ...options, today });
  const habits = habitsBefore(context, asked[0] ?? assert.fail());
  return buildProblem({
    context,
    habits,
    weeks: asked,
    asked: asked.flatMap((week) => newSessions(context, week, habits)),
  });
}

/** The places of one sort of sessions that nothing rules out: `2026-03-04 19:30`. */
function openPlaces(built: WeekProblem, kind: string): readonly string[] {
  const found: AskedWithPlaces =
    built.asked.find(({ asked }) => asked.facts.session.kind === kind) ?? assert.fail(`no ${kind}`);
  const need = built.problem.needs.find(({ id }) => id === found.id) ?? assert.fail();
  return found.places
    .filter((_, index) => !need.candidates[index]?.blockedBy?.length)
    .map(({ day, start }) => (start === undefined ? isoDate(day) : `${isoDate(day)} ${formatTime(start)}`))
    .sort();
}

function rulesOf<Type extends Rule['type']>(built: WeekProblem, type: Type) {
  return built.problem.rules.filter((rule): rule is Extract<Rule, { type: Type }> => rule.type === type);
}

describe('the places of a session', () => {
  it('are every quarter of an hour in the free hours that it fits, without what is busy', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #free mon wed 18:00-19:30\n- #busy 2026-03-04 19:15-20:00\n- #need skill 1/week 60min 5/10\n`,
    });
    assert.deepEqual(openPlaces(built, 'skill'), [
      '2026-03-02 18:00',
      '2026-03-02 18:15',
      '2026-03-02 18:30',
      '2026-03-04 18:00',
      '2026-03-04 18:15',
    ]);
  });

  it('are an hour apart in a block of more than four weeks, from the beginning of the free hours, with the last that fits', () => {
    const notes = { 'journal.md': `${noRecovery}- #free mon 18:15-20:45\n- #need skill 1/week 60min 5/10\n` };
    const next = addWeeks(isoWeekOf(options.today), 1);
    const weeks = (count: number) => Array.from({ length: count }, (_, index) => addWeeks(next, index));
    assert.deepEqual(openPlaces(problemOf(notes, weeks(5)), 'skill'), [
      '2026-03-02 18:15',
      '2026-03-02 19:15',
      '2026-03-02 19:45',
    ]);
    assert.equal(openPlaces(problemOf(notes, weeks(4)), 'skill').length, 7);
  });

  it('lie in the partner’s hours and no others, where some line names the partner', () => {
    const hours = `${noRecovery}- #free mon 18:00-19:00\n- #free tue 18:00-19:00 with:juno\n- #free wed 19:00-20:00 with:coach\n`;
    const built = problemOf({
      'journal.md': `${hours}- #need skill 1/week 60min 5/10 with:juno\n- #need strength 1/week 60min 5/10\n- #need conditioning 1/week 60min 5/10 with:wren\n`,
    });
    assert.deepEqual(openPlaces(built, 'skill'), ['2026-03-03 18:00']);
    // Nobody's hours are as good as anybody's for a session alone.
    assert.deepEqual(openPlaces(built, 'strength'), [
      '2026-03-02 18:00',
      '2026-03-03 18:00',
      '2026-03-04 19:00',
    ]);
    // No line names wren, so she comes when the athlete has time.
    assert.deepEqual(openPlaces(built, 'conditioning'), ['2026-03-02 18:00']);
  });

  it('lie in the lines that name the place, where some line does', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #free mon 18:00-19:00\n- #free thu 18:00-19:00 where:studio\n- #free fri 18:00-19:00 where:home\n- #need skill 1/week 60min 5/10 where:studio\n`,
    });
    assert.deepEqual(openPlaces(built, 'skill'), ['2026-03-05 18:00']);
  });

  it('leave out trips, events, and the days before today', () => {
    const notes: Notes = {
      'journal.md': `${noRecovery}- #free mon tue wed thu fri sat sun 18:00-19:00\n- #busy 2026-03-02..2026-03-04\n- #event 2026-03-07 "Open floor"\n- #need skill 1/week 60min 5/10\n`,
    };
    const week = addWeeks(isoWeekOf(options.today), 1);
    assert.deepEqual(openPlaces(problemOf(notes, [week]), 'skill'), [
      '2026-03-05 18:00',
      '2026-03-06 18:00',
      '2026-03-08 18:00',
    ]);
    assert.deepEqual(openPlaces(problemOf(notes, [week], date('2026-03-06')), 'skill'), [
      '2026-03-06 18:00',
      '2026-03-08 18:00',
    ]);
  });

  it('are dearer the farther from what was kept in the last four weeks; what was planned or skipped is no habit', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #free mon tue wed 18:00-20:00\n- #need skill 1/week 60min 5/10\n`,
      '2026-02-17.md': '- [x] #session skill 18:30 60min 5/10\n',
      '2026-02-10.md': '- [x] #session skill 18:30 60min 5/10\n',
      '2026-02-16.md': '- [ ] #session skill 18:00 60min 5/10\n',
      '2026-02-09.md': '- [ ] #session skill 18:00 60min 5/10 skipped:work\n',
    });
    const [need] = built.problem.needs;
    const cost = (day: number, minutes: number) =>
      need?.candidates.find(
        (one) => one.day === day && one.start === built.axis.at(built.axis.dayIndex(0) * -1 + day, minutes),
      )?.deviation;
    // Kept in 2 of 4 weeks: 2. Each quarter of an hour away 1 more, another weekday 48.
    assert.equal(cost(1, 18 * 60 + 30), 2);
    assert.equal(cost(1, 19 * 60), 4);
    assert.equal(cost(0, 18 * 60 + 30), 50);
  });

  it('are ruled out by a session of the week after that a gap reaches', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #free sat sun 10:00-11:00\n- #need flexibility 1/week 60min 8/10\n`,
      '2026-03-10.md': '- [ ] #session flexibility 10:00 60min 8/10\n',
    });
    assert.deepEqual(openPlaces(built, 'flexibility'), ['2026-03-07 10:00']);
  });
});

describe('the rules of a week', () => {
  it('keep hard sessions of a kind apart in real minutes, any effort for a goal', () => {
    const built = problemOf({
      'goals.md': '- #goal hoop\n- #need flexibility 2/week 60min 8/10\n- #rule hoop gap:20h\n',
      'journal.md': `${noRecovery}- #free mon wed 18:00-19:00\n`,
    });
    assert.deepEqual(
      rulesOf(built, 'gap').map(({ earlier, later, minutes }) => [earlier, later, minutes]),
      [
        [['kind:flexibility', 'hard'], ['kind:flexibility', 'hard'], 48 * 60],
        [['goal:hoop', 'training'], ['goal:hoop', 'training'], 20 * 60],
      ],
    );
  });

  it('count in whole days what is written in days, and what has no time', () => {
    const inDays = problemOf({
      'journal.md': `${noRecovery}- #free sat sun 10:00-11:00\n- #need skill 1/week 60min 9/10 gap:7d\n`,
    });
    assert.deepEqual(
      rulesOf(inDays, 'day-gap').map(({ earlier, days }) => [earlier, days]),
      [[['need:0'], 7]],
    );
    const timeless = problemOf({ 'journal.md': `${noRecovery}- #need flexibility 2/week 60min 8/10\n` });
    assert.deepEqual(
      rulesOf(timeless, 'day-gap').map(({ earlier, later, days }) => [earlier, later, days]),
      [
        [['kind:flexibility', 'hard', 'timeless'], ['kind:flexibility', 'hard'], 2],
        [['kind:flexibility', 'hard', 'timed'], ['kind:flexibility', 'hard', 'timeless'], 2],
      ],
    );
  });

  it('block hard training of a region that hurts, and nothing else', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #routine back flexibility regions:left-hip\n- #need flexibility 1/week 60min 8/10 routine:back\n`,
      '2026-02-23.md': '- #pain hips 4/10\n',
    });
    assert.deepEqual(
      rulesOf(built, 'block').map(({ of }) => of),
      [['region:left-hip', 'hard']],
    );
  });

  it('put a maximum in minutes as one of sessions, as these are so long', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #rule strength max:150min/week\n- #need strength 3/week 60min 5/10\n`,
    });
    assert.deepEqual(
      rulesOf(built, 'count').map(({ of, max }) => [of, max]),
      [[['kind:strength', 'week:0'], 2]],
    );
    assert.equal(built.isApproximate, false);
  });
});

describe('the time axis', () => {
  it('counts real minutes: the night of the clock change in Berlin is an hour shorter', () => {
    const notes = { 'journal.md': `${noRecovery}- #free sat sun 18:00-19:00\n- #need skill 1/week 60min\n` };
    const built = problemOf(notes, [], date('2026-03-17'));
    const [saturday, sunday] = [5, 6].map((day) =>
      built.problem.needs[0]?.candidates.find((one) => one.day === day),
    );
    assert.equal((sunday?.start ?? 0) - (saturday?.start ?? 0), 23 * 60);
  });
});

describe('what is asked of a week', () => {
  it('is what its needs lack, the nearest goal first, each with what it counts for', () => {
    const built = problemOf({
      'goals.md':
        '- #goal far by:2026-12-01\n- #need skill 2/week 60min\n- #goal near by:2026-04-01\n- #need skill 1/week 45min 5/10\n',
      '2026-03-03.md': '- [ ] #session skill 18:00 60min for:far\n',
    });
    assert.deepEqual(
      built.problem.needs.map(({ count, importance, labels }) => [
        count,
        importance,
        labels.filter((label) => /goal|hard|training|recovery/.test(label)),
      ]),
      [
        [1, 0, ['goal:near', 'training']],
        [1, 1, ['goal:far', 'training', 'hard']],
        // Recovery is asked for by a rule only: nothing is lost but what that rule counts.
        [1, undefined, ['kind:recovery']],
      ],
    );
    assert.equal(built.problem.standing.length, 1);
  });

  it('counts sessions of own kinds for what they are like', () => {
    const built = problemOf({
      'journal.md': `${noRecovery}- #kind duo like:skill\n- #need skill 2/week 60min\n`,
      '2026-03-03.md': '- [ ] #session duo 18:00 60min\n',
    });
    assert.deepEqual(
      built.problem.needs.map(({ count }) => count),
      [1],
    );
  });
});
