// Takes the pictures of the README: opens the sample in the live editor, in each theme, and plays the scenes.
// `node scripts/screenshots.mjs [--scene NAME] [--theme NAME] [--folder FOLDER] [--width N] [--height N]`
// writes `media/screenshots/SCENE-THEME.png`.
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from './build.mjs';
import { openLiveEditor, themes } from './live-editor.mjs';
import { removeAtExit, root } from './processes.mjs';
import { samples, scratchJournal } from './scratch-journal.mjs';
import { scenes } from './screenshot-scenes.mjs';

/**
 * @template {string} Name
 * @param {string | undefined} chosen
 * @param {readonly Name[]} known
 * @returns {readonly Name[]}
 */
function chosenOrAll(chosen, known) {
  if (chosen === undefined) return known;
  const found = known.filter((name) => name === chosen);
  if (found.length === 0) throw new Error(`There is no "${chosen}"; there are ${known.join(', ')}.`);
  return found;
}

const { values } = parseArgs({
  options: {
    scene: { type: 'string' },
    theme: { type: 'string' },
    folder: { type: 'string', default: join(root, 'media', 'screenshots') },
    width: { type: 'string', default: '1280' },
    height: { type: 'string', default: '800' },
  },
});
const names = chosenOrAll(
  values.scene,
  scenes.map(({ name }) => name),
);
const chosenThemes = chosenOrAll(values.theme, /** @type {(keyof typeof themes)[]} */ (Object.keys(themes)));
// The Thursday of the sample's own last week, so that a picture taken again shows the same.
const today = '2026-02-26';

await build();
for (const theme of chosenThemes) {
  for (const sample of /** @type {(keyof typeof samples)[]} */ (Object.keys(samples))) {
    const played = scenes.filter((scene) => scene.sample === sample && names.includes(scene.name));
    // Every scene gets a journal and an editor of its own, so that none depends on what another has done.
    for (const scene of played) {
      const folder = scratchJournal(sample, today);
      removeAtExit(dirname(folder));
      const editor = await openLiveEditor({
        folder,
        theme,
        width: Number(values.width),
        height: Number(values.height),
        settings: { 'trainingJournal.today': today },
      });
      try {
        await scene.steps(editor, today);
        console.log(await editor.screenshot(join(resolve(values.folder), `${scene.name}-${theme}.png`)));
      } finally {
        await editor.close();
      }
    }
  }
}
