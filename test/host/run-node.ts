// Runs inside the editor's Node extension host: the editor calls `run` once the extension is there.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import Mocha from 'mocha';
import { reportRun, secondTries } from './report';

/** Runs every test beside this file's folder `node`; throws when one of them does not hold, or when there is none. */
export async function run(): Promise<void> {
  // While one is working on a test: only those with these words in their name.
  const words = process.env.TEST_GREP;
  if (words !== undefined) console.log(`Only tests named ${words}: not the whole.`);
  const mocha = new Mocha({
    ui: 'bdd',
    timeout: 30_000,
    retries: secondTries,
    reporter: 'base',
    ...(words === undefined ? {} : { grep: words }),
  });
  for (const name of readdirSync(join(__dirname, 'node'), { recursive: true, encoding: 'utf8' }).sort()) {
    if (name.endsWith('.test.js')) mocha.addFile(join(__dirname, 'node', name));
  }
  const { passed, failed } = await reportRun('node host tests', mocha.run());
  if (failed > 0) throw new Error(`${failed} of the tests in the Node extension host failed.`);
  if (passed === 0) throw new Error('No test ran in the Node extension host.');
}
