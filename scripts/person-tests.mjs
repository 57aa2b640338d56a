// Runs the tests of a person's path: plain Node drives a live editor in headless Chromium.
// `node scripts/person-tests.mjs`
import { buildPersonTests } from './build-tests.mjs';
import { installEditorServer } from './editor-server.mjs';
import { run } from './processes.mjs';

await buildPersonTests();
// Before the clock of the first test runs.
await installEditorServer();
const { code } = await run(process.execPath, [
  'scripts/run-mocha.mjs',
  ...['person tests', 'out/person', '--timeout', '120000', '--reporter', 'spec'],
]);
process.exitCode = code;
