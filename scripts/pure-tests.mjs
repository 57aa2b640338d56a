// Runs the pure tests in two processes at a time, under several time zones, and prints one line with the count.
// `node scripts/pure-tests.mjs [--all-zones | --zone NAME]`
// The files below take seconds each or build what ships: each of them runs under one of six zones. Every other file runs
// under two, on both sides of the date line; with `--all-zones`, under all six, which takes three times as long.
// `--zone NAME` runs every file, and under that zone alone.
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { buildPureTests, filesBelow } from './build-tests.mjs';
import { run } from './processes.mjs';

/**
 * The zones, and what runs in one of them only. They are far from Greenwich on both sides of the date line, change their
 * clocks in either hemisphere, by half an hour, at midnight, or no more; a machine's zone may show in no answer.
 * @type {Readonly<Record<string, readonly string[]>>}
 */
const zones = {
  'America/Santiago': [
    'journal/faulty-source-properties',
    'journal/kept/kept-notes',
    'notation/scanner-steps',
    // These build and pack what ships, and two at a time would be in each other's way.
    'package/bundles',
    'package/vsix',
  ],
  'America/Los_Angeles': ['planning/solver/oracle'],
  'Asia/Tokyo': ['planning/plan-weeks-properties'],
  'Africa/Cairo': [
    'planning/next-week-properties',
    'planning/remedies-properties',
    'planning/edit-scripts-properties',
    'training/check-journal',
    'hostile/outputs',
  ],
  'Pacific/Apia': [
    'published/icalendar-oracles',
    'published/icalendar-export',
    'published/gfm-tables',
    'planning/solver/solve',
  ],
  'Australia/Lord_Howe': [
    'published/icalendar-time-zones',
    'planning/calendar/exercise-lines',
    'fuzz/read-note',
    'fuzz/read-calendar',
  ],
};

/** The zones of every file that is not named above. */
const usualZones = ['America/Los_Angeles', 'Pacific/Apia'];

/**
 * Tests to run in one process.
 * @typedef {{ zone: string, files: readonly string[], isForAll: boolean }} Task
 */

/**
 * The slow ones come first, so that what is left for the end is short.
 * @param {readonly string[]} files
 * @param {string | undefined} only
 * @param {readonly string[]} everywhere zones of the files that are not slow
 * @returns {Task[]}
 */
function tasksOf(files, only, everywhere) {
  if (only !== undefined) return [{ zone: only, files, isForAll: true }];
  const once = Object.entries(zones).map(([zone, names]) => ({
    zone,
    files: names.map((name) => `out/pure/${name}.test.mjs`),
    isForAll: false,
  }));
  const slow = once.flatMap((task) => task.files);
  const gone = slow.filter((file) => !files.includes(file));
  if (gone.length > 0) throw new Error(`There is no ${gone.join(', ')}.`);
  const others = files.filter((file) => !slow.includes(file));
  return [...once, ...everywhere.map((zone) => ({ zone, files: others, isForAll: true }))];
}

/**
 * @param {Task} task
 * @returns {Promise<{ isForAll: boolean, passed: number, failed: number }>}
 */
async function runTask({ zone, files, isForAll }) {
  const started = Date.now();
  const { code, output } = await run(process.execPath, ['scripts/run-mocha.mjs', zone, ...files], {
    env: { ...process.env, TZ: zone },
    quiet: true,
  });
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(`${output.trimEnd()} (${files.length} files, ${seconds} s)`);
  const [, passed, failed] = /: (\d+) passed, (\d+) failed\s*$/.exec(output) ?? [];
  // A run that ended badly, or without a word, counts as one failure at least.
  return {
    isForAll,
    passed: Number(passed ?? 0),
    failed: Math.max(Number(failed ?? 1), code === 0 ? 0 : 1),
  };
}

const { values } = parseArgs({
  options: { zone: { type: 'string' }, 'all-zones': { type: 'boolean', default: false } },
});
const zonesOfAll = values['all-zones'] ? Object.keys(zones) : usualZones;
await buildPureTests();
const tasks = tasksOf(filesBelow('out/pure', '.test.mjs'), values.zone, zonesOfAll);
/** @type {Awaited<ReturnType<typeof runTask>>[]} */
const counts = [];
/** Runs what is left, one after the other. */
async function work() {
  for (let task = tasks.shift(); task; task = tasks.shift()) counts.push(await runTask(task));
}
await Promise.all(Array.from({ length: Math.min(2, availableParallelism()) }, work));

// A test that runs under several zones is one test, and holds when it holds under all of them.
const everywhere = counts.filter(({ isForAll }) => isForAll);
const once = counts.filter(({ isForAll }) => !isForAll);
const sum = (/** @type {readonly number[]} */ all) => all.reduce((total, one) => total + one, 0);
const passed = Math.min(...everywhere.map((one) => one.passed)) + sum(once.map((one) => one.passed));
const failed = Math.max(...everywhere.map((one) => one.failed)) + sum(once.map((one) => one.failed));
console.log(`pure tests: ${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
