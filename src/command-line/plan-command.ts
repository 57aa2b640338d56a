import type { NotePath } from '../journal/note';
import type { IsoWeek } from '../notation/time/iso-week';
import type { NoteChange } from '../planning/note-change';
import { planWeeks, type WeeksPlan } from '../planning/plan-weeks';
import type { NamedLine } from '../planning/plan-weeks/weeks-plan';
import { learnedGaps } from '../planning/week-problem/comfortable-gaps';
import { fillMessage } from '../training/finding';
import { checkContext } from '../training/week-under-check';
import { type PlanOptions, plannedWeeks } from './plan-arguments';
import { printedPlace } from './printed-place';
import { printedSession } from './printed-session';
import { type JournalsToRead, type JournalToRead, severalJournals } from './read-journals';
import { terminalJson, terminalLine } from './terminal-text';

/** What the machine can do with planned changes. */
export interface PlanSurroundings {
  /**
   * Makes all `changes` of notes below `folder`; returns why not, in one line, with nothing written when a note reads
   * otherwise than it was read.
   */
  writeNotes(folder: string, changes: readonly NoteChange[]): string | undefined;
}

/** What to print, or why there is nothing. */
export type PlanAnswer = { readonly text: string; readonly code: 0 | 1 } | { readonly refusal: string };

function lineOf(one: JournalToRead, { note, range, text }: NamedLine) {
  const { file, line } = printedPlace(one.journal, note, range);
  return { file, line, text };
}

function reportOf(one: JournalToRead, plan: WeeksPlan, written: readonly NotePath[] | undefined) {
  return {
    today: one.today,
    weeks: plan.weeks,
    status: plan.status,
    sessions: plan.placed.map(printedSession),
    leftOut: plan.leftOut.map(({ week, goal, kind, why }) => ({
      week,
      ...(goal === undefined ? {} : { goal }),
      kind,
      why: fillMessage(why),
    })),
    differences: plan.differences.map(fillMessage),
    ...(plan.conflict ? { why: fillMessage(plan.conflict.sentence) } : {}),
    conflict: plan.conflict?.lines.map((line) => lineOf(one, line)) ?? [],
    remedies: plan.remedies.map(({ title, line }) => ({
      title: fillMessage(title),
      ...(line ? lineOf(one, line) : {}),
    })),
    ...(written ? { written } : {}),
  };
}

function planWords(one: JournalToRead, plan: WeeksPlan, written: readonly NotePath[] | undefined): string {
  const report = reportOf(one, plan, written);
  const weeks: readonly IsoWeek[] = plan.weeks;
  const span = weeks.length === 1 ? `${weeks[0]}` : `${weeks[0]} to ${weeks.at(-1)}`;
  const lines = [
    `${span}: ${plan.status}, ${plan.placed.length} placed, ${plan.leftOut.length} left out`,
    ...report.sessions.map((session) =>
      [
        `  ${session.date}`,
        ...(session.start === undefined ? [] : [session.start]),
        `${session.minutes} min`,
        session.kind,
        ...(session.for === undefined ? [] : [`for ${session.for}`]),
        `(${session.reason})`,
      ].join(' '),
    ),
    ...report.leftOut.map(
      ({ week, kind, goal, why }) =>
        `  left out in ${week}: ${kind}${goal === undefined ? '' : ` for ${goal}`}. ${why}`,
    ),
    ...(report.why === undefined ? [] : [report.why]),
    ...report.conflict.map(({ file, line, text }) => `  ${file}:${line} ${text}`),
    ...report.remedies.map(({ title }) => `  could help: ${title}`),
    ...(written ? [`${written.length} ${written.length === 1 ? 'note' : 'notes'} written`] : []),
  ];
  return `${lines.map(terminalLine).join('\n')}\n`;
}

/** Plans the weeks of one journal, and writes its notes when that is asked for. */
export function planAnswer(
  options: PlanOptions,
  { journals }: JournalsToRead,
  surroundings: PlanSurroundings,
): PlanAnswer {
  const [only, another] = journals;
  if (!only || another) {
    return { refusal: `A plan is for one journal, and ${severalJournals(options.folder, journals)}.` };
  }
  const { journal, today, zone } = only;
  const plan = planWeeks(journal, {
    today,
    zone,
    weeks: plannedWeeks(options, today),
    comfortable: learnedGaps(checkContext(journal, { today, zone })),
  });
  if (options.write) {
    const refusal = surroundings.writeNotes(options.folder, plan.changes);
    if (refusal !== undefined) return { refusal };
  }
  const written = options.write ? plan.changes.map(({ note }) => note) : undefined;
  const text = options.json
    ? `${terminalJson(reportOf(only, plan, written))}\n`
    : planWords(only, plan, written);
  return { text, code: plan.leftOut.length === 0 ? 0 : 1 };
}
