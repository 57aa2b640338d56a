import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDays, daysBetween } from '../../src/notation/time/iso-date';
import type { FindingCode } from '../../src/training/finding';
import { goalRules } from '../../src/training/goal-rules';
import { historyRules } from '../../src/training/history-rules';
import { noteRules } from '../../src/training/notation-rules';
import { weekRules } from '../../src/training/rules';
import { date } from './dates';
import { told } from './journal-from-text';

/** Wednesday of 2026-W09, in which the examples lie. */
const today = '2026-02-25';

/** `2026-02-23.md ... 2026-02-25.md` is a note for each of the days; several names are joined by commas. */
function fileNames(heading: string): readonly string[] {
  if (heading.includes(', ')) return heading.split(', ');
  const range = /^(\S+)\.md \.\.\. (\S+)\.md$/.exec(heading);
  if (!range) return [heading];
  const first = date(range[1] ?? '');
  const days = daysBetween(first, date(range[2] ?? ''));
  return Array.from({ length: days + 1 }, (_, index) => `${addDays(first, index)}.md`);
}

/** The journal below the line that begins with `heading` in the doc comment of a rule. */
function readExample(source: string, heading: string): Record<string, string> {
  const lines = source.split('\n').map((line) => line.trim());
  const start = lines.findIndex((line) => line.startsWith(`* ${heading}`));
  const notes: Record<string, string> = {};
  let names: readonly string[] = [];
  for (const line of lines.slice(start + 2)) {
    const text = /^\* {5}(.+)$/.exec(line)?.[1];
    if (text === undefined) break;
    if (/\.md$/.test(text)) names = fileNames(text);
    else for (const name of names) notes[name] = `${notes[name] ?? ''}${text}\n`;
  }
  return notes;
}

function specify(folder: string, code: FindingCode): void {
  const source = readFileSync(join(process.cwd(), 'src/training', folder, `${code}.ts`), 'utf8');

  it(`${code}: the journal of its comment that breaks it`, () => {
    assert.notEqual(told(code, readExample(source, 'A journal that breaks it'), today).length, 0);
  });

  it(`${code}: the journal of its comment that does not`, () => {
    const notes = readExample(source, 'A journal that does not');
    assert.notEqual(Object.keys(notes).length, 0);
    assert.deepEqual(told(code, notes, today), []);
  });
}

describe('the examples in the comments of the rules', () => {
  for (const { code } of weekRules) specify('rules', code);
  for (const { code } of goalRules) specify('goal-rules', code);
  for (const { code } of historyRules) specify('history-rules', code);
  for (const { code } of noteRules) specify('notation-rules', code);
});
