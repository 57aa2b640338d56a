import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../../../scripts/browser.mjs';
import { rosterPageData } from '../../../src/editor/roster-page/page-data';
import { wordsOf } from '../../../src/editor/words';
import { JournalIndex } from '../../../src/journal/journal-index';
import { openNote } from '../../../src/journal/open-note';
import type { IsoDate } from '../../../src/notation/time/iso-date';
import type { RosterPageData, RosterPageState } from '../../../src/pages/roster-page-data';
import { fillMessage } from '../../../src/training/finding';
import { PublishedFindings } from '../../../src/training/published-findings';
import { KeptFacts } from '../../../src/training/roster/kept-facts';
import { weeksAround } from '../../../src/training/weeks-around';
import { accessibilityFaults } from './accessibility';
import { type Look, lookAtPage } from './look-at-page';
import { bundlePage, type PageInBrowser } from './page-in-browser';
import { type ThemeName, themes } from './themes';

const today = '2026-02-25' as IsoDate;
const pictures = join(process.cwd(), 'out/pages');

/** Sessions done on most days of January, and left out since the middle of February. */
function slide(): Readonly<Record<string, string>> {
  const notes: Record<string, string> = {};
  for (let day = 1; day <= 24; day += 1)
    notes[`2026-01-${String(day).padStart(2, '0')}.md`] = '- [x] #session skill 18:30 45min 5/10\n';
  for (let day = 16; day <= 24; day += 1)
    notes[`2026-02-${day}.md`] = '- [ ] #session skill 18:30 45min 5/10 skipped:tired\n';
  return notes;
}

/** One athlete of each kind. */
const coached: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  Avocet: { 'journal.md': '# Avocet\n' },
  Bittern: slide(),
  Crane: {
    'plan.md': '- #event 2026-03-14 "spring show"\n',
    '2026-02-24.md': '- [x] #session flexibility 18:30 60min 5/10\n- [ ] #session strength 20:00 45min\n',
    '2026-02-26.md': '- [ ] #session skill 18:30 45min\n',
  },
  Dunlin: {
    'plan.md': '- #goal bridge by:2026-02-20 "Hands to heels"\n- #why w\n- #metric reach from:64cm to:50cm\n',
    '2026-02-23.md': '- #pain lower-back 6/10\n- #pain left-wrist\n',
  },
  Egret: { '2026-02-24.md': '- #win held it for ten\n' },
};

function dataOf(athletes: typeof coached): RosterPageData {
  const journals = Object.entries(athletes).map(([title, notes]) => {
    const journal = new JournalIndex();
    for (const [path, text] of Object.entries(notes)) journal.replace(openNote(path, text));
    return {
      id: `file:///roster/${title}`,
      title,
      journal,
      today: () => today,
      zone: () => 'UTC',
      settings: { findings: { enabled: true } },
    };
  });
  const findingsOf = (open: { readonly id: string }) => {
    const journal = journals.find(({ id }) => id === open.id)?.journal;
    if (!journal) return [];
    const published = new PublishedFindings(journal);
    published.refresh({ today, zone: 'UTC', weeks: weeksAround(today), openNotes: new Set() });
    return published.all;
  };
  return rosterPageData({ journals, kept: new KeptFacts(), findingsOf }, wordsOf('en', fillMessage), 'en');
}

const shown = dataOf(coached);

describe('the page of a coach in a browser', function () {
  this.timeout(60_000);
  let browser: Browser;
  let script: string;

  const withPage = (
    look: Look<RosterPageState>,
    data: RosterPageData,
    check: (open: PageInBrowser) => Promise<void>,
  ): Promise<void> => lookAtPage({ browser, script }, look, { type: 'data', data }, check);

  const focusedKey = (open: PageInBrowser) =>
    open.page.evaluate(() => document.activeElement?.getAttribute('data-key'));
  const lastMessage = async (open: PageInBrowser) => (await open.messages()).at(-1);

  before(async () => {
    [browser, script] = await Promise.all([launchBrowser(), bundlePage('roster-page')]);
    mkdirSync(pictures, { recursive: true });
  });

  after(async () => {
    await browser?.close();
  });

  it('is a table, those who need a word first, each with the reason in words and a shape of its own', () =>
    withPage({ width: 1300 }, shown, async (open) => {
      assert.deepEqual((await open.messages())[0], { type: 'ready' });
      const table = open.page.getByRole('table', { name: 'Athletes, those who need a word first' });
      assert.equal(await table.getByRole('columnheader').count(), 8);
      assert.deepEqual(await table.locator('.name').allTextContents(), [
        'Dunlin',
        'Bittern',
        'Avocet',
        'Crane',
        'Egret',
      ]);
      assert.deepEqual(await table.getByRole('rowheader').first().locator('li').allTextContents(), [
        'Open pain: lower-back 6/10, noted on February 23',
        'Open pain: left-wrist, noted on February 23',
        'The day of Hands to heels has passed: February 20',
      ]);
      const shapes = await table
        .locator('tbody tr')
        .evaluateAll((rows) => rows.map((row) => row.querySelector('.reasons svg')?.innerHTML));
      assert.equal(new Set(shapes).size, 5, 'no two states are drawn alike');
      assert.ok((await open.text()).includes('4 of 5 may need a word, and come first.'));
    }));

  it('shows each athlete’s week, findings, pain, next date and goals in words', () =>
    withPage({ width: 1300 }, shown, async (open) => {
      const cells = (row: number) =>
        open.page.locator('tbody tr').nth(row).getByRole('cell').locator('> div').allTextContents();
      assert.deepEqual(await cells(0), [
        '2 days ago',
        'no sessions',
        'none',
        'no',
        'left-wristlower-back 6/10',
        'none',
        'Hands to heels',
      ]);
      const [last, week, findings, slipping, pain, next] = await cells(3);
      assert.deepEqual(
        [last, week, slipping, pain, next],
        ['yesterday', '1 of 3 done', 'no', 'none', 'spring show: March 14, in 17 days'],
      );
      assert.match(findings ?? '', /^1 warning\d for information$/);
      assert.match((await cells(1))[3] ?? '', /^0 of 9, usually \d+ %$/);
    }));

  it('opens the note, the finding or the goal with a click or Enter', () =>
    withPage({ width: 1300 }, shown, async (open) => {
      const { page } = open;
      const dunlin = page.locator('tbody tr').first();
      await dunlin.getByRole('button', { name: 'lower-back 6/10', exact: true }).click();
      assert.deepEqual(await lastMessage(open), {
        type: 'openIn',
        journal: 'file:///roster/Dunlin',
        place: { note: '2026-02-23.md', range: { start: 2, end: 23 } },
      });
      await dunlin.getByRole('button', { name: 'Hands to heels', exact: true }).focus();
      await page.keyboard.press('Enter');
      assert.deepEqual(await lastMessage(open), {
        type: 'goal',
        journal: 'file:///roster/Dunlin',
        goal: 'bridge',
      });
      await page.getByRole('button', { name: '1 warning', exact: true }).click();
      const warning = await lastMessage(open);
      assert.equal(warning?.type === 'openIn' && warning.place.note, '2026-02-24.md');
      await page.getByRole('button', { name: 'Avocet', exact: true }).click();
      const empty = await lastMessage(open);
      assert.equal(empty?.type === 'openIn' && empty.place.note, 'journal.md');
    }));

  it('is walked through with arrow keys, past cells in which nothing opens', () =>
    withPage({ width: 1300 }, shown, async (open) => {
      const { page } = open;
      await page.getByRole('button', { name: 'Dunlin', exact: true }).focus();
      await page.keyboard.press('ArrowDown');
      assert.equal(await focusedKey(open), 'file:///roster/Bittern/name');
      await page.keyboard.press('End');
      assert.equal(await focusedKey(open), 'file:///roster/Egret/name');
      await page.keyboard.press('Home');
      await page.keyboard.press('Tab');
      assert.equal(await focusedKey(open), 'file:///roster/Dunlin/why/0');
      await page.getByRole('button', { name: '2 days ago' }).focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('ArrowDown');
      assert.equal(await focusedKey(open), 'file:///roster/Crane/last', 'nothing was ever logged by Avocet');
    }));

  it('keeps the keyboard on the athlete when the order changes', () =>
    withPage({ width: 1300 }, shown, async (open) => {
      await open.page.getByRole('button', { name: 'Egret', exact: true }).focus();
      await open.send({
        type: 'data',
        data: dataOf({ ...coached, Egret: { '2026-02-24.md': '- #pain hips 9/10\n' } }),
      });
      assert.equal(await open.page.locator('.name').first().textContent(), 'Egret');
      assert.equal(await focusedKey(open), 'file:///roster/Egret/name');
      assert.deepEqual(await open.state<RosterPageState>(), { scroll: 0 });
    }));

  it('can be read at 360 pixels: a table still, each value behind the name of its column', () =>
    withPage({ width: 360, theme: 'dark' }, shown, async (open) => {
      const width = await open.page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= 360, `${width}`);
      assert.equal(await open.page.getByRole('cell').count(), 7 * shown.rows.length, 'still a table');
      assert.equal(await open.page.getByRole('columnheader').count(), 8);
      assert.ok(await open.page.locator('td .head', { hasText: 'This week' }).first().isVisible());
      await open.page.screenshot({ path: join(pictures, 'roster-page-360.png'), fullPage: true });
      assert.deepEqual(await accessibilityFaults(open), []);
    }));

  it('says so when there is no athlete', () =>
    withPage({}, dataOf({}), async (open) => {
      assert.ok((await open.text()).includes('There is no training journal in this workspace yet.'));
      assert.deepEqual(await accessibilityFaults(open), []);
    }));

  for (const theme of Object.keys(themes) as ThemeName[]) {
    it(`breaks no rule of accessibility in a ${theme} theme`, () =>
      withPage({ theme, width: 1300 }, shown, async (open) => {
        await open.page.screenshot({ path: join(pictures, `roster-page-${theme}.png`), fullPage: true });
        assert.deepEqual(await accessibilityFaults(open), []);
      }));
  }
});
