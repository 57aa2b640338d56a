import type { Entry, NeedEntry, RuleEntry } from '../../notation/entries';
import { setFieldEdits } from '../../notation/write-entry';
import { message } from '../../training/wording';
import { addRuleLine } from '../rule-line';
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
    changes: addRuleLine(journal, line),
    preferred: true,
  };
};
