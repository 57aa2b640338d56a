// `npm run bench`: builds the benches of `test/bench` and runs each in a process of its own.
// `npm run bench -- NAME` runs those whose file name holds NAME.
import { basename, join } from 'node:path';
import { install } from './install.mjs';
import { root, run } from './processes.mjs';

await install();
const { buildBenches, filesBelow } = await import('./build-tests.mjs');
await buildBenches();
const wanted = process.argv[2] ?? '';
const benches = filesBelow('out/bench', '.bench.mjs').filter((file) => basename(file).includes(wanted));
if (benches.length === 0) {
  console.error(`There is no bench "${wanted}".`);
  process.exitCode = 2;
}
for (const bench of benches) {
  console.log(`\n== ${basename(bench, '.bench.mjs')}`);
  const { code } = await run(process.execPath, [join(root, bench)]);
  if (code !== 0) process.exitCode = 1;
}
