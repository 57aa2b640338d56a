// Runs tests that drive headless Chromium from plain Node.
// `node scripts/browser-tests.mjs pages` the pages by themselves; `node scripts/browser-tests.mjs person` a person's
// path in a live editor.
import { buildPageTests, buildPersonTests, filesBelow } from './build-tests.mjs';
import { installEditorServer } from './editor-server.mjs';
import { run } from './processes.mjs';

/** @param {readonly string[]} args */
function runMocha(...args) {
  const options = ['--timeout', '120000', '--reporter', 'spec'];
  return run(process.execPath, ['scripts/run-mocha.mjs', ...args, ...options]);
}

/**
 * Runs one file of a person's path. Its tests follow one upon the other in one editor, so what did not hold leaves the
 * rest with nothing to stand on; and an editor on a busy machine loses a keystroke now and then. The whole path is then
 * gone once more, in a new editor, and told of: what does not hold twice is a fault.
 * @param {string} file
 * @returns {Promise<{ passed: number, failed: number }>}
 */
async function runPath(file) {
  const first = countsOf(await runMocha('path', file, '--bail'));
  if (first.failed === 0) return first;
  console.log(`  AGAIN: ${file}, in a new editor`);
  return countsOf(await runMocha('path', file, '--bail'));
}

/**
 * A run that ended badly, or ran nothing, counts as one failure at least.
 * @param {{ code: number, output: string }} result
 */
function countsOf({ code, output }) {
  const [, passed = 0, failed = 0] = /^path: (\d+) passed, (\d+) failed$/m.exec(output) ?? [];
  return { passed: Number(passed), failed: Math.max(code === 0 ? 0 : 1, Number(failed)) };
}

async function runPersonTests() {
  await buildPersonTests();
  // Before the clock of the first test runs.
  await installEditorServer();
  const total = { passed: 0, failed: 0 };
  for (const file of filesBelow('out/person', '.test.mjs')) {
    const { passed, failed } = await runPath(file);
    total.passed += passed;
    total.failed += failed;
  }
  console.log(`person tests: ${total.passed} passed, ${total.failed} failed`);
  return total.failed === 0 && total.passed > 0 ? 0 : 1;
}

const name = process.argv[2];
if (name === 'pages') {
  await buildPageTests();
  process.exitCode = (await runMocha('page tests', 'out/page-tests')).code;
} else if (name === 'person') {
  process.exitCode = await runPersonTests();
} else {
  console.error('Say which tests: pages or person.');
  process.exitCode = 2;
}
