import { addDays, isoDate } from '../../notation/time/iso-date';
import { type IsoWeek, mondayOf } from '../../notation/time/iso-week';
import type { NoteChange } from '../../planning/note-change';
import type { FactSubject } from '../../planning/week-review/fact-lines';
import type { ReviewFlow } from '../../planning/week-review-flow';
import { type PlannedReview, reviewChanges } from '../../planning/week-review-flow/review-draft';
import { type ReviewProgress, stepsOf } from '../../planning/week-review-flow/review-progress';
import type { ReviewProposal } from '../../planning/week-review-flow/review-proposal';
import type { Message } from '../../training/finding';
import { message } from '../../training/wording';
import {
  type PlanRow,
  type PlanRowAction,
  planSections,
  planTitle,
  type ShownPlan,
  sessionName,
} from '../plan-preview/plan-rows';
import { linesOf } from '../plan-preview/words-in-lines';
import { inOneLine } from '../views/view-context';
import type { Words } from '../words';

/** What happens when a row is chosen. */
export type ReviewRowAction =
  | { readonly does: 'next' }
  /** Takes a proposal, or leaves it again. */
  | { readonly does: 'take'; readonly proposal: string }
  | Extract<PlanRowAction, { readonly does: 'tick' | 'tick-rest-days' | 'nothing' | 'write' }>
  /** Ends it: there is nothing to write. */
  | { readonly does: 'end' };

/** A row of the review, in the person's language. */
export interface ReviewRow extends Omit<PlanRow, 'action' | 'place'> {
  readonly action: ReviewRowAction;
}

/** Rows under a heading; the first ones have none. */
export interface ReviewSection {
  readonly title?: string;
  readonly rows: readonly ReviewRow[];
}

/** A review, and how far the person has come in it. */
export interface ShownReview {
  readonly flow: ReviewFlow;
  readonly progress: ReviewProgress;
  /** The next week, once it is planned. */
  readonly planned?: PlannedReview;
  readonly words: Words;
}

/** Characters that the two lines of a row show in all but a narrow window. */
const labelWidth = 66;
const detailWidth = 76;

function say({ words }: Pick<ShownReview, 'words'>, template: string, ...values: Message['values']): string {
  return words.say(message(template, ...values));
}

/** What the rows of one text have in common. */
interface RowsOfText {
  readonly id: string;
  readonly icon: string;
  readonly description?: string;
  readonly action?: ReviewRowAction;
}

/** Texts in as many rows as they take, one below the other; each begins on a line of its own. */
function rowsOfTexts(texts: readonly string[], rows: RowsOfText): readonly ReviewRow[] {
  const { id, icon, description, action = { does: 'nothing' } } = rows;
  const lines: string[] = [];
  for (const text of texts) {
    const before = lines.length;
    lines.push(...linesOf(text, (line) => ((before + line) % 2 === 0 ? labelWidth : detailWidth)));
  }
  return Array.from({ length: Math.ceil(lines.length / 2) }, (_, index): ReviewRow => {
    const detail = lines[2 * index + 1];
    return {
      id: index === 0 ? id : `${id} ${index}`,
      icon: index === 0 ? icon : 'blank',
      label: lines[2 * index] ?? '',
      ...(index === 0 && description !== undefined ? { description } : {}),
      ...(detail === undefined ? {} : { detail }),
      action,
    };
  });
}

function weekInWords(shown: Pick<ShownReview, 'words'>, week: IsoWeek): string {
  const { dates } = shown.words;
  const monday = isoDate(mondayOf(week));
  return say(shown, '{0} to {1}', dates.short(monday), dates.short(addDays(monday, 6)));
}

/** `1 of 3: what happened, Mon, Feb 23 to Sun, Mar 1`. */
export function reviewTitle(shown: ShownReview): string {
  const { flow, progress, planned, words } = shown;
  const steps = stepsOf(flow.proposals);
  const what = (): string => {
    switch (progress.step) {
      case 'facts':
        return say(shown, 'what happened, {0}', weekInWords(shown, flow.reviewed));
      case 'proposals':
        return say(shown, 'what could be done otherwise');
      case 'plan':
        return planned
          ? planTitle({ ...planned, words })
          : say(shown, 'next week, {0}', weekInWords(shown, flow.planned));
    }
  };
  return say(shown, '{0} of {1}: {2}', steps.indexOf(progress.step) + 1, steps.length, what());
}

/** What Enter and Escape do in the step. */
export function reviewHint(shown: Pick<ShownReview, 'progress' | 'words'>): string {
  switch (shown.progress.step) {
    case 'facts':
      return say(shown, 'Enter goes on; Escape leaves, and nothing is written');
    case 'proposals':
      return say(shown, 'Enter takes or leaves a proposal, or goes on; Escape writes nothing');
    case 'plan':
      return say(shown, 'Enter writes, or ticks the row; Escape writes nothing');
  }
}

function subjectInWords(shown: ShownReview, subject: FactSubject): string {
  switch (subject) {
    case 'kept':
      return say(shown, 'Kept');
    case 'body':
      return say(shown, 'Body');
    case 'measured':
      return say(shown, 'Measured');
    case 'found':
      return say(shown, 'Found');
  }
}

function nextRow(label: string, description?: string): ReviewRow {
  return {
    id: 'next',
    icon: 'arrow-right',
    label,
    ...(description === undefined ? {} : { description }),
    action: { does: 'next' },
  };
}

function factsSections(shown: ShownReview): readonly ReviewSection[] {
  const { flow, words } = shown;
  const count = flow.proposals.length;
  const next =
    count === 0
      ? say(shown, 'Next: plan the week')
      : count === 1
        ? say(shown, 'Next: 1 proposal')
        : say(shown, 'Next: {0} proposals', count);
  return [
    {
      rows: [
        nextRow(next),
        ...(flow.review.notClosed
          ? rowsOfTexts(
              [
                say(
                  shown,
                  'The facts are not written: {0} has the line that begins them, and not the one that ends them.',
                  flow.review.note,
                ),
              ],
              { id: 'not closed', icon: 'warning' },
            )
          : []),
        ...rowsOfTexts(flow.pain.map(words.say), { id: 'pain', icon: 'warning' }),
      ],
    },
    ...flow.review.sections.map(({ subject, lines }) => ({
      title: subjectInWords(shown, subject),
      rows: lines.flatMap((line, index) =>
        rowsOfTexts([line], { id: `${subject} ${index}`, icon: 'circle-small-filled' }),
      ),
    })),
  ];
}

function proposalRows(shown: ShownReview, proposal: ReviewProposal): readonly ReviewRow[] {
  const { words, progress } = shown;
  const { id, title, why, cautions } = proposal;
  const isTaken = progress.taken.has(id);
  return [
    ...rowsOfTexts([words.say(title), words.say(why)], {
      id: `proposal ${id}`,
      icon: isTaken ? 'pass-filled' : 'circle-large-outline',
      description: isTaken ? say(shown, 'taken') : say(shown, 'left'),
      action: { does: 'take', proposal: id },
    }),
    ...rowsOfTexts(cautions.map(words.say), { id: `cautions ${id}`, icon: 'warning' }),
  ];
}

function proposalSections(shown: ShownReview): readonly ReviewSection[] {
  const { flow, progress } = shown;
  const all = flow.proposals.length;
  return [
    {
      rows: [
        nextRow(
          say(shown, 'Next: plan the week'),
          progress.taken.size === 0
            ? say(shown, 'all proposals left')
            : say(shown, '{0} of {1} proposals taken', progress.taken.size, all),
        ),
      ],
    },
    {
      rows: flow.proposals.flatMap((proposal) => proposalRows(shown, proposal)),
    },
  ];
}

function writeLabel(shown: ShownReview, sessions: number): string {
  const { flow, planned } = shown;
  const taken = planned?.reviewed.taken.length ?? 0;
  const pieces = [
    flow.review.changes.length > 0 ? say(shown, 'the facts of {0}', flow.reviewed) : undefined,
    sessions === 0
      ? undefined
      : sessions === 1
        ? say(shown, '1 session')
        : say(shown, '{0} sessions', sessions),
    taken === 0 ? undefined : taken === 1 ? say(shown, '1 proposal') : say(shown, '{0} proposals', taken),
  ];
  const what = inOneLine(...pieces);
  return what === '' ? say(shown, 'Write the notes') : say(shown, 'Write {0}', what);
}

function notesInWords(shown: ShownReview, changes: readonly NoteChange[]): string {
  return changes.length === 1
    ? say(shown, 'into 1 note, one undo step')
    : say(shown, 'into {0} notes, one undo step', changes.length);
}

function writeRow(shown: ShownReview, planned: PlannedReview, warning: string | undefined): ReviewRow {
  const { unticked, withRestDays } = shown.progress;
  const sessions = planned.plan.placed.filter((session) => !unticked.has(sessionName(session)));
  const changes = reviewChanges(planned, { sessions, restDays: withRestDays });
  if (changes.length === 0)
    return {
      id: 'write',
      icon: 'check',
      label: say(shown, 'There is nothing to write: the notes hold all of it'),
      action: { does: 'end' },
    };
  return {
    id: 'write',
    icon: 'check-all',
    label: writeLabel(shown, sessions.length),
    description: notesInWords(shown, changes),
    ...(warning === undefined ? {} : { detail: warning }),
    action: { does: 'write', changes },
  };
}

/** In a review nothing is written before the end, and nobody is led away: rows that would do so are for reading. */
function readOnly({ place: _, action, ...row }: PlanRow): ReviewRow {
  switch (action.does) {
    case 'tick':
    case 'tick-rest-days':
      return { ...row, action };
    default: {
      const { detail, ...rest } = row;
      // What a change or an opened line would do stands in its detail.
      const isPromise = action.does === 'change' || row.id.startsWith('remedy');
      return {
        ...rest,
        ...(detail === undefined || isPromise ? {} : { detail }),
        action: { does: 'nothing' },
      };
    }
  }
}

function takenRows(shown: ShownReview, { reviewed }: PlannedReview): readonly ReviewRow[] {
  return reviewed.taken.flatMap(({ proposal, title }) =>
    rowsOfTexts(
      title
        ? [shown.words.say(title)]
        : [say(shown, 'No longer needed: {0}', shown.words.say(proposal.title))],
      { id: `taken ${proposal.id}`, icon: title ? 'check' : 'circle-slash' },
    ),
  );
}

function planStepSections(shown: ShownReview): readonly ReviewSection[] {
  const { planned, progress, words } = shown;
  if (!planned) return [];
  const { unticked, withRestDays } = progress;
  const plan: ShownPlan = { ...planned, unticked, withRestDays, words };
  const [first, ...others] = planSections(plan);
  const warning = first?.rows.find(({ id }) => id === 'write')?.detail;
  const conflict = (first?.title === undefined ? first?.rows : []) ?? [];
  const rest = first?.title === undefined ? others : [first, ...others];
  return [
    {
      rows: [...conflict.filter(({ id }) => id !== 'write').map(readOnly), writeRow(shown, planned, warning)],
    },
    { title: say(shown, 'Taken'), rows: takenRows(shown, planned) },
    ...rest.map(({ title, rows }) => ({
      ...(title === undefined ? {} : { title }),
      rows: rows.map(readOnly),
    })),
  ];
}

/** The rows of the step that the person has come to. */
export function reviewSections(shown: ShownReview): readonly ReviewSection[] {
  const sections = { facts: factsSections, proposals: proposalSections, plan: planStepSections };
  return sections[shown.progress.step](shown).filter(({ rows }) => rows.length > 0);
}
