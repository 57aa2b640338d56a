// `npm test`: everything that must hold, one step after the other, each with a heading and its time. A step that fails
// does not keep the next from running.
// `npm test -- --only types,pure` runs some of them, and says so.
import { parseArgs } from 'node:util';
import { installEditorServer } from './editor-server.mjs';
import { install } from './install.mjs';
import { run, runNpm } from './processes.mjs';

/**
 * @typedef {object} Step
 * @property {string} name
 * @property {string} title
 * @property {boolean} [inEditor] whether the step looks at the editor
 * @property {() => Promise<{ code: number, output: string }>} start
 * @property {(output: string) => Counts | undefined} [count] reads the counts from the output; a step without it is one
 *   test
 */
/** @typedef {{ passed: number, failed: number }} Counts */

/**
 * The counts that a runner of this project prints as `TITLE: N passed, N failed`.
 * @param {string} title
 * @returns {(output: string) => Counts | undefined}
 */
function countsNamed(title) {
  return (output) => {
    const [, passed, failed] = new RegExp(`${title}: (\\d+) passed, (\\d+) failed`).exec(output) ?? [];
    return passed === undefined ? undefined : { passed: Number(passed), failed: Number(failed) };
  };
}

const node = (/** @type {string[]} */ ...args) => run(process.execPath, args);

/** @type {Step[]} */
const steps = [
  {
    name: 'types',
    title: 'Type check',
    start: () => node('node_modules/typescript/bin/tsc', '--noEmit'),
  },
  {
    name: 'lint',
    title: 'Lint, format and the layer rule',
    start: () => runNpm(['run', '--silent', 'lint']),
  },
  { name: 'build', title: 'Build', start: () => node('scripts/build.mjs') },
  {
    name: 'pure',
    title: 'Pure tests and published checks, under several time zones',
    start: () => node('scripts/pure-tests.mjs'),
    count: countsNamed('pure tests'),
  },
  {
    name: 'grammar',
    title: 'Grammar tests',
    inEditor: true,
    start: () => runNpm(['run', '--silent', 'test:grammar']),
    // One line a file, marked in front.
    count: (output) => ({
      passed: output.match(/^✓ /gm)?.length ?? 0,
      failed: output.match(/^✖ /gm)?.length ?? 0,
    }),
  },
  {
    name: 'node-host',
    title: 'Tests inside the Node extension host',
    inEditor: true,
    start: () => node('scripts/host-tests.mjs', 'node'),
    count: countsNamed('node host tests'),
  },
  {
    name: 'web-host',
    title: 'Tests inside the web extension host',
    inEditor: true,
    start: () => node('scripts/host-tests.mjs', 'web'),
    count: countsNamed('web host tests'),
  },
  {
    name: 'pages',
    title: 'Pages in the browser',
    start: () => node('scripts/browser-tests.mjs', 'pages'),
    count: countsNamed('page tests'),
  },
  {
    name: 'person',
    title: "A person's path in the live editor",
    inEditor: true,
    start: () => node('scripts/browser-tests.mjs', 'person'),
    count: countsNamed('person tests'),
  },
];

/** @param {string | undefined} only names of steps, with commas */
function chosenSteps(only) {
  if (only === undefined) return steps;
  const names = only.split(',').map((name) => name.trim());
  const unknown = names.filter((name) => !steps.some((step) => step.name === name));
  if (unknown.length > 0) {
    console.error(
      `There is no step ${unknown.join(', ')}; there are ${steps.map(({ name }) => name).join(', ')}.`,
    );
    process.exit(2);
  }
  return steps.filter(({ name }) => names.includes(name));
}

/**
 * What a step counts for. A runner that ended badly, said nothing, or ran nothing, counts as one failure at least.
 * @param {Step} step
 * @param {{ code: number, output: string }} result
 * @returns {Counts}
 */
function countStep(step, { code, output }) {
  if (!step.count) return code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
  const counts = step.count(output) ?? { passed: 0, failed: 0 };
  const sound = code === 0 && counts.passed > 0;
  return { passed: counts.passed, failed: sound ? counts.failed : Math.max(1, counts.failed) };
}

/**
 * The tests that did not hold, at once or at all, with the first line of the error: told again at the end, where it is
 * looked for.
 * @param {string} output
 */
function testsNotHeld(output) {
  const told = /^ {2}(?:FAILED|AGAIN|LEFT OUT): .*(?:\n.*)?/gm;
  return [...output.matchAll(told)].map(([text]) => text.trim().replace('\n', '\n       ').slice(0, 400));
}

/** Installs the editor before the first step that looks at it; when that fails, those steps say so themselves. */
async function prepareEditor() {
  try {
    await installEditorServer();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
  }
}

const { values } = parseArgs({ options: { only: { type: 'string' } } });
const chosen = chosenSteps(values.only);
await install();
if (chosen.some(({ inEditor }) => inEditor)) await prepareEditor();
const total = { passed: 0, failed: 0 };
/** @type {string[]} */
const summary = [];
/** @type {string[]} */
const notHeld = [];
for (const step of chosen) {
  console.log(`\n== ${step.title}`);
  const started = Date.now();
  const result = await step.start();
  const counts = countStep(step, result);
  notHeld.push(...testsNotHeld(result.output));
  total.passed += counts.passed;
  total.failed += counts.failed;
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  const word = counts.failed > 0 ? 'FAILED' : 'ok';
  summary.push(
    `${word.padEnd(6)} ${step.title}: ${counts.passed} held, ${counts.failed} did not (${seconds} s)`,
  );
}
console.log(`\n${[...notHeld, ...summary].join('\n')}`);
if (chosen.length < steps.length)
  console.log(`Only ${chosen.map(({ name }) => name).join(', ')}: not the whole.`);
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
