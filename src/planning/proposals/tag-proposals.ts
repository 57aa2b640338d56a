import { isJournalNote } from '../../journal/note-path';
import type { TagNameContext } from '../../notation/cursor-context';
import type { TagName } from '../../notation/entries';
import { addDays } from '../../notation/time/iso-date';
import { blank, type Proposal, type ProposalSource, plain, snippet } from './proposal';

const logging: readonly TagName[] = ['session', 'measure', 'sore', 'pain', 'win'];
const planning: readonly TagName[] = [
  'goal',
  'metric',
  'step',
  'need',
  'why',
  'routine',
  'rule',
  'kind',
  'free',
  'busy',
  'event',
  'block',
];
const about: readonly TagName[] = ['athlete', 'zone'];

/** Tags that stand in a task item. */
const inTask: ReadonlySet<TagName> = new Set(['session', 'step']);

/** What follows the name; an empty place lets the next proposals come at once. */
function fieldsOf(tag: TagName, source: ProposalSource): string {
  switch (tag) {
    case 'goal':
      return `${blank(1, 'name')} by:${blank(2, addDays(source.today, 84))} "${blank(3, 'title')}"`;
    case 'metric':
      return `${blank(1, 'gap')} from:${blank(2, '14cm')} to:${blank(3, '0cm')}`;
    case 'step':
      return `${blank(1, 'name')} by:${blank(2, addDays(source.today, 28))}`;
    case 'routine':
      return `${blank(1, 'name')} ${blank(2, 'flexibility')} ${blank(3, '60')}min`;
    case 'kind':
      return `${blank(1, 'name')} like:${blank(2, 'strength')}`;
    case 'why':
    case 'win':
      return blank(1, 'words');
    case 'athlete':
      return `"${blank(1, 'name')}"`;
    default:
      return '';
  }
}

/** The list marker and the box that a tag in a task item still needs. */
function itemMarks(tag: TagName, item: TagNameContext['item']): string {
  if (!inTask.has(tag) || item === 'task') return '';
  return item === 'item' ? '[ ] ' : '- [ ] ';
}

function orderOf(source: ProposalSource): readonly TagName[] {
  if (isJournalNote(source.note)) return [...about, ...planning, ...logging];
  return source.date === undefined
    ? [...planning, ...logging, ...about]
    : [...logging, ...planning, ...about];
}

/**
 * The tags, those that suit the note first. A tag of a task item brings its box along. Where fields stand behind the
 * name already, only the name is written.
 */
export function tagProposals(source: ProposalSource, context: TagNameContext): readonly Proposal[] {
  return orderOf(source).map((tag) => {
    const label = `#${tag}`;
    const subject = { is: 'tag', tag } as const;
    const marks = itemMarks(tag, context.item);
    if (!context.alone) return plain(label, subject, { text: `${marks}${label}`, asked: true });
    const fields = fieldsOf(tag, source);
    const text = `${marks}${label} ${fields}`;
    return snippet(label, text, subject, { asked: true, continues: fields === '' });
  });
}
