// What `npm run screenshots` takes pictures of. A scene starts from an editor with nothing open.

/** @typedef {import('./live-editor.mjs').LiveEditor} LiveEditor */

/**
 * @typedef {object} Scene
 * @property {string} name the picture's file is named `NAME-THEME.png`
 * @property {'athlete' | 'coach'} sample which sample journal is open
 * @property {(editor: LiveEditor, today: string) => Promise<void>} steps what is done before the picture is taken;
 *   `today` is `YYYY-MM-DD`
 */

/** Time for the last movement on the screen to end. @param {LiveEditor} editor */
const settle = (editor) => editor.page.waitForTimeout(800);

/** Opens the views and today's note, and waits for what is found in it. @param {LiveEditor} editor @param {string} today */
async function openDay(editor, today) {
  await editor.openViewContainer('Training Journal');
  await editor.waitForStatus('this week');
  await editor.openFile(`${today}.md`);
  await editor.waitForSquiggle('warning');
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
      await editor.runCommand('Training: Open the Goal Page');
      const frame = await editor.webviewFrame();
      await frame.locator('select').first().selectOption({ label: 'Front split low enough for the act' });
      await frame.locator('canvas').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'next-week',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.runCommand('Training: Write Next Week’s Notes');
      await editor.page.locator('.quick-input-list .monaco-list-row').first().waitFor();
      await settle(editor);
    },
  },
  {
    name: 'guide',
    sample: 'athlete',
    steps: async (editor, today) => {
      await openDay(editor, today);
      await editor.runCommand('Training: Open the Guide');
      await editor.page.waitForTimeout(2500);
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
];
