// What `npm run screenshots` takes pictures of. A scene starts from an editor with nothing open.

/**
 * @typedef {object} Scene
 * @property {string} name the picture's file is named `NAME-THEME.png`
 * @property {'athlete' | 'coach'} sample which sample journal is open
 * @property {(editor: import('./live-editor.mjs').LiveEditor, today: string) => Promise<void>} steps what is done before
 *   the picture is taken; `today` is `YYYY-MM-DD`
 */

/** @type {readonly Scene[]} */
export const scenes = [
  {
    name: 'rules',
    sample: 'athlete',
    steps: async (editor) => {
      await editor.openFile('rules.md');
    },
  },
];
