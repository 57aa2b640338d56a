import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkJournal } from '../../src/training/check-journal';
import { fillMessage, findingCodes } from '../../src/training/finding';
import { date } from './dates';
import { journalFromNotes } from './journal-from-text';

const folder = join(process.cwd(), 'media/guide/findings');

/** A journal as a page of the guide shows it: file names in bold, each above its text, or several above one they share. */
interface Example {
  readonly notes: Readonly<Record<string, string>>;
  readonly today: string;
  readonly zone: string;
}

function readExample(page: string, heading: string): Example {
  const [, section = ''] = page.split(`\n## ${heading}\n`);
  const text = section.split(/\n## /)[0] ?? '';
  const notes: Record<string, string> = {};
  for (const [, names = '', written = ''] of text.matchAll(
    /^\*\*(.+?)\*\*\n+```(?:markdown|ics)\n([\s\S]*?)^```$/gm,
  )) {
    for (const name of names.split(', ')) notes[name] = `${notes[name] ?? ''}${written}`;
  }
  return {
    notes,
    today: /^Today: (\S+)$/m.exec(text)?.[1] ?? '',
    zone: /^Zone: (\S+)$/m.exec(text)?.[1] ?? 'UTC',
  };
}

function check(example: Example) {
  return checkJournal(journalFromNotes(example.notes), { today: date(example.today), zone: example.zone });
}

/** The words of the page that say how severe the finding is. */
function severityLine(page: string): string {
  return /^\*\*Severity:\*\* (.+)$/m.exec(page)?.[1] ?? '';
}

describe('the pages of the findings', () => {
  it('are one for each code', () => {
    const pages = readdirSync(folder).map((name) => name.replace(/\.md$/, ''));
    assert.deepEqual(pages.sort(), [...findingCodes].sort());
  });

  for (const code of findingCodes) {
    describe(code, () => {
      const page = readFileSync(join(folder, `${code}.md`), 'utf8');

      it('shows a journal that breaks it, with the severity that the page says', () => {
        const example = readExample(page, 'A journal that breaks it');
        assert.notEqual(Object.keys(example.notes).length, 0);
        const found = check(example).filter((finding) => finding.code === code);
        assert.notEqual(found.length, 0, 'the example gives no such finding');
        for (const { severity } of found) assert.match(severityLine(page), new RegExp(`\\b${severity}\\b`));
      });

      it('shows a journal in which nothing is wrong', () => {
        const example = readExample(page, 'A journal that does not');
        assert.notEqual(Object.keys(example.notes).length, 0);
        assert.deepEqual(
          check(example).map(
            (finding) => `${finding.note}: ${finding.code}: ${fillMessage(finding.message)}`,
          ),
          [],
        );
      });
    });
  }
});
