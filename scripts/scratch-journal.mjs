// A copy of the sample journal that a person may write in, with its dates moved so that it ends in the current week.
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { root } from './processes.mjs';
import { shiftDates, weekOfDate, weeksBetween } from './shift-dates.mjs';

const sample = join(root, 'sample-journal');

/** What the sample holds: the folder of an athlete, and a coach's folder with one folder an athlete. */
export const samples = /** @type {const} */ ({ athlete: 'athlete', coach: 'roster' });

/**
 * Copies a folder with every date in names and texts moved by whole weeks. A file that is not UTF-8 text, a picture for
 * one, keeps its bytes; its name is moved all the same.
 * @param {string} source
 * @param {string} target
 * @param {number} weeks
 */
export function copyShifted(source, target, weeks) {
  mkdirSync(target, { recursive: true });
  for (const entry of readdirSync(source, { withFileTypes: true })) {
    const from = join(source, entry.name);
    const to = join(target, shiftDates(entry.name, weeks));
    if (entry.isDirectory()) {
      copyShifted(from, to, weeks);
    } else {
      const bytes = readFileSync(from);
      const text = bytes.toString('utf8');
      if (Buffer.from(text, 'utf8').equals(bytes)) writeFileSync(to, shiftDates(text, weeks));
      else copyFileSync(from, to);
    }
  }
}

/**
 * Today's date on this machine's clock, in its time zone.
 * @param {Date} now
 * @returns {string} `YYYY-MM-DD`
 */
export function localDate(now) {
  const two = (/** @type {number} */ value) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * Copies a sample to a new folder below the system's folder for temporary files. It is left there: a person may have
 * written in it.
 * @param {keyof typeof samples} name
 * @param {string} today `YYYY-MM-DD`
 * @returns {string} the folder to open
 */
export function scratchJournal(name, today) {
  const source = join(sample, samples[name]);
  if (!existsSync(source)) throw new Error(`There is no sample in ${source}.`);
  // The week in which the sample's athlete lives now.
  const lived = readFileSync(join(sample, 'current-week.txt'), 'utf8').trim();
  const folder = join(mkdtempSync(join(tmpdir(), 'training-journal-')), basename(source));
  copyShifted(source, folder, weeksBetween(lived, weekOfDate(today)));
  return folder;
}
