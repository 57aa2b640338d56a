import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../../../scripts/browser.mjs';
import { loadPageData } from '../../../src/editor/load-page/page-data';
import { wordsOf } from '../../../src/editor/words';
import { JournalIndex } from '../../../src/journal/journal-index';
import { openNote } from '../../../src/journal/open-note';
import { dayNumber, type IsoDate, isoDate } from '../../../src/notation/time/iso-date';
import type { LoadPageData, LoadPageState } from '../../../src/pages/load-page-data';
import type { TableView } from '../../../src/pages/page-parts';
import { fillMessage } from '../../../src/training/finding';
import { accessibilityFaults } from './accessibility';
import { type Look, lookAtPage } from './look-at-page';
import { bundlePage, type PageInBrowser } from './page-in-browser';
import { type ThemeName, themes } from './themes';

/** Sixteen weeks of four kinds; the day after a hard evening it is sore. */
function journalNotes(): Readonly<Record<string, string>> {
  const first = dayNumber('2025-11-03' as IsoDate);
  const notes: Record<string, string> = {
    'journal.md': '- #routine split flexibility 60min regions:hamstrings\n- #rule flexibility gap:24h\n',
    'goals.md': '- #goal split from:2025-11-03 by:2026-06-14\n',
  };
  const write = (day: number, text: string): void => {
    notes[`${isoDate(day)}.md`] = text;
  };
  for (let week = 0; week < 16; week += 1) {
    const monday = first + 7 * week;
    write(monday, '- [x] #session flexibility 18:30 60min 7/10 routine:split\n');
    write(
      monday + 1,
      '- [x] #session flexibility 18:30 60min 7/10 routine:split\n- #sore hamstrings 5/10 <b>&\n',
    );
    write(
      monday + 3,
      week % 4 === 1
        ? '- [ ] #session strength 12:00 45min skipped:tired\n'
        : `- [x] #session strength 12:00 45min${week % 5 === 2 ? '' : ' 6/10'}\n`,
    );
    write(monday + 4, '- [x] #session flexibility 18:30 45min 6/10 routine:split\n');
    write(monday + 6, '- [x] #session recovery 30min 2/10\n- [x] #session hoop 12:00 60min 5/10\n');
  }
  return notes;
}

function dataOf(notes: Readonly<Record<string, string>>): LoadPageData {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openNote(path, text));
  const open = {
    id: 'file:///journal',
    title: 'Wren',
    journal,
    today: () => '2026-02-26' as IsoDate,
    zone: () => 'UTC',
  };
  return loadPageData(open, wordsOf('en', fillMessage), 'en');
}

const shown = dataOf(journalNotes());
const pictures = join(process.cwd(), 'out/pages');

/** How many pixels of each chart are drawn. */
async function drawnPixels(open: PageInBrowser): Promise<readonly number[]> {
  return open.page.evaluate(() =>
    Array.from(document.querySelectorAll<HTMLCanvasElement>('.chart canvas')).map((canvas) => {
      const data = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      return Array.from(data).filter((value, index) => index % 4 === 3 && value > 0).length;
    }),
  );
}

describe('the page about load and recovery in a browser', function () {
  this.timeout(60_000);
  let browser: Browser;
  let script: string;

  const withPage = (
    look: Look<LoadPageState>,
    data: LoadPageData,
    check: (open: PageInBrowser) => Promise<void>,
  ): Promise<void> => lookAtPage({ browser, script }, look, { type: 'data', data }, check);

  before(async () => {
    [browser, script] = await Promise.all([launchBrowser(), bundlePage('load-page')]);
    mkdirSync(pictures, { recursive: true });
  });

  after(async () => {
    await browser?.close();
  });

  it('says that it listens, and draws its three charts', () =>
    withPage({}, shown, async (open) => {
      assert.deepEqual((await open.messages())[0], { type: 'ready' });
      const pixels = await drawnPixels(open);
      assert.equal(pixels.length, 3);
      for (const count of pixels) assert.ok(count > 2000, `${count} pixels`);
    }));

  it('has every figure of its charts in tables, as they are in its data', () =>
    withPage({}, shown, async (open) => {
      const [subject] = shown.recovery.subjects;
      const tables: readonly TableView[] = [
        ...shown.load.tables,
        ...(subject?.evidence ? [subject.evidence] : []),
        ...shown.adherence.tables,
      ];
      const found = open.page.locator('table');
      assert.equal(await found.count(), tables.length);
      for (const [index, table] of tables.entries()) {
        const cells = await found
          .nth(index)
          .locator('tr')
          .evaluateAll((rows) => rows.map((row) => Array.from(row.children).map((cell) => cell.textContent)));
        assert.deepEqual(cells, [[...table.head], ...table.rows.map((row) => [...row.cells])]);
      }
    }));

  it('shows another kind or region when it is chosen, and keeps the choice', async () => {
    let kept: LoadPageState | undefined;
    await withPage({}, shown, async (open) => {
      await open.page.getByLabel('After sessions of').selectOption({ label: 'strength (kind)' });
      await open.drawn();
      assert.ok((await open.text()).includes('No gap can be told: not enough notes yet'));
      kept = await open.state<LoadPageState>();
      assert.equal(kept?.subject, 'kind/strength');
    });
    assert.ok(kept);
    await withPage({ state: kept }, shown, async (open) => {
      assert.equal(await open.page.getByLabel('After sessions of').inputValue(), 'kind/strength');
    });
  });

  it('opens the note behind a pair of sessions from its row, with the keyboard', () =>
    withPage({}, shown, async (open) => {
      const row = open.page.getByRole('button', { name: 'February 20' }).first();
      await row.focus();
      await open.page.keyboard.press('Enter');
      const message = (await open.messages()).at(-1);
      assert.equal(message?.type === 'open' && message.place.note, '2026-02-20.md');
    }));

  it('opens the note behind a pair from its point', () =>
    withPage({}, shown, async (open) => {
      const canvas = open.page.locator('.chart canvas').nth(1);
      const box = await canvas.boundingBox();
      assert.ok(box);
      // The topmost point of the sore ones, a day after the session before: found by looking for its colour.
      const at = await canvas.evaluate((element) => {
        const drawn = element as HTMLCanvasElement;
        const context = drawn.getContext('2d');
        if (!context) return undefined;
        const { data, width } = context.getImageData(0, 0, drawn.width, drawn.height);
        for (let index = 0; index < data.length; index += 4) {
          const [red = 0, green = 0, blue = 0, alpha = 0] = data.slice(index, index + 4);
          if (Math.abs(red - 0x65) + Math.abs(green - 0x2d) + Math.abs(blue - 0x90) < 6 && alpha > 250) {
            const scale = drawn.clientWidth / drawn.width;
            return { x: ((index / 4) % width) * scale, y: (Math.floor(index / 4 / width) + 2) * scale };
          }
        }
        return undefined;
      });
      assert.ok(at);
      await canvas.click({ position: at });
      const message = await open.asked('open');
      assert.match((message.type === 'open' && message.place.note) || '', /^20\d\d-\d\d-\d\d\.md$/);
    }));

  it('has the objections to the ratios one click away', () =>
    withPage({}, shown, async (open) => {
      const objection = open.page.getByText('So it describes a change of load');
      assert.equal(await objection.isVisible(), false);
      await open.page.getByText('What is published against such ratios').click();
      assert.equal(await objection.isVisible(), true);
    }));

  it('asks for the guide to its figures', () =>
    withPage({}, shown, async (open) => {
      await open.page.getByRole('button', { name: 'What these figures mean' }).click();
      assert.deepEqual((await open.messages()).at(-1), { type: 'guide' });
    }));

  it('says how to begin in an empty journal', () =>
    withPage({}, dataOf({}), async (open) => {
      assert.ok((await open.text()).includes('No session is done yet.'));
      assert.deepEqual(await accessibilityFaults(open), []);
    }));

  it('can be read at 360 pixels', () =>
    withPage({ width: 360, theme: 'dark' }, shown, async (open) => {
      const width = await open.page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= 360, `${width}`);
      await open.page.screenshot({ path: join(pictures, 'load-page-360.png'), fullPage: true });
    }));

  for (const theme of Object.keys(themes) as ThemeName[]) {
    it(`breaks no rule of accessibility in a ${theme} theme`, () =>
      withPage({ theme }, shown, async (open) => {
        await open.page.screenshot({ path: join(pictures, `load-page-${theme}.png`), fullPage: true });
        assert.deepEqual(await accessibilityFaults(open), []);
      }));
  }
});
