/**
 * Clock changes.
 *
 * Local times that a clock change skips or shows twice: RFC 5545, section 3.3.5, examples of 2007 in New York
 * [R rfc5545.txt]: the first of two, and the offset before a gap.
 *
 * Transitions: IANA time zone database, recomputed from it with another library (Python zoneinfo) [C].
 *
 * Elapsed hours between two local times: recomputed the same way [C].
 */
import assert from 'node:assert/strict';
import { readTimeSpan } from '../../src/notation/time/wall-clock';
import { type InstantMinutes, instantOf } from '../../src/notation/time/zoned-time';
import { date } from '../training/dates';
import { told } from '../training/journal-from-text';

/** The instant of `2026-03-08 18:00` on the clock of `zone`. */
function instant(local: string, zone: string): InstantMinutes {
  const [day = '', time = ''] = local.split(' ');
  return instantOf(date(day), readTimeSpan(time)?.start ?? Number.NaN, zone);
}

function utc(text: string): InstantMinutes {
  return Date.parse(text) / 60_000;
}

const newYork = 'America/New_York';
const london = 'Europe/London';

describe('clock changes', () => {
  describe('a local time as an instant (RFC 5545, 3.3.5)', () => {
    it('is the first of two: 2007-11-04 01:30 in New York is 05:30Z [R]', () => {
      assert.equal(instant('2007-11-04 01:30', newYork), utc('2007-11-04T05:30Z'));
    });

    it('is read with the offset before a gap: 2007-03-11 02:30 in New York is 07:30Z [R]', () => {
      assert.equal(instant('2007-03-11 02:30', newYork), utc('2007-03-11T07:30Z'));
    });
  });

  describe('the minute before a change and the minute of it are one minute apart (tzdb) [C]', () => {
    for (const [zone, before, after, at] of [
      [newYork, '2026-03-08 01:59', '2026-03-08 03:00', '2026-03-08T07:00Z'],
      [london, '2026-03-29 00:59', '2026-03-29 02:00', '2026-03-29T01:00Z'],
      ['Europe/Berlin', '2026-03-29 01:59', '2026-03-29 03:00', '2026-03-29T01:00Z'],
      ['Europe/Dublin', '2026-03-29 00:59', '2026-03-29 02:00', '2026-03-29T01:00Z'],
      ['Australia/Sydney', '2026-10-04 01:59', '2026-10-04 03:00', '2026-10-03T16:00Z'],
      ['Australia/Lord_Howe', '2026-10-04 01:59', '2026-10-04 02:30', '2026-10-03T15:30Z'],
      ['America/Sao_Paulo', '2018-11-03 23:59', '2018-11-04 01:00', '2018-11-04T03:00Z'],
      ['Africa/Cairo', '2026-04-23 23:59', '2026-04-24 01:00', '2026-04-23T22:00Z'],
      ['Pacific/Apia', '2011-12-29 23:59', '2011-12-31 00:00', '2011-12-30T10:00Z'],
      [newYork, '1997-04-06 01:59', '1997-04-06 03:00', '1997-04-06T07:00Z'],
      [newYork, '2007-03-11 01:59', '2007-03-11 03:00', '2007-03-11T07:00Z'],
      [newYork, '2027-03-14 01:59', '2027-03-14 03:00', '2027-03-14T07:00Z'],
      [london, '2027-03-28 00:59', '2027-03-28 02:00', '2027-03-28T01:00Z'],
      ['America/Santiago', '2026-09-05 23:59', '2026-09-06 01:00', '2026-09-06T04:00Z'],
      ['Africa/Casablanca', '2026-03-22 01:59', '2026-03-22 03:00', '2026-03-22T02:00Z'],
    ] as const) {
      it(`${zone} at ${at}`, () => {
        assert.equal(instant(after, zone), utc(at));
        assert.equal(instant(before, zone), utc(at) - 1);
      });
    }
  });

  describe('of the hour that comes twice, a local time is the first; the next minute comes after both (tzdb) [C]', () => {
    for (const [zone, before, after, at, twice] of [
      [newYork, '1997-10-26 01:59', '1997-10-26 02:00', '1997-10-26T06:00Z', 60],
      [newYork, '2026-11-01 01:59', '2026-11-01 02:00', '2026-11-01T06:00Z', 60],
      [newYork, '2027-11-07 01:59', '2027-11-07 02:00', '2027-11-07T06:00Z', 60],
      [london, '2026-10-25 01:59', '2026-10-25 02:00', '2026-10-25T01:00Z', 60],
      [london, '2027-10-31 01:59', '2027-10-31 02:00', '2027-10-31T01:00Z', 60],
      ['Europe/Berlin', '2026-10-25 02:59', '2026-10-25 03:00', '2026-10-25T01:00Z', 60],
      ['Europe/Dublin', '2026-10-25 01:59', '2026-10-25 02:00', '2026-10-25T01:00Z', 60],
      ['Australia/Sydney', '2026-04-05 02:59', '2026-04-05 03:00', '2026-04-04T16:00Z', 60],
      ['Australia/Lord_Howe', '2026-04-05 01:59', '2026-04-05 02:00', '2026-04-04T15:00Z', 30],
      ['Africa/Casablanca', '2026-02-15 02:59', '2026-02-15 03:00', '2026-02-15T02:00Z', 60],
    ] as const) {
      it(`${zone} at ${at}`, () => {
        assert.equal(instant(before, zone), utc(at) - 1);
        assert.equal(instant(after, zone), utc(at) + twice);
      });
    }
  });

  it('zones without a change keep their clock all year: Kathmandu 05:45 ahead, Phoenix 07:00 behind (tzdb) [C]', () => {
    for (const day of ['2026-01-15', '2026-04-15', '2026-07-15', '2026-10-15']) {
      assert.equal(instant(`${day} 12:00`, 'Asia/Kathmandu'), utc(`${day}T06:15Z`));
      assert.equal(instant(`${day} 12:00`, 'America/Phoenix'), utc(`${day}T19:00Z`));
    }
  });

  describe('the hours between two sessions are elapsed hours', () => {
    for (const [zone, from, to, hours] of [
      [newYork, '2026-03-07 18:00', '2026-03-08 18:00', 23],
      [newYork, '2026-10-31 18:00', '2026-11-01 18:00', 25],
      [london, '2026-03-28 09:00', '2026-03-30 09:00', 47],
    ] as const) {
      it(`${zone}: ${from} to ${to} are ${hours} h [C]`, () => {
        assert.equal((instant(to, zone) - instant(from, zone)) / 60, hours);
        const [fromDay = '', fromTime = ''] = from.split(' ');
        const [toDay = '', toTime = ''] = to.split(' ');
        const found = (asked: number, inZone: string) =>
          told(
            'gap-too-short',
            {
              'journal.md': `- #rule strength gap:${asked}h`,
              [`${fromDay}.md`]: `- [x] #session strength ${fromTime}`,
              [`${toDay}.md`]: `- [x] #session strength ${toTime}`,
            },
            toDay,
            inZone,
          ).length;
        assert.equal(found(hours, zone), 0, 'a rule of so many hours is kept');
        assert.equal(found(hours + 1, zone), 1, 'one of an hour more is broken');
        // The same wall clocks without a change are a whole number of days apart.
        assert.equal(found(Math.round(hours / 24) * 24, 'America/Phoenix'), 0);
        assert.equal(found(Math.round(hours / 24) * 24 + 1, 'America/Phoenix'), 1);
      });
    }

    it('a rule of 48 h is broken in London by sessions at 09:00 on 28 and 30 March 2026 [C]', () => {
      assert.deepEqual(
        told(
          'gap-too-short',
          {
            '2026-03-28.md': '- [x] #session strength 09:00',
            '2026-03-30.md': '- [ ] #session strength 09:00',
          },
          '2026-03-30',
          london,
        ),
        [
          '2026-03-30.md | warning | #session strength 09:00 | 47 h after the strength session of 2026-03-28; the rule asks 48 h',
        ],
      );
    });
  });
});
