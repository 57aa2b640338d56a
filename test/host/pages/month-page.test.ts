import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../../../scripts/browser.mjs';
import { monthPageData } from '../../../src/editor/month-page/page-data';
import { monthSheet } from '../../../src/editor/month-sheet/month-sheet';
import { wordsOf } from '../../../src/editor/words';
import { JournalIndex } from '../../../src/journal/journal-index';
import { openNote } from '../../../src/journal/open-note';
import { dayNumber, type IsoDate, isoDate } from '../../../src/notation/time/iso-date';
import type { IsoMonth } from '../../../src/notation/time/iso-month';
import type { MonthPageData, MonthPageState } from '../../../src/pages/month-page-data';
import { fillMessage } from '../../../src/training/finding';
import { accessibilityFaults } from './accessibility';
import { type Look, lookAtPage } from './look-at-page';
import { bundlePage, type PageInBrowser } from './page-in-browser';
import { type ThemeName, themes } from './themes';

/** A busy month: four sessions on most days, every state, a trip and a show. */
function journalNotes(sessionsADay: number): Readonly<Record<string, string>> {
  const notes: Record<string, string> = {
    'plan.md': '- #busy 2026-05-05..2026-05-06\n- #event 2026-05-30 "open floor"\n',
  };
  const kinds = [
    'flexibility 07:30',
    'strength 12:00',
    'skill 18:30',
    'conditioning 20:00',
    'recovery 21:30',
  ];
  const first = dayNumber('2026-05-01' as IsoDate);
  const states = ['[x]', '[x]', '[x]', '[ ]', '[x]'];
  const reasons = ['skipped:travel', 'skipped:tired', 'moved:2026-05-29', ''];
  for (let offset = 0; offset < 28; offset += 1) {
    if (offset % 7 === 6) continue;
    const lines = kinds.slice(0, sessionsADay).map((kind, index) => {
      const state = offset > 20 ? '[ ]' : (states[(offset + index) % 5] ?? '[x]');
      const reason = offset <= 20 && state === '[ ]' ? reasons[(offset + index) % 4] : '';
      return `- ${state} #session ${kind} 60min ${reason}\n`;
    });
    notes[`${isoDate(first + offset)}.md`] = lines.join('');
  }
  return notes;
}

function opened(notes: Readonly<Record<string, string>>) {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openNote(path, text));
  return {
    id: 'file:///journal',
    title: 'Wren',
    journal,
    today: () => '2026-05-21' as IsoDate,
    zone: () => 'UTC',
  };
}

const words = wordsOf('en', fillMessage);
const dataOf = (notes: Readonly<Record<string, string>>): MonthPageData =>
  monthPageData(opened(notes), undefined, words, 'en');
const shown = dataOf(journalNotes(2));
const pictures = join(process.cwd(), 'out/pages');

describe('the page of a month in a browser', function () {
  this.timeout(60_000);
  let browser: Browser;
  let script: string;

  const withPage = (
    look: Look<MonthPageState>,
    data: MonthPageData,
    check: (open: PageInBrowser) => Promise<void>,
  ): Promise<void> => lookAtPage({ browser, script }, look, { type: 'data', data }, check);

  const focusedKey = (open: PageInBrowser) =>
    open.page.evaluate(() => document.activeElement?.getAttribute('data-key'));

  before(async () => {
    [browser, script] = await Promise.all([launchBrowser(), bundlePage('month-page')]);
    mkdirSync(pictures, { recursive: true });
  });

  after(async () => {
    await browser?.close();
  });

  it('is a grid of weeks and days, each session with a shape and words', () =>
    withPage({}, shown, async (open) => {
      assert.deepEqual((await open.messages())[0], { type: 'ready' });
      const grid = open.page.getByRole('grid', { name: 'May 2026' });
      assert.equal(await grid.getByRole('columnheader').count(), 8);
      assert.equal(await grid.getByRole('row').count(), 1 + shown.weeks.length);
      const sessions = shown.weeks.flatMap(({ days }) => days.flatMap((day) => day.sessions));
      const buttons = grid.locator('button.session');
      assert.deepEqual(
        await buttons.allTextContents(),
        sessions.map(({ kind, state }) => `${kind} ${state}`),
      );
      // No two states are drawn alike, whatever their colours.
      const shapes = await open.page
        .locator('.legend svg')
        .evaluateAll((all) => all.map((one) => one.innerHTML));
      assert.equal(new Set(shapes).size, 6);
    }));

  it('opens the note of a session, and of a day, with a click or Enter', () =>
    withPage({}, shown, async (open) => {
      await open.page.locator('td[data-date="2026-05-04"] button.session').first().click();
      const clicked = (await open.messages()).at(-1);
      assert.equal(clicked?.type === 'open' && clicked.place.note, '2026-05-04.md');
      await open.page.getByRole('button', { name: 'Wednesday, May 20' }).focus();
      await open.page.keyboard.press('Enter');
      const entered = (await open.messages()).at(-1);
      assert.equal(entered?.type === 'open' && entered.place.note, '2026-05-20.md');
    }));

  it('is walked through with arrow keys; the tab key leads to the sessions of the day', () =>
    withPage({}, shown, async (open) => {
      const { page } = open;
      await page.getByRole('button', { name: 'Thursday, May 21, today' }).focus();
      await page.keyboard.press('ArrowUp');
      assert.equal(await focusedKey(open), 'day/2026-05-14');
      await page.keyboard.press('ArrowRight');
      assert.equal(await focusedKey(open), 'day/2026-05-15');
      await page.keyboard.press('Home');
      assert.equal(await focusedKey(open), 'day/2026-05-11');
      await page.keyboard.press('Tab');
      assert.equal(await focusedKey(open), '2026-05-11/0');
      await page.keyboard.press('End');
      assert.equal(await focusedKey(open), 'day/2026-05-17');
    }));

  it('turns to another month at its edge, and has the keyboard there', () =>
    withPage({}, shown, async (open) => {
      const { page } = open;
      await page.getByRole('button', { name: 'Thursday, May 21, today' }).focus();
      await page.keyboard.press('PageDown');
      assert.deepEqual((await open.messages()).at(-1), { type: 'month', month: '2026-06' });
      await open.send({
        type: 'data',
        data: monthPageData(opened(journalNotes(2)), '2026-06' as IsoMonth, words, 'en'),
      });
      assert.equal(await focusedKey(open), 'day/2026-06-21');
      const state = await open.state<MonthPageState>();
      assert.deepEqual([state?.month, state?.day], ['2026-06', '2026-06-21']);
      await page.getByRole('button', { name: 'This month' }).click();
      assert.deepEqual((await open.messages()).at(-1), { type: 'month' });
    }));

  it('asks for the sheet to print', () =>
    withPage({}, shown, async (open) => {
      await open.page.getByRole('button', { name: 'Print' }).click();
      assert.deepEqual((await open.messages()).at(-1), { type: 'print' });
    }));

  it('can be read and walked through at 360 pixels', () =>
    withPage({ width: 360, theme: 'dark' }, shown, async (open) => {
      const width = await open.page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= 360, `${width}`);
      await open.page.getByRole('button', { name: 'Thursday, May 21, today' }).focus();
      await open.page.keyboard.press('ArrowDown');
      assert.equal(await focusedKey(open), 'day/2026-05-22');
      assert.equal(await open.page.getByRole('gridcell').count(), 8 * shown.weeks.length, 'still a grid');
      await open.page.screenshot({ path: join(pictures, 'month-page-360.png'), fullPage: true });
      assert.deepEqual(await accessibilityFaults(open), []);
    }));

  it('is empty and still whole in an empty journal', () =>
    withPage({}, dataOf({}), async (open) => {
      assert.ok((await open.text()).includes('No planned session of this month lies in the past.'));
      assert.deepEqual(await accessibilityFaults(open), []);
    }));

  for (const theme of Object.keys(themes) as ThemeName[]) {
    it(`breaks no rule of accessibility in a ${theme} theme`, () =>
      withPage({ theme }, shown, async (open) => {
        await open.page.screenshot({ path: join(pictures, `month-page-${theme}.png`), fullPage: true });
        assert.deepEqual(await accessibilityFaults(open), []);
      }));
  }

  for (const paper of ['a4', 'letter'] as const) {
    for (const sessionsADay of [0, 2, 5]) {
      it(`is printed on one page of ${paper}, with ${sessionsADay} sessions a day`, async () => {
        const html = monthSheet(opened(journalNotes(sessionsADay)), {
          month: '2026-05' as IsoMonth,
          weekStart: 1,
          paper,
          extras: new Set(['name', 'reasons', 'events']),
          language: 'en',
          words,
        });
        const page = await browser.newPage();
        const requests: string[] = [];
        page.on('request', (request) => requests.push(request.url()));
        try {
          await page.setContent(html);
          const pdf = await page.pdf({
            path: join(pictures, `month-${paper}-${sessionsADay}.pdf`),
            preferCSSPageSize: true,
            printBackground: true,
          });
          const text = pdf.toString('latin1');
          assert.equal(text.match(/\/Type\s*\/Page\b(?!s)/g)?.length, 1, 'one page');
          const box = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(text)?.slice(1).map(Number) ?? [];
          // In points: A4 is 297 x 210 mm (ISO 216), Letter 11 x 8.5 in.
          const [width, height] = paper === 'a4' ? [841.9, 595.3] : [792, 612];
          assert.ok(
            Math.abs((box[0] ?? 0) - width) < 1.5 && Math.abs((box[1] ?? 0) - height) < 1.5,
            `${box}`,
          );
          assert.deepEqual(requests, []);
          await page.setViewportSize(
            paper === 'a4' ? { width: 1123, height: 794 } : { width: 1056, height: 816 },
          );
          await page.screenshot({ path: join(pictures, `month-${paper}-${sessionsADay}.png`) });
        } finally {
          await page.close();
        }
      });
    }
  }
});
