// Runs bundled tests in plain Node and prints how many held.
// `node scripts/run-mocha.mjs "fuzzing" FOLDER-OR-FILE ... [--timeout MS] [--reporter NAME] [--bail]`
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
    // For tests that follow one upon the other: the first that does not hold ends the run.
    bail: { type: 'boolean', default: false },
  },
});
const [title = 'tests', ...places] = positionals;

const mocha = new Mocha({
  ui: 'bdd',
  timeout: Number(values.timeout),
  bail: values.bail,
  reporter: values.reporter,
});
const files = places.flatMap((place) =>
  place.endsWith('.test.mjs') ? [place] : filesBelow(place, '.test.mjs'),
);
for (const file of files) mocha.addFile(join(root, file));
await mocha.loadFilesAsync();
const runner = mocha.run(() => {
  const passed = runner.stats?.passes ?? 0;
  // What was left out, by a word in the test or because one before it did not hold, did not hold.
  const failed = runner.total - passed;
  console.log(`${title}: ${passed} passed, ${failed} failed`);
  // What a test forgot to close may not keep the run from ending, nor go unseen.
  process.exit(failed > 0 || passed === 0 ? 1 : 0);
});
// In the form that the summary of all tests looks for.
runner.on('fail', (test, error) => console.log(`  FAILED: ${test.fullTitle()}\n${error.stack}`));
runner.on('pending', (test) => console.log(`  LEFT OUT: ${test.fullTitle()}`));
