import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../../../scripts/browser.mjs';
import { goalPageData } from '../../../src/editor/goal-page/page-data';
import { wordsOf } from '../../../src/editor/words';
import { JournalIndex } from '../../../src/journal/journal-index';
import { openNote } from '../../../src/journal/open-note';
import type { IsoDate } from '../../../src/notation/time/iso-date';
import type { GoalPageData, GoalPageState } from '../../../src/pages/goal-page-data';
import { fillMessage } from '../../../src/training/finding';
import { accessibilityFaults } from './accessibility';
import { type Look, lookAtPage } from './look-at-page';
import { bundlePage, type PageInBrowser } from './page-in-browser';
import { type ThemeName, themes } from './themes';

const secret = 'I stopped choosing songs around a leg';

const notes: Readonly<Record<string, string>> = {
  'goals.md': `# Low split
- #goal low-split by:2026-06-14 from:2025-12-29 "Front split, hips < 3 cm & flat"
- #why ${secret}
- #metric gap from:16cm to:4cm noise:0.8cm
- [x] #step two-blocks by:2026-01-25 metric:gap to:13cm
- [ ] #step one-block by:2026-04-12 metric:gap to:8cm
- [ ] #step book-away by:2026-02-20
- #need flexibility 2/week 75min

# Shoulders
- #goal shoulders by:2026-03-20 "Arms behind the ears"
- #metric opening from:150deg to:175deg sides

# Bridge
- #goal bridge

# Handstand
- #goal handstand by:2026-05-31
- #metric hold from:8s to:30s
`,
  '2026-01-06.md': `- [x] #session flexibility 18:30 75min for:low-split
#measure low-split gap 15cm
#measure low-split gap 16cm
#measure shoulders opening 152deg side:left warm
#measure shoulders opening 158deg side:right warm
`,
  '2026-01-08.md': '- [x] #session flexibility 18:30 75min for:low-split\n',
  '2026-01-20.md': `- [x] #session flexibility 18:30 75min for:low-split
#measure low-split gap 13,5cm
#measure shoulders opening 155deg side:left warm
#measure shoulders opening 163deg side:right cold
`,
  '2026-02-10.md': `#measure low-split gap 110mm
#measure shoulders opening 160deg side:left warm
#measure shoulders opening 165deg side:right warm
`,
  '2026-02-24.md': '#measure low-split gap 9.5cm\n- [ ] #session flexibility 18:30 for:low-split\n',
};

/** Seven days measured in a row of weeks. */
const notesInARow: Readonly<Record<string, string>> = {
  'goals.md': notes['goals.md'] ?? '',
  ...Object.fromEntries(
    ['15cm', '14.6cm', '13.8cm', '13.5cm', '12.4cm', '12.1cm', '11.2cm'].map((value, index) => [
      `2026-01-${String(5 + 3 * index).padStart(2, '0')}.md`,
      `- [x] #session flexibility 18:30 75min 7/10 for:low-split\n#measure low-split gap ${value}\n`,
    ]),
  ),
};

function dataOf(texts: Readonly<Record<string, string>>, chosen: string, language = 'en'): GoalPageData {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(texts)) journal.replace(openNote(path, text));
  const open = { id: 'file:///journal', title: 'Wren', journal, today: () => '2026-02-26' as IsoDate };
  return goalPageData(open, chosen, wordsOf(language, fillMessage), language);
}

const all = dataOf(notes, '');
const lowSplit = dataOf(notes, 'low-split');
const pictures = join(process.cwd(), 'out/pages');

/** How many pixels of the `index`th canvas have the colour, and where a whole disc of it lies, in CSS pixels. */
async function coloured(open: PageInBrowser, index: number, colour: readonly [number, number, number]) {
  return open.page.evaluate(
    ({ wanted, at }) => {
      const canvas = document.querySelectorAll('canvas')[at];
      const context = canvas?.getContext('2d');
      if (!canvas || !context) return { count: 0, discs: [] as { x: number; y: number }[] };
      const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height);
      const is = (x: number, y: number): boolean =>
        [0, 1, 2].every(
          (part) => Math.abs((data[(y * width + x) * 4 + part] ?? -9) - (wanted[part] ?? 0)) < 3,
        ) && (data[(y * width + x) * 4 + 3] ?? 0) > 250;
      let count = 0;
      const discs: { x: number; y: number }[] = [];
      for (let y = 3; y < height - 3; y += 1) {
        for (let x = 3; x < width - 3; x += 1) {
          if (!is(x, y)) continue;
          count += 1;
          const isDisc = [-2, 0, 2].every((dy) => [-2, 0, 2].every((dx) => is(x + dx, y + dy)));
          if (isDisc && !discs.some((disc) => Math.hypot(disc.x - x, disc.y - y) < 12)) discs.push({ x, y });
        }
      }
      const scale = canvas.clientWidth / canvas.width;
      return { count, discs: discs.map(({ x, y }) => ({ x: x * scale, y: y * scale })) };
    },
    { wanted: [...colour], at: index },
  );
}

const blueOfLight = [0x1a, 0x85, 0xff] as const;
const blueOfDark = [0x37, 0x94, 0xff] as const;
const purpleOfLight = [0x65, 0x2d, 0x90] as const;

describe('the goal page in a browser', function () {
  this.timeout(60_000);
  let browser: Browser;
  let script: string;

  const withPage = (
    look: Look<GoalPageState>,
    data: GoalPageData,
    check: (open: PageInBrowser) => Promise<void>,
  ): Promise<void> => lookAtPage({ browser, script }, look, { type: 'data', data }, check);

  before(async () => {
    [browser, script] = await Promise.all([launchBrowser(), bundlePage()]);
    mkdirSync(pictures, { recursive: true });
  });

  after(async () => {
    await browser?.close();
  });

  it('says that it listens', () =>
    withPage({}, all, async (open) => {
      assert.deepEqual((await open.messages())[0], { type: 'ready' });
    }));

  it('draws a chart for each metric with readings, with its points', () =>
    withPage({}, all, async (open) => {
      assert.equal(await open.page.locator('canvas').count(), 2);
      // The goal that is nearest comes first: three days on the left. The other has four.
      assert.equal((await coloured(open, 0, blueOfLight)).discs.length, 3);
      assert.equal((await coloured(open, 1, blueOfLight)).discs.length, 4);
    }));

  it('draws both sides, each in its colour', () =>
    withPage({}, dataOf(notes, 'shoulders'), async (open) => {
      assert.equal((await coloured(open, 0, blueOfLight)).discs.length, 3);
      assert.ok((await coloured(open, 0, purpleOfLight)).count > 60);
    }));

  it('does not join readings of another state with the others', () =>
    withPage({}, dataOf(notes, 'shoulders'), async (open) => {
      // On the right, warm: 6 January and 10 February; the cold reading between them is a cross of its own.
      assert.ok((await coloured(open, 0, purpleOfLight)).count > 60);
      assert.ok((await open.page.locator('.legend').allInnerTexts()).join().includes('measured cold'));
      assert.ok((await open.text()).includes('Right: 165°, warm, on Tuesday, February 10; 10° to go.'));
    }));

  it('says in sentences what the latest reading is and what is left', () =>
    withPage({}, lowSplit, async (open) => {
      const text = await open.text();
      for (const sentence of [
        'By Sunday, June 14: 108 days are left.',
        '3 sessions are done.',
        'From 16 cm to 4 cm.',
        'Not enough notes yet for a date: 4 of 5 days measured.',
        'The date asks for -0.34 cm a week from today; the readings do not show a pace yet.',
        'a change below 2.22 cm can be measuring noise alone (typical error 0.8 cm, as written beside the metric)',
        'Latest: 9.5 cm on Tuesday, February 24; 5.5 cm to go.',
      ]) {
        assert.ok(text.includes(sentence), sentence);
      }
    }));

  it('has every reading in a table, the newest first, in the metric’s unit', () =>
    withPage({}, lowSplit, async (open) => {
      const rows = await open.page.locator('table').nth(1).locator('tbody tr').allInnerTexts();
      assert.deepEqual(
        rows.map((row) => row.split(/\s*\t\s*/)),
        [
          ['February 24', '9.5 cm'],
          ['February 10', '11 cm'],
          ['January 20', '13.5 cm'],
          ['January 6', '15 cm'],
          ['January 6', '16 cm'],
        ],
      );
    }));

  it('has side and state in the table where they were written', () =>
    withPage({}, dataOf(notes, 'shoulders'), async (open) => {
      const table = open.page.locator('table').nth(1);
      assert.deepEqual(await table.locator('thead th').allInnerTexts(), ['Day', 'Value', 'Side', 'Measured']);
      const rows = await table.locator('tbody tr').allInnerTexts();
      assert.deepEqual(rows[2]?.split(/\s*\t\s*/), ['January 20', '155°', 'Left', 'warm']);
    }));

  it('has the figures of every series in a table, as they are in its data', () =>
    withPage({}, dataOf(notes, 'shoulders'), async (open) => {
      const figures = dataOf(notes, 'shoulders').goals[0]?.metrics[0]?.figures;
      assert.ok(figures);
      const table = open.page.locator('table').first();
      const warm = figures.columns.map(({ of }) => of.condition === 'warm');
      const only = (cells: readonly string[]) => cells.filter((_, index) => warm[index]);
      assert.deepEqual(await table.locator('thead th').allInnerTexts(), [
        'Figure',
        ...only(figures.columns.map(({ label }) => label)),
      ]);
      const rows = await table.locator('tbody tr').allInnerTexts();
      assert.deepEqual(
        rows.map((row) => row.replace(/\s+/g, ' ')),
        figures.rows.map(({ name, cells }) => [name, ...only(cells)].join(' ').replace(/\s+/g, ' ')),
      );
    }));

  it('shows one side when it is chosen, in chart and tables, and keeps the choice', () =>
    withPage({}, dataOf(notes, 'shoulders'), async (open) => {
      await open.page.getByLabel('Side').selectOption({ label: 'Right' });
      await open.drawn();
      assert.equal((await coloured(open, 0, blueOfLight)).count, 0);
      assert.ok((await coloured(open, 0, purpleOfLight)).count > 60);
      const heads = await open.page.locator('table').first().locator('thead th').allInnerTexts();
      assert.deepEqual(heads, ['Figure', 'Right, warm']);
      const sides = await open.page
        .locator('table')
        .nth(1)
        .locator('tbody tr td:nth-child(3)')
        .allInnerTexts();
      assert.deepEqual(sides, ['Right', 'Right', 'Right']);
      assert.deepEqual((await open.state())?.filters, {
        'shoulders/opening': { side: 'right', condition: 'warm' },
      });
    }));

  it('shows the other state when it is chosen, and the first beside it as crosses', () =>
    withPage({}, dataOf(notes, 'shoulders'), async (open) => {
      await open.page.getByLabel('Measured').selectOption({ label: 'cold' });
      await open.drawn();
      assert.equal((await coloured(open, 0, purpleOfLight)).discs.length, 1);
      assert.ok((await open.page.locator('.legend').allInnerTexts()).join().includes('measured warm'));
    }));

  it('draws the line of enough readings, its band, and where it leads', () =>
    withPage({}, dataOf(notesInARow, 'low-split'), async (open) => {
      const text = await open.text();
      assert.ok(text.includes('At this pace the target is reached between'), text);
      for (const words of ['line through the readings', 'where the line may run', 'where it leads']) {
        assert.ok(text.includes(words), words);
      }
      // The canvas is clear, so bands are pixels that let some of the page through.
      const translucent = await open.page.evaluate(() => {
        const canvas = document.querySelector('canvas');
        const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
        return Array.from(data).filter((value, index) => index % 4 === 3 && value > 10 && value < 80).length;
      });
      assert.ok(translucent > 2000, `${translucent} pixels of bands`);
      await open.page.screenshot({ path: join(pictures, 'goal-page-trend.png'), fullPage: true });
    }));

  it('asks for the guide to its figures', () =>
    withPage({}, lowSplit, async (open) => {
      await open.page.getByRole('button', { name: 'What these figures mean' }).click();
      assert.deepEqual((await open.messages()).at(-1), { type: 'guide' });
    }));

  it('opens the note of a reading from its row, with the keyboard', () =>
    withPage({}, lowSplit, async (open) => {
      const row = open.page.getByRole('button', { name: 'February 10' });
      await row.focus();
      await open.page.keyboard.press('Enter');
      const text = notes['2026-02-10.md'] ?? '';
      const line = '#measure low-split gap 110mm';
      const start = text.indexOf(line);
      assert.deepEqual((await open.messages()).at(-1), {
        type: 'open',
        place: { note: '2026-02-10.md', range: { start, end: start + line.length } },
      });
    }));

  it('opens the note of a reading from its point', () =>
    withPage({}, lowSplit, async (open) => {
      const { discs } = await coloured(open, 0, blueOfLight);
      const last = [...discs].sort((one, other) => one.x - other.x).at(-1);
      assert.ok(last);
      await open.page.locator('canvas').first().click({ position: last });
      const message = await open.asked('open');
      assert.equal(message.type === 'open' && message.place.note, '2026-02-24.md');
    }));

  it('shows the private reason only when it is asked for, and keeps it nowhere', () =>
    withPage({}, lowSplit, async (open) => {
      assert.equal(JSON.stringify(lowSplit).includes(secret), false);
      const why = open.page.getByRole('button', { name: 'Show why' });
      await why.click();
      assert.deepEqual((await open.messages()).at(-1), { type: 'why', goal: 'low-split' });
      await open.send({ type: 'why', goal: 'low-split', words: [secret] });
      assert.ok((await open.text()).includes(secret));
      assert.equal(JSON.stringify(await open.state()).includes(secret), false);
      await open.page.getByRole('button', { name: 'Hide why' }).click();
      await open.drawn();
      assert.equal((await open.text()).includes(secret), false);
    }));

  it('asks for another goal when one is chosen', () =>
    withPage({}, all, async (open) => {
      await open.page.getByLabel('Goal').selectOption({ label: 'Arms behind the ears' });
      assert.deepEqual((await open.messages()).at(-1), { type: 'choose', goal: 'shoulders' });
    }));

  it('takes what is written in notes as words, never as markup', () =>
    withPage({}, lowSplit, async (open) => {
      assert.equal(await open.page.locator('h2').textContent(), 'Front split, hips < 3 cm & flat');
    }));

  it('says what is missing where there is nothing to draw', () =>
    withPage({}, all, async (open) => {
      const text = await open.text();
      assert.ok(text.includes('Nothing to measure yet.'));
      assert.ok(text.includes('No readings yet. Write one in the note of a day: #measure handstand hold 8s'));
    }));

  it('says that one day is not enough to see a change', () =>
    withPage(
      {},
      dataOf(
        { 'goals.md': notes['goals.md'] ?? '', '2026-02-20.md': '#measure handstand 9s\n' },
        'handstand',
      ),
      async (open) => {
        assert.ok((await open.text()).includes('Not enough readings yet'));
        assert.equal((await coloured(open, 0, blueOfLight)).discs.length, 1);
      },
    ));

  it('says how to begin in a journal without goals', () =>
    withPage({}, dataOf({}, ''), async (open) => {
      assert.ok((await open.text()).includes('There is no goal in this journal yet.'));
      assert.deepEqual(await accessibilityFaults(open), []);
    }));

  it('draws again when a note has changed, and leaves the keyboard where it was', () =>
    withPage({}, lowSplit, async (open) => {
      await open.page.getByRole('button', { name: 'Copy as Markdown table' }).focus();
      const more = dataOf({ ...notes, '2026-02-25.md': '#measure low-split gap 9cm\n' }, 'low-split');
      await open.send({ type: 'data', data: more });
      assert.equal((await coloured(open, 0, blueOfLight)).discs.length >= 4, true);
      assert.ok((await open.text()).includes('Latest: 9 cm'));
      assert.equal(
        await open.page.evaluate(() => document.activeElement?.textContent),
        'Copy as Markdown table',
      );
    }));

  it('draws in the colours of a theme that is put on later', () =>
    withPage({}, lowSplit, async (open) => {
      assert.equal((await coloured(open, 0, blueOfDark)).count, 0);
      await open.useTheme('dark');
      assert.equal((await coloured(open, 0, blueOfDark)).discs.length, 4);
      assert.equal((await coloured(open, 0, blueOfLight)).count, 0);
    }));

  it('keeps which goal it shows, and which tables are closed, over a reload', async () => {
    let kept: GoalPageState | undefined;
    await withPage({}, lowSplit, async (open) => {
      await open.page.getByText('Readings of gap (5)').first().click();
      await open.drawn();
      kept = await open.state();
      assert.equal(kept?.goal, 'low-split');
      assert.equal(kept?.journal, 'file:///journal');
    });
    assert.ok(kept);
    await withPage({ state: kept }, lowSplit, async (open) => {
      assert.deepEqual(
        await open.page
          .locator('details')
          .evaluateAll((found) => found.map((one) => (one as HTMLDetailsElement).open)),
        [true, false, true],
      );
    });
  });

  it('can be read at 360 pixels', () =>
    withPage({ width: 360, theme: 'dark' }, all, async (open) => {
      const width = await open.page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= 360, `${width}`);
      await open.page.screenshot({ path: join(pictures, 'goal-page-360.png'), fullPage: true });
    }));

  for (const theme of Object.keys(themes) as ThemeName[]) {
    it(`breaks no rule of accessibility in a ${theme} theme`, () =>
      withPage({ theme }, all, async (open) => {
        await open.page.screenshot({ path: join(pictures, `goal-page-${theme}.png`), fullPage: true });
        assert.deepEqual(await accessibilityFaults(open), []);
        await open.send({ type: 'data', data: lowSplit });
        await open.send({ type: 'why', goal: 'low-split', words: [secret] });
        assert.deepEqual(await accessibilityFaults(open), []);
      }));
  }
});
