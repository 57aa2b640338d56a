import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { isoDate } from '../../../src/notation/time/iso-date';
import { addWeeks, type IsoWeek, mondayOf, weeksInRow } from '../../../src/notation/time/iso-week';
import { eventsOfBlock, rolesOf } from '../../../src/planning/block/block-roles';
import {
  blockSettingRanges,
  defaultBlockSettings,
  usableBlockSettings,
} from '../../../src/planning/block/block-settings';
import { kindVolumes, minutesOf } from '../../../src/planning/block/kind-volumes';
import { indexOf } from '../../journal/index-of';

const first = '2026-W10' as IsoWeek;

const anySettings = fc.record({
  mostIncrease: fc.integer({ min: 1, max: 30 }),
  lighterEvery: fc.constantFrom(0, 3, 4, 5, 6),
  lighterVolume: fc.integer({ min: 40, max: 90 }),
  taperReduction: fc.integer({ min: 41, max: 60 }),
  taperWeeks: fc.integer({ min: 1, max: 3 }),
});

/** The event of a journal on the `offset`-th day of the block. */
function eventOn(offset: number | undefined) {
  if (offset === undefined) return undefined;
  const date = isoDate(mondayOf(first) + offset);
  return indexOf({ 'events.md': `- #event ${date} "Show"\n` }).plan.events[0];
}

/** Roles as letters: b, l and t. */
function letters(count: number, offset: number | undefined, settings = defaultBlockSettings): string {
  return rolesOf(weeksInRow(first, count), eventOn(offset), settings)
    .map(({ role }) => role[0])
    .join('');
}

describe('what the weeks of a block are there for', () => {
  it('building, and a lighter week every so many', () => {
    assert.equal(letters(12, undefined), 'bbbblbbbblbb');
    assert.equal(letters(12, undefined, { ...defaultBlockSettings, lighterEvery: 3 }), 'bblbblbblbbl');
    assert.equal(letters(12, undefined, { ...defaultBlockSettings, lighterEvery: 0 }), 'bbbbbbbbbbbb');
  });

  it('a taper up to the week of an event that lies late in it, and none lighter right before', () => {
    assert.equal(letters(10, 9 * 7 + 5), 'bbbblbbbtt');
    assert.equal(letters(7, 6 * 7 + 3), 'bbbbbtt');
  });

  it('a taper of the whole weeks before an event early in its week, which goes on', () => {
    assert.equal(letters(10, 9 * 7 + 1), 'bbbblbbttt');
    assert.equal(letters(10, 10 * 7 + 1), 'bbbblbbbtt');
  });

  it('weeks counted anew behind an event', () => {
    assert.equal(letters(12, 4 * 7 + 6), 'bbbttbbbblbb');
  });

  it('only events inside or right behind the block are its own', () => {
    const days = [-1, 0, 69, 76, 77];
    const notes = Object.fromEntries(
      days.map((offset) => [`${offset}.md`, `- #event ${isoDate(mondayOf(first) + offset)} "${offset}"\n`]),
    );
    assert.deepEqual(
      eventsOfBlock(indexOf(notes).plan, weeksInRow(first, 10)).map(({ name }) => name),
      ['0', '69', '76'],
    );
  });

  it('settings that cannot be used count as not set', () => {
    assert.deepEqual(usableBlockSettings({}), defaultBlockSettings);
    assert.deepEqual(
      usableBlockSettings({
        mostIncrease: 31,
        lighterEvery: 2,
        lighterVolume: '60',
        taperReduction: 61,
        taperWeeks: 0,
      }),
      defaultBlockSettings,
    );
    assert.deepEqual(usableBlockSettings({ lighterEvery: 0, mostIncrease: 5 }), {
      ...defaultBlockSettings,
      lighterEvery: 0,
      mostIncrease: 5,
    });
    for (const [least, most] of Object.values(blockSettingRanges)) assert.ok(least < most);
  });
});

describe('the volumes of a kind', () => {
  const volumes = (before: number, top = 1, count = 12, settings = defaultBlockSettings) =>
    kindVolumes(
      rolesOf(weeksInRow(first, count), undefined, settings),
      Array.from({ length: count }, () => ({ sessions: 2, minutes: 120 })),
      { before, start: 1, top, settings },
    ).map(({ sessions, length }) => `${sessions} x ${length}`);

  it('grow in steps from what was done to what is asked, and are cut in lighter weeks', () => {
    assert.deepEqual(volumes(90), [
      '2 x 49',
      '2 x 50',
      '2 x 50',
      '2 x 50',
      '2 x 30',
      '2 x 55',
      '2 x 55',
      '2 x 55',
      '2 x 60',
      '2 x 35',
      '2 x 60',
      '2 x 60',
    ]);
  });

  it('are what is asked at once where that was done before, or nothing is known', () => {
    assert.deepEqual(volumes(120).slice(0, 3), ['2 x 60', '2 x 60', '2 x 60']);
    assert.deepEqual(volumes(0).slice(0, 3), ['2 x 60', '2 x 60', '2 x 60']);
  });

  it('go above what is asked where the top is higher', () => {
    assert.deepEqual(volumes(120, 1.2).slice(0, 4), ['2 x 65', '2 x 65', '2 x 65', '2 x 70']);
  });

  it('have fewer sessions where they would be shorter than half of what is asked', () => {
    assert.deepEqual(volumes(40).slice(0, 2), ['1 x 44', '1 x 45']);
  });

  it('never exceed the limit, whatever was done, asked and set', () => {
    const anything = fc.record({
      count: fc.integer({ min: 4, max: 12 }),
      offset: fc.option(fc.integer({ min: 0, max: 83 }), { nil: undefined }),
      before: fc.integer({ min: 0, max: 600 }),
      top: fc.integer({ min: 50, max: 150 }),
      asked: fc.array(
        fc.record({ sessions: fc.integer({ min: 0, max: 5 }), length: fc.integer({ min: 15, max: 150 }) }),
        { minLength: 12, maxLength: 12 },
      ),
      changes: fc.boolean(),
      settings: anySettings,
    });
    let grown = 0;
    fc.assert(
      fc.property(anything, ({ count, offset, before, top, asked, changes, settings }) => {
        const roles = rolesOf(weeksInRow(first, count), eventOn(offset), settings);
        const wanted = roles.map((_, index) => {
          const { sessions, length } = (changes ? asked[index] : asked[0]) ?? { sessions: 0, length: 0 };
          return { sessions, minutes: sessions * length };
        });
        const found = kindVolumes(roles, wanted, { before, start: 1, top: top / 100, settings });
        let compared = before > 0 ? [before, before, before] : [];
        let building: number | undefined;
        found.forEach((volume, index) => {
          const minutes = minutesOf(volume);
          const role = roles[index]?.role;
          const asks = wanted[index]?.minutes ?? 0;
          assert.ok(Number.isInteger(volume.length) && volume.sessions <= (wanted[index]?.sessions ?? 0));
          if (role === 'building') {
            const mean = compared.reduce((sum, one) => sum + one, 0) / 3;
            if (mean > 0)
              assert.ok(minutes <= mean * (1 + settings.mostIncrease / 100) + 1e-6, `week ${index}`);
            assert.ok(minutes <= (asks * Math.max(top, 1e-9)) / 100 + 1e-6);
            if (mean > 0 && minutes > mean) grown += 1;
            if (compared.length > 0) compared = [...compared.slice(1), minutes];
            else if (minutes > 0) compared = [minutes, minutes, minutes];
            if (!changes && building !== undefined) assert.ok(minutes >= building, `week ${index} falls`);
            building = minutes;
          } else if (building !== undefined && building > 1 && !changes && asks > 0) {
            assert.ok(minutes < building || building <= volume.sessions, `week ${index} is not lighter`);
          }
        });
      }),
      { seed: 812, numRuns: 2000 },
    );
    assert.ok(grown > 1000, `${grown} weeks grew`);
  });

  it('has its lighter weeks as far apart as is set, none before a taper', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 12 }),
        fc.option(fc.integer({ min: 0, max: 83 }), { nil: undefined }),
        anySettings,
        (count, offset, settings) => {
          const roles = rolesOf(weeksInRow(first, count), eventOn(offset), settings);
          let since = 0;
          roles.forEach(({ role, week, share }, index) => {
            assert.equal(week, addWeeks(first, index));
            since = role === 'building' ? since + 1 : 0;
            if (role === 'lighter') assert.notEqual(roles[index + 1]?.role, 'taper');
            assert.equal(share === 1, role === 'building');
            const isBeforeTaper = roles[index + 1]?.role === 'taper' || index === count - 1;
            if (settings.lighterEvery > 0 && !isBeforeTaper) assert.ok(since < settings.lighterEvery);
            if (settings.lighterEvery === 0) assert.notEqual(role, 'lighter');
          });
          const taper = roles.filter(({ role }) => role === 'taper').length;
          assert.ok(taper <= settings.taperWeeks + 1);
        },
      ),
      { seed: 813, numRuns: 1000 },
    );
  });
});
