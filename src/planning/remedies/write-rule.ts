import type { Journal } from '../../journal/journal';
import type { NotePath } from '../../journal/note';
import { joinPath } from '../../journal/note-path';
import type { Entry, NeedEntry, RuleEntry } from '../../notation/entries';
import { setFieldEdits } from '../../notation/write-entry';
import { message } from '../../training/wording';
import { insertLines } from '../insert-lines';
import type { NoteChange } from '../note-change';
import type { Remedy, RemedyMaker, ToMend } from './remedy';

function keepsGap(entry: Entry): entry is RuleEntry | NeedEntry {
  return entry.tag === 'rule' || entry.tag === 'need';
}

/** The rule or need that the finding stands on, when it stands on one. */
function gapEntry({ journal, finding }: ToMend): RuleEntry | NeedEntry | undefined {
  return journal
    .note(finding.note)
    ?.reading.entries.filter(keepsGap)
    .find(({ range }) => range.start <= finding.range.start && finding.range.end <= range.end);
}

/** The note in which most rules stand, else the journal's own note, else `rules.md` in its folder. */
function rulesNote(journal: Journal): NotePath {
  const counts = new Map<NotePath, number>();
  for (const { note } of journal.plan.rules) counts.set(note, (counts.get(note) ?? 0) + 1);
  const [most] = [...counts].sort(([, one], [, other]) => other - one);
  if (most) return most[0];
  const own = joinPath(journal.root, 'journal.md');
  return journal.note(own) ? own : joinPath(journal.root, 'rules.md');
}

function added(journal: Journal, path: NotePath, line: string): readonly NoteChange[] {
  const note = journal.note(path);
  if (!note) return [{ kind: 'create', note: path, text: `${line}\n` }];
  const edit = insertLines(note.text, [line], [(entry) => entry.tag === 'rule']);
  return edit ? [{ kind: 'edit', note: path, before: note.text, edits: [edit] }] : [];
}

/**
 * Writes the suggested gap: into the rule or need that keeps another one now, or as a `#rule` of its own beside the
 * journal's other rules.
 */
export const writeRule: RemedyMaker = function* (mend): Generator<Remedy> {
  const { journal, finding } = mend;
  const { subject, suggestedHours } = finding.facts;
  if (typeof subject !== 'string' || typeof suggestedHours !== 'number') return;
  const gap = `${suggestedHours}h`;
  const entry = gapEntry(mend);
  const note = entry && journal.note(finding.note);
  if (entry && note) {
    const edits = setFieldEdits(note.text, entry, entry.gap, { name: 'gap', text: gap });
    yield {
      name: 'write-rule',
      title: message('Change the gap of {0} to {1}', subject, gap),
      changes: [{ kind: 'edit', note: note.path, before: note.text, edits }],
      preferred: true,
    };
    return;
  }
  const line = `#rule ${subject} gap:${gap}`;
  yield {
    name: 'write-rule',
    title: message('Write the rule {0}', line),
    changes: added(journal, rulesNote(journal), `- ${line}`),
    preferred: true,
  };
};
