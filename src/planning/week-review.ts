import type { Journal } from '../journal/journal';
import type { NotePath } from '../journal/note';
import type { TextEdit } from '../notation/text-edit';
import { applyTextEdits } from '../notation/text-edit';
import type { IsoWeek } from '../notation/time/iso-week';
import type { BlockWeek } from '../training/adherence/block-week';
import { fillMessage, type Message } from '../training/finding';
import { type WeekFacts, weekFacts } from '../training/week-facts';
import { type CheckContext, type CheckOptions, checkContext } from '../training/week-under-check';
import { message } from '../training/wording';
import { usualLineEnding } from './day-note';
import { lineEndingOf, withLineEnding } from './line-ending';
import type { NoteChange } from './note-change';
import { type FactLine, type FactSubject, factSections } from './week-review/fact-lines';
import { factsBegin, factsEnd, findFacts } from './week-review/facts-block';
import { blockOf, type ReviewDay, weekToReview } from './week-review/review-due';
import { newWeekNotePath, weekNoteOf } from './week-review/week-note-path';

/** What is reviewed, and how. */
export interface WeekReviewOptions extends CheckOptions {
  /** When left out, the running week once it is time for that (see `weekToReview`), else the one before. */
  readonly week?: IsoWeek;
  /** The day of the look back, which says when that is; Sunday when left out. */
  readonly day?: ReviewDay;
  /** Whether pain stands in the note; left out unless asked for. */
  readonly includePain?: boolean;
  /** Whether the private reasons of the open goals do. */
  readonly includeWhy?: boolean;
  /** Makes sentences of messages; English ones when left out. */
  readonly say?: (message: Message) => string;
}

/** The review of a week, ready to be shown and written. */
export interface WeekReview {
  readonly week: IsoWeek;
  readonly facts: WeekFacts;
  /** The facts as they stand between the marked lines. */
  readonly lines: readonly string[];
  /** The same by what they are about, to be read on the screen; private reasons are not among them. */
  readonly sections: readonly { readonly subject: FactSubject; readonly lines: readonly string[] }[];
  readonly note: NotePath;
  /** Empty when the note says all of it already. */
  readonly changes: readonly NoteChange[];
  /** The note has the first marked line and not the second: nothing is written, as nobody knows where the facts end. */
  readonly notClosed: boolean;
}

/** One line of Markdown text: nothing in it opens HTML, code or a link. */
function asText(words: string): string {
  return words.replace(/\s+/gu, ' ').replace(/[<`[\]\\]/g, '\\$&');
}

function whyLines(context: CheckContext): readonly FactLine[] {
  return [...context.plan.goals.values()]
    .filter(({ closed }) => !closed)
    .flatMap(({ id, whys }) =>
      whys.flatMap(({ words }) => (words ? [{ about: id, message: message('{0}', words.value) }] : [])),
    );
}

function promptLines(block: BlockWeek | undefined): readonly Message[] {
  return [
    message('What went well?'),
    message('What got in the way?'),
    message('What do I change next week?'),
    ...(block?.reviewEarly
      ? [
          message(
            'Week {0} of the block: many slow down now. What would make next week easier to keep?',
            block.week,
          ),
        ]
      : []),
  ];
}

/** The edit that adds the block to a note without one: behind its words, or in front where they end within code. */
function addedBlock(text: string, block: string, week: IsoWeek, ending: string): TextEdit {
  const end = text.length;
  const gap = text === '' ? '' : /(?:\r\n|\n|\r)$/.test(text) ? ending : ending + ending;
  const behind = { range: { start: end, end }, text: `${gap}${block}${ending}` };
  if (findFacts(applyTextEdits(text, [behind]), week).status === 'found') return behind;
  return { range: { start: 0, end: 0 }, text: `${block}${ending}${ending}` };
}

function editOf(text: string, block: string, inside: string, week: IsoWeek): readonly TextEdit[] {
  const ending = lineEndingOf(text) ?? '\n';
  const place = findFacts(text, week);
  if (place.status === 'not-closed') return [];
  if (place.status === 'absent') return [addedBlock(text, withLineEnding(block, ending), week, ending)];
  const wanted = withLineEnding(inside, ending);
  const { start, end } = place.inside;
  return text.slice(start, end) === wanted ? [] : [{ range: place.inside, text: wanted }];
}

/**
 * Writes the facts of a week into its week note, between two marked lines, and leaves prompts for the athlete's own
 * words below them in a new note. What stands outside the marked lines is never touched; a note that has none yet gets
 * them behind its words. Pain and the private reasons are not in it unless asked for. Reviewing again when nothing has
 * happened changes nothing.
 */
export function reviewWeek(journal: Journal, options: WeekReviewOptions): WeekReview {
  const context = checkContext(journal, options);
  const { say = fillMessage } = options;
  const week = options.week ?? weekToReview(context, options.day);
  const facts = weekFacts(context, week);
  const words = ({ about, message: one }: FactLine): string =>
    about === undefined ? say(one) : `${about}: ${say(one)}`;
  const sections = factSections(facts, { pain: options.includePain === true });
  const lines = [
    ...sections.flatMap((section) => section.lines),
    ...(options.includeWhy === true ? whyLines(context) : []),
  ].map((line) => asText(words(line)));
  const inside = `\n\n${lines.map((line) => `- ${line}\n`).join('')}\n`;
  const block = `${factsBegin(week)}${inside}${factsEnd}`;
  const note = weekNoteOf(journal, week);
  const base = {
    week,
    facts,
    lines,
    sections: sections.map((section) => ({ ...section, lines: section.lines.map(words) })),
  };
  if (!note) {
    const prompts = promptLines(blockOf(context)).map((one) => `- ${say(one)}\n`);
    const heading = say(message('In your own words'));
    const text = `# ${week}\n\n${block}\n\n## ${heading}\n\n${prompts.join('')}`;
    const path = newWeekNotePath(journal, week);
    const change: NoteChange = {
      kind: 'create',
      note: path,
      text: withLineEnding(text, usualLineEnding(journal)),
    };
    return { ...base, note: path, changes: [change], notClosed: false };
  }
  const edits = editOf(note.text, block, inside, week);
  return {
    ...base,
    note: note.path,
    changes: edits.length === 0 ? [] : [{ kind: 'edit', note: note.path, before: note.text, edits }],
    notClosed: findFacts(note.text, week).status === 'not-closed',
  };
}
