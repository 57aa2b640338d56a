// Checks of the taper before an event, and of the lighter weeks of a block.
// Sources: Bosquet L et al (2007) Med Sci Sports Exerc 39(8):1358-1365 [R pubmed 17762369, abstract]: 27 studies; two
// weeks, volume down exponentially by 41 to 60 %, intensity and frequency as they were. Wang Z et al (2023) PLoS ONE
// 18(5):e0282838 [R abstract]: 41 to 60 %, up to 21 days. Rogerson D et al (2024) Sports Med Open 10
// [R 10.1186/s40798-024-00691-y, abstract]: n = 246, lighter for 6.4 ± 1.7 days every 5.6 ± 2.3 weeks. All are borrowed:
// none of them asked people who train flexibility, hand balancing or aerial work.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import type { IsoWeek } from '../../src/notation/time/iso-week';
import { weeksInRow } from '../../src/notation/time/iso-week';
import { rolesOf } from '../../src/planning/block/block-roles';
import { blockSettingRanges, defaultBlockSettings } from '../../src/planning/block/block-settings';
import { kindVolumes, minutesOf } from '../../src/planning/block/kind-volumes';
import { LIGHTER_WEEK_SURVEY } from '../../src/training/statistics/lighter-week-survey';
import { TAPER_META_ANALYSIS, taperShares } from '../../src/training/statistics/taper';
import { indexOf } from '../journal/index-of';
import { printed } from './printed';

describe('published: taper and lighter weeks', () => {
  it('two weeks that halve the volume leave 70.7 and 50 % [C], within the 41 to 60 % of the source [R]', () => {
    const [first, second] = taperShares(2, 50);
    printed(100 * (first ?? 0), '70.7');
    printed(100 * (second ?? 0), '50.0');
    assert.deepEqual(TAPER_META_ANALYSIS, { studies: 27, days: 14, leastReduction: 41, mostReduction: 60 });
    assert.equal(7 * defaultBlockSettings.taperWeeks, TAPER_META_ANALYSIS.days);
    assert.deepEqual(blockSettingRanges.taperReduction, [41, 60]);
    assert.ok(7 * blockSettingRanges.taperWeeks[1] <= 21, 'no longer than what was studied [R Wang 2023]');
  });

  it('each week of a taper keeps the same share of the one before: an exponential fall [C]', () => {
    for (const reduction of [41, 50, 60])
      for (const weeks of [1, 2, 3]) {
        const shares = [1, ...taperShares(weeks, reduction)];
        for (let week = 1; week <= weeks; week += 1)
          printed((shares[week] ?? 0) / (shares[week - 1] ?? 1), (shares[1] ?? 0).toFixed(6));
        printed(shares.at(-1) ?? 0, ((100 - reduction) / 100).toFixed(6));
      }
  });

  it('a block tapers for two weeks with as many sessions, and its last week holds 41 to 60 % less [R]', () => {
    const { plan } = indexOf({ 'events.md': '- #event 2026-05-16 "Show"\n' });
    const weeks = weeksInRow('2026-W11' as IsoWeek, 10);
    for (let reduction = 41; reduction <= 60; reduction += 1)
      for (let length = 20; length <= 120; length += 1) {
        const settings = { ...defaultBlockSettings, taperReduction: reduction };
        const roles = rolesOf(weeks, plan.events[0], settings);
        assert.deepEqual(
          roles.filter(({ role }) => role === 'taper').map(({ week }) => week),
          ['2026-W19', '2026-W20'],
        );
        const asked = weeks.map(() => ({ sessions: 3, minutes: 3 * length }));
        const volumes = kindVolumes(roles, asked, { before: 3 * length, start: 1, top: 1, settings });
        const [building, , last] = volumes.slice(-3);
        assert.ok(building && last);
        assert.equal(last.sessions, building.sessions);
        const cut = 100 * (1 - minutesOf(last) / minutesOf(building));
        // A length in whole minutes is at most one minute below the share.
        const most = Math.max(TAPER_META_ANALYSIS.mostReduction, reduction + 100 / building.length);
        assert.ok(
          cut >= TAPER_META_ANALYSIS.leastReduction && cut <= most,
          `${reduction} % of ${length}: ${cut}`,
        );
      }
  });

  it('lighter weeks come as often as in the survey, give or take its spread [R]', () => {
    assert.deepEqual(LIGHTER_WEEK_SURVEY, {
      n: 246,
      days: { mean: 6.4, sd: 1.7 },
      everyWeeks: { mean: 5.6, sd: 2.3 },
    });
    const { mean, sd } = LIGHTER_WEEK_SURVEY.everyWeeks;
    for (const weeks of [defaultBlockSettings.lighterEvery, 4, 6]) assert.ok(Math.abs(weeks - mean) <= sd);
    const { days } = LIGHTER_WEEK_SURVEY;
    assert.ok(Math.abs(7 - days.mean) <= days.sd, 'a lighter week lasts seven days');
  });
});
