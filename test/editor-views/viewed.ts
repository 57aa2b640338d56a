import { type ViewContext, type ViewedJournal, viewContext } from '../../src/editor/views/view-context';
import type { ViewNode } from '../../src/editor/views/view-node';
import { type Words, wordsOf } from '../../src/editor/words';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import { type IsoDate, parseIsoDate } from '../../src/notation/time/iso-date';
import { fillMessage } from '../../src/training/finding';

/** Notes by path. */
export type Notes = Readonly<Record<string, string>>;

/** English as it stands in the source. */
export const english: Words = wordsOf('en', fillMessage);

/** A date that exists. */
export function date(text: string): IsoDate {
  const found = parseIsoDate(text);
  if (!found) throw new Error(`${text} is not a date`);
  return found;
}

/** An open journal of these notes, on a day. */
export function viewed(notes: Notes, today: string, title = 'Ilka'): ViewedJournal {
  const journal = new JournalIndex();
  for (const [path, text] of Object.entries(notes)) journal.replace(openNote(path, text));
  return {
    id: `memory:/${title}`,
    title,
    journal,
    settings: {
      recoveryChance: 0.2,
      sessionLenses: true,
      timeOfDay: 'earlier',
      review: { pain: false, why: false, day: 7 },
      findings: { enabled: true, weeksBefore: 1, weeksAfter: 2 },
    },
    today: () => date(today),
    zone: () => 'Europe/Lisbon',
  };
}

/** The journal in the words of one language. */
export function contextOf(notes: Notes, today: string, words: Words = english, title = 'Ilka'): ViewContext {
  return viewContext(viewed(notes, today, title), words);
}

/** Rows as a person reads them, indented: icon, label and description. */
export function rows(nodes: readonly ViewNode[], indent = ''): string {
  return nodes
    .map(({ icon, label, description, children }) => {
      const shape = icon ? `(${icon}) ` : '';
      const more = description ? ` | ${description}` : '';
      const below = children.length > 0 ? `\n${rows(children, `${indent}  `)}` : '';
      return `${indent}${shape}${label}${more}${below}`;
    })
    .join('\n');
}

/** Every row, those below others as well. */
export function allNodes(nodes: readonly ViewNode[]): readonly ViewNode[] {
  return nodes.flatMap((node) => [node, ...allNodes(node.children)]);
}

/** The one row with this label. */
export function nodeOf(nodes: readonly ViewNode[], label: string): ViewNode {
  const found = allNodes(nodes).filter((node) => node.label === label);
  const [only] = found;
  if (!only || found.length > 1) throw new Error(`${found.length} rows are called ${label}`);
  return only;
}

/** Lines of a block of text without the indentation that all of them share. */
export function block(text: string): string {
  const lines = text.split('\n').slice(1, -1);
  const indent = Math.min(...lines.filter((line) => line.trim()).map((line) => line.search(/\S/)));
  return lines.map((line) => line.slice(indent)).join('\n');
}
