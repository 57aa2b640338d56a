// What `npm run screenshots` takes pictures of. A scene starts from an editor with nothing open.
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** @typedef {import('./live-editor.mjs').LiveEditor} LiveEditor */

/**
 * @typedef {object} Scene
 * @property {string} name the picture's file is named `NAME-THEME.png`
 * @property {'athlete' | 'coach' | 'empty'} sample which sample journal is open; `empty` is a folder with nothing in it
 * @property {boolean} [forReview] taken only when it is asked for: to be looked at, not to be shown
 * @property {number} [width] of the window, where it matters
 * @property {number} [height]
 * @property {(editor: LiveEditor, today: string) => Promise<void>} steps what is done before the picture is taken;
 *   `today` is `YYYY-MM-DD`
 */

/** Time for the last movement on the screen to end. @param {LiveEditor} editor */
const settle = async (editor) => {
  // Away from everything that says its name when the mouse rests on it.
  await editor.page.mouse.move(2, 2);
  await editor.page.waitForTimeout(1200);
};

/** Opens the views and today's note, and waits for what is found in it. @param {LiveEditor} editor @param {string} today */
async function openDay(editor, today) {
  await editor.openViewContainer('Training Journal');
  await editor.waitForStatus('this week');
  await editor.treeRow('done 8/10').waitFor();
  await editor.openFile(`${today}.md`);
  await editor.waitForSquiggle('warning');
}

/** Opens today's note in a window too narrow for the side bar. @param {LiveEditor} editor @param {string} today */
async function openDayAlone(editor, today) {
  await editor.openFile(`${today}.md`);
  await editor.waitForSquiggle('warning');
  await editor.press('Control+b');
}

/** Runs a command that opens a page, and gives its frame. @param {LiveEditor} editor @param {string} command */
async function openPage(editor, command) {
  await editor.runCommand(command);
  return editor.webviewFrame();
}

/** Runs a command that shows a list, and waits for its rows. @param {LiveEditor} editor @param {string} command */
async function openList(editor, command) {
  await editor.runCommand(command);
  await editor.page.locator('.quick-input-list .monaco-list-row').first().waitFor();
  await settle(editor);
}

/** @type {readonly Scene[]} */
export const scenes = [
  {
    name: 'day-note',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(3, 14);
      await editor.hoverText();
      await editor.page.locator('.monaco-hover', { hasText: 'Quick Fix' }).first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'quick-fixes',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(3, 14);
      await editor.quickFixes();
      await settle(editor);
    },
  },
  {
    name: 'completion',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(9);
      await editor.type('#measure ');
      await editor.suggestions();
      await settle(editor);
    },
  },
  {
    name: 'goal-page',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      const frame = await openPage(editor, 'Training: Open the Goal Page');
      await frame.locator('select').first().selectOption({ label: 'Front split low enough for the act' });
      await frame.locator('canvas').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'load-page',
    sample: 'athlete',
    height: 1000,
    steps: async (editor, today) => {
      await openDay(editor, today);
      const frame = await openPage(editor, 'Training: Open Load and Recovery');
      await frame.locator('canvas').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'week-review',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.runCommand('Training: Write Only the Week’s Facts');
      await editor.page.locator('.tab.active[data-resource-name*="-W"]').waitFor();
      await settle(editor);
    },
  },
  {
    name: 'month',
    sample: 'athlete',
    height: 1000,
    steps: async (editor, today) => {
      await openDay(editor, today);
      const frame = await openPage(editor, 'Training: Open the Month');
      await frame.getByRole('grid').waitFor();
      await settle(editor);
    },
  },
  {
    name: 'next-week',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await openList(editor, 'Training: Write Next Week’s Notes');
    },
  },
  {
    name: 'impossible-week',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      const hours = join(editor.folder, 'hours.md');
      appendFileSync(hours, '\n- #busy 2026-03-03 18:00-20:00 -- the late shift\n');
      await openDay(editor, today);
      await openList(editor, 'Training: Write Next Week’s Notes');
    },
  },
  {
    name: 'next-week-narrow',
    sample: 'athlete',
    forReview: true,
    width: 400,
    steps: async (editor, today) => {
      await openDayAlone(editor, today);
      await openList(editor, 'Training: Write Next Week’s Notes');
    },
  },
  {
    name: 'missed-session',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      const monday = join(editor.folder, 'log', 'block-2', '2026-02-23.md');
      writeFileSync(monday, readFileSync(monday, 'utf8').replace('[x] #session', '[ ] #session'));
      await editor.openViewContainer('Training Journal');
      await editor.waitForStatus('this week');
      await editor.treeRow('overdue').hover();
      await editor.openFile(`${today}.md`);
      await editor.runCommand('Training: Rearrange the Rest of This Week');
      await editor.page.locator('.quick-input-list .monaco-list-row').first().waitFor();
      await editor.treeRow('overdue').hover();
      await editor.page.waitForTimeout(1200);
    },
  },
  {
    name: 'guide',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.runCommand('Training: Open the Guide');
      await (await editor.webviewFrame()).getByRole('heading').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'roster',
    sample: 'coach',
    steps: async (editor) => {
      await editor.openViewContainer('Training Journal');
      await editor.waitForStatus('this week');
      await editor.runCommand('Problems: Focus on Problems View');
      await settle(editor);
    },
  },
  {
    name: 'athletes',
    sample: 'coach',
    steps: async (editor) => {
      await editor.waitForStatus('this week');
      const page = await openPage(editor, 'Training: Open the Athletes');
      await page.locator('table.roster tbody tr').nth(2).waitFor();
      await settle(editor);
    },
  },
  {
    name: 'athletes-narrow',
    sample: 'coach',
    forReview: true,
    width: 400,
    height: 1000,
    steps: async (editor) => {
      const page = await openPage(editor, 'Training: Open the Athletes');
      await page.locator('table.roster tbody tr').nth(2).waitFor();
      await editor.press('Control+b');
      await settle(editor);
    },
  },
  {
    name: 'copy-weeks',
    sample: 'coach',
    forReview: true,
    steps: async (editor) => {
      await editor.openViewContainer('Training Journal');
      await editor.waitForStatus('this week');
      await editor.runCommand('Training: Copy Planned Weeks to Another Athlete');
      await editor.choose('Heron');
      await editor.choose('2026-W08');
      await editor.choose('2 weeks');
      await editor.choose('Swift');
      await editor.choose('2026-W10');
      await editor.page.locator('.quick-input-title', { hasText: 'From Heron to Swift' }).waitFor();
      await settle(editor);
    },
  },
  {
    name: 'add-to-journals',
    sample: 'coach',
    forReview: true,
    steps: async (editor) => {
      await editor.openViewContainer('Training Journal');
      await editor.waitForStatus('this week');
      await editor.runCommand('Training: Add a Routine or a Need to Several Journals');
      await editor.choose('need strength 2/week 60min 7/10 gap:48h routine:pull');
      await editor.page.locator('.quick-input-title', { hasText: 'Into whose journals?' }).waitFor();
      await settle(editor);
    },
  },
  {
    name: 'welcome',
    sample: 'empty',
    forReview: true,
    steps: async (editor) => {
      await editor.openViewContainer('Training Journal');
      await editor.page.locator('.welcome-view-content').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'starter',
    sample: 'empty',
    forReview: true,
    steps: async (editor) => {
      await editor.openViewContainer('Training Journal');
      await editor.page.getByRole('button', { name: 'Create a Starter Journal' }).click();
      await editor.page.locator('.tab.active[data-resource-name="goals.md"]').waitFor();
      await editor.waitForStatus('this week');
      await settle(editor);
    },
  },
  {
    name: 'views',
    sample: 'athlete',
    forReview: true,
    height: 1600,
    steps: async (editor, today) => {
      await openDay(editor, today);
      for (const goal of ['Shoulders', 'handstand']) {
        const row = editor.treeRow(new RegExp(goal, 'i'));
        if (await row.isVisible()) await row.click();
      }
      await settle(editor);
    },
  },
  {
    name: 'hover-goal',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(3, 50);
      await editor.hoverText();
      await settle(editor);
    },
  },
  {
    name: 'completion-tags',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(9);
      await editor.type('#');
      await editor.suggestions();
      await settle(editor);
    },
  },
  {
    name: 'problems',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.problems();
      await settle(editor);
    },
  },
  {
    name: 'finding-page',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(3, 14);
      await editor.followHoverLink('gap-too-short');
      await (await editor.webviewFrame()).getByRole('heading').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'goal-page-all',
    sample: 'athlete',
    forReview: true,
    height: 2400,
    steps: async (editor, today) => {
      await openDay(editor, today);
      const frame = await openPage(editor, 'Training: Open the Goal Page');
      await frame.locator('canvas').nth(2).waitFor();
      await settle(editor);
    },
  },
  {
    name: 'goal-page-narrow',
    sample: 'athlete',
    forReview: true,
    width: 400,
    steps: async (editor, today) => {
      await openDayAlone(editor, today);
      const frame = await openPage(editor, 'Training: Open the Goal Page');
      await frame.locator('canvas').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'month-narrow',
    sample: 'athlete',
    forReview: true,
    width: 400,
    steps: async (editor, today) => {
      await openDayAlone(editor, today);
      const frame = await openPage(editor, 'Training: Open the Month');
      await frame.getByRole('grid').waitFor();
      await settle(editor);
    },
  },
  {
    name: 'move-session',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.goTo(3, 14);
      await openList(editor, 'Training: Move the Session to Another Day');
    },
  },
  {
    name: 'notes',
    sample: 'athlete',
    forReview: true,
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.openFile('low-split.md');
      await settle(editor);
    },
  },
];
