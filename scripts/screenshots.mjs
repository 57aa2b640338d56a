// Takes the pictures of the README: opens the sample in the live editor, in each theme, and plays the scenes.
// `node scripts/screenshots.mjs [--scene NAME] [--theme NAME] [--folder FOLDER] [--width N] [--height N] [--review]`
// writes `media/screenshots/SCENE-THEME.png`; with `--review` also the scenes that are only to be looked at.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from './build.mjs';
import { openLiveEditor, themes } from './live-editor.mjs';
import { removeAtExit, root } from './processes.mjs';
import { scratchJournal } from './scratch-journal.mjs';
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
    review: { type: 'boolean', default: false },
  },
});
const names = chosenOrAll(
  values.scene,
  scenes.filter((scene) => values.review || values.scene || !scene.forReview).map(({ name }) => name),
);
const chosenThemes = chosenOrAll(values.theme, /** @type {(keyof typeof themes)[]} */ (Object.keys(themes)));
// The Thursday of the sample's own last week, so that a picture taken again shows the same.
const today = '2026-02-26';

/** A new folder for one scene. @param {import('./screenshot-scenes.mjs').Scene['sample']} sample */
function folderOf(sample) {
  if (sample === 'empty') return removeAtExit(mkdtempSync(join(tmpdir(), 'my-training-')));
  const folder = scratchJournal(sample, today);
  removeAtExit(dirname(folder));
  return folder;
}

await build();
for (const theme of chosenThemes) {
  // Every scene gets a journal and an editor of its own, so that none depends on what another has done.
  for (const scene of scenes.filter(({ name }) => names.includes(name))) {
    const editor = await openLiveEditor({
      folder: folderOf(scene.sample),
      theme,
      width: scene.width ?? Number(values.width),
      height: scene.height ?? Number(values.height),
      settings: { 'trainingJournal.today': today },
    });
    try {
      await scene.steps(editor, today);
      console.log(await editor.screenshot(join(resolve(values.folder), `${scene.name}-${theme}.png`)));
    } catch (error) {
      // One scene that fails keeps no other from being taken, nor the run from failing.
      console.error(`${scene.name}, ${theme}: ${error instanceof Error ? error.message : String(error)}`);
      await editor.screenshot(join(resolve(values.folder), `FAILED-${scene.name}-${theme}.png`));
      process.exitCode = 1;
    } finally {
      await editor.close();
    }
  }
}
