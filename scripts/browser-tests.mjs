// Runs tests that drive headless Chromium from plain Node.
// `node scripts/browser-tests.mjs pages` the pages by themselves; `node scripts/browser-tests.mjs person` a person's
// path in a live editor.
import { buildPageTests, buildPersonTests } from './build-tests.mjs';
import { installEditorServer } from './editor-server.mjs';
import { run } from './processes.mjs';

/** @param {readonly string[]} args */
async function runMocha(...args) {
  const { code } = await run(process.execPath, [
    'scripts/run-mocha.mjs',
    ...args,
    ...['--timeout', '120000', '--reporter', 'spec'],
  ]);
  process.exitCode = code;
}

const name = process.argv[2];
if (name === 'pages') {
  await buildPageTests();
  await runMocha('page tests', 'out/page-tests');
} else if (name === 'person') {
  await buildPersonTests();
  // Before the clock of the first test runs.
  await installEditorServer();
  await runMocha('person tests', 'out/person', '--retries', '1');
} else {
  console.error('Say which tests: pages or person.');
  process.exitCode = 2;
}
