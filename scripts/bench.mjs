// `npm run bench`: builds the benches of `test/bench`, runs each in a process of its own, and prints the table of the
// README. `npm run bench -- NAME` runs those whose file name holds NAME; with `--write` the table is put into the README.
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { basename, join } from 'node:path';
import { install } from './install.mjs';
import { root, run } from './processes.mjs';

/** Where the table stands in the README. */
const place = /(<!-- npm run bench -- --write -->\n)[\s\S]*?(<!-- end of the table -->)/;

await install();
const { buildBenches, filesBelow } = await import('./build-tests.mjs');
await buildBenches();
// What ships is measured as it is now.
await (await import('./build.mjs')).build();
const wanted = process.argv.slice(2).find((word) => !word.startsWith('--')) ?? '';
const benches = filesBelow('out/bench', '.bench.mjs').filter((file) => basename(file).includes(wanted));
if (benches.length === 0) {
  console.error(`There is no bench "${wanted}".`);
  process.exitCode = 2;
}
/** @type {string[]} */
const rows = [];
for (const bench of benches) {
  console.log(`\n== ${basename(bench, '.bench.mjs')}`);
  const { code, output } = await run(process.execPath, [join(root, bench)]);
  rows.push(...output.split('\n').filter((line) => line.startsWith('| ')));
  if (code !== 0) process.exitCode = 1;
}
if (rows.length > 0) {
  const table = ['| what | asked for | measured |', '|---|---|---|', ...rows].join('\n');
  const machine = `Node ${process.versions.node}, ${cpus().length} cores, ${cpus()[0]?.model.trim()}.`;
  console.log(`\n${table}\n\n${machine}`);
  if (process.argv.includes('--write')) {
    const readme = join(root, 'README.md');
    const text = readFileSync(readme, 'utf8');
    if (wanted !== '') throw new Error('Only the whole table is written: leave the name out.');
    if (process.exitCode) throw new Error('A bench did not end well: nothing is written.');
    if (!place.test(text)) throw new Error('The README has no place for the table.');
    writeFileSync(
      readme,
      text.replace(place, (_, begin, end) => `${begin}${table}\n\n${machine}\n${end}`),
    );
  }
}
