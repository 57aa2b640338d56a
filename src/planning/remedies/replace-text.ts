import { message } from '../../training/wording';
import type { Remedy, RemedyMaker } from './remedy';

/** Writes the likely reading in place of the characters that were found. */
export const replaceText: RemedyMaker = function* ({ journal, finding }): Generator<Remedy> {
  const { suggestion } = finding.facts;
  const note = journal.note(finding.note);
  if (!note || suggestion === undefined) return;
  const text = String(suggestion);
  yield {
    name: 'replace-text',
    title: message('Write {0}', text),
    changes: [{ kind: 'edit', note: note.path, before: note.text, edits: [{ range: finding.range, text }] }],
    preferred: true,
  };
};
