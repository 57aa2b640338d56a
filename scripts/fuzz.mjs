// `npm run fuzz`: gives the readers of notes and calendars a million texts that nobody would write.
// `npm run fuzz -- --runs 50000 --seed 7` sets how many each property tries, and which. A text that fails is printed,
// and belongs into the tests of its reader.
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { install } from './install.mjs';
import { root, run } from './processes.mjs';

const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '350000' },
    // Another one each day, so that a nightly run sees new texts.
    seed: { type: 'string', default: new Date().toISOString().slice(0, 10).replaceAll('-', '') },
  },
});
process.env.FUZZ_RUNS = values.runs;
process.env.FUZZ_SEED = values.seed;
console.log(`Seed ${values.seed}, ${values.runs} texts a property.`);

await install();
const { buildPureTests } = await import('./build-tests.mjs');
await buildPureTests();
const { code } = await run(process.execPath, [
  join(root, 'scripts/run-mocha.mjs'),
  'fuzzing',
  'out/pure/fuzz',
]);
process.exitCode = code;
