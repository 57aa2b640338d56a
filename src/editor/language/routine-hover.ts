import * as vscode from 'vscode';
import { lengthInWords } from '../../training/wording';
import type { OpenJournal } from '../open-journal';
import { escaped } from './words';

/** Lines of a routine's body that a hover shows. */
const mostLines = 20;

/** The words of a routine's body, its common indentation taken away. */
function bodyLines(text: string): readonly string[] {
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '');
  const indent = Math.min(...lines.map((line) => line.length - line.trimStart().length));
  return lines.map((line) => line.slice(indent));
}

/** A routine: its kind, length, regions and body. `undefined` when the journal has no such routine. */
export function routineHover(journal: OpenJournal, id: string): readonly string[] | undefined {
  const routine = journal.journal.plan.routines.get(id);
  if (!routine) return undefined;
  const facts = [routine.kind, routine.length && lengthInWords(routine.length)].filter(
    (one) => one !== undefined,
  );
  const body = routine.entry.body?.range;
  const text = body && journal.journal.note(routine.note)?.text.slice(body.start, body.end);
  const lines = text === undefined ? [] : bodyLines(text);
  const shown = lines.slice(0, mostLines);
  return [
    facts.length === 0
      ? `**${escaped(id)}**`
      : vscode.l10n.t('{0}: {1}', `**${escaped(id)}**`, escaped(facts.join(', '))),
    ...(routine.regions.length === 0
      ? []
      : [vscode.l10n.t('Loads {0}.', escaped(routine.regions.join(', ')))]),
    // Code is shown as it stands: nothing in it becomes a link or a mark.
    ...(shown.length === 0 ? [] : [new vscode.MarkdownString().appendCodeblock(shown.join('\n'), '').value]),
    ...(lines.length > shown.length
      ? [vscode.l10n.t('And {0} lines more.', lines.length - shown.length)]
      : []),
  ];
}
