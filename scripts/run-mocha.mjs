// Runs bundled tests in plain Node and prints how many held.
// `node scripts/run-mocha.mjs "pure tests" out/pure [--timeout MS] [--reporter NAME] [--retries N]`
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import Mocha from 'mocha';
import { filesBelow } from './build-tests.mjs';
import { root } from './processes.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    timeout: { type: 'string', default: '20000' },
    reporter: { type: 'string', default: 'dot' },
    // How often a test that did not hold is run again; each time is told of.
    retries: { type: 'string', default: '0' },
  },
});
const [title = 'tests', folder = 'out/pure'] = positionals;

const mocha = new Mocha({
  ui: 'bdd',
  timeout: Number(values.timeout),
  retries: Number(values.retries),
  reporter: values.reporter,
});
for (const file of filesBelow(folder, '.test.mjs')) mocha.addFile(join(root, file));
await mocha.loadFilesAsync();
const runner = mocha.run((failures) => {
  const { passes = 0, pending = 0 } = runner.stats ?? {};
  // A test that was left out did not hold.
  const failed = failures + pending;
  console.log(`${title}: ${passes} passed, ${failed} failed`);
  // What a test forgot to close may not keep the run from ending, nor go unseen.
  process.exit(failed > 0 || passes === 0 ? 1 : 0);
});
runner.on('retry', (test, error) => console.log(`  AGAIN: ${test.fullTitle()}\n${error.stack}`));
