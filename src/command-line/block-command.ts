import type { Journal, JournalEvent } from '../journal/journal';
import type { NotePath } from '../journal/note';
import { addWeeks, type IsoWeek, isoWeekOf, weeksInRow } from '../notation/time/iso-week';
import {
  BlockOverlapError,
  type BlockPlan,
  type BlockPlanOptions,
  type BlockPlanWeek,
  blockChanges,
  hasChanges,
  openBlocks,
  planBlockAgain,
  planNewBlock,
} from '../planning/block';
import { eventsOfBlock } from '../planning/block/block-roles';
import { defaultBlockSettings } from '../planning/block/block-settings';
import { learnedGaps } from '../planning/week-problem/comfortable-gaps';
import { fillMessage } from '../training/finding';
import { checkContext } from '../training/week-under-check';
import type { BlockOptions } from './block-arguments';
import type { PlanAnswer, PlanSurroundings } from './plan-command';
import { printedSession } from './printed-session';
import { type JournalsToRead, type JournalToRead, severalJournals } from './read-journals';
import { terminalJson, terminalLine } from './terminal-text';

/** The event that was named, or in one line which there are. */
function eventNamed(
  { plan }: Journal,
  weeks: readonly IsoWeek[],
  named: string,
): JournalEvent | { readonly refusal: string } {
  const events = eventsOfBlock(plan, weeks);
  const wanted = named.toLowerCase();
  const event = events.find(({ date, name }) => date === named || name.toLowerCase() === wanted);
  if (event) return event;
  const all = events.map(({ name, date }) => `"${name}" on ${date}`).join(', ');
  return {
    refusal: `No event "${named}" in these weeks or the one behind them; ${all === '' ? 'there is none' : `there is ${all}`}.`,
  };
}

function planned(
  { journal, today }: JournalToRead,
  options: BlockOptions,
  planning: BlockPlanOptions,
): BlockPlan | { readonly refusal: string } {
  if (options.again) {
    const [block] = openBlocks(journal, planning);
    if (!block)
      return { refusal: 'There is no block that is not over yet: no note with #block and a table.' };
    return planBlockAgain(journal, block, planning);
  }
  const first = options.first ?? addWeeks(isoWeekOf(today), 1);
  if (first < isoWeekOf(today)) return { refusal: `${first} is over.` };
  const weeks = weeksInRow(first, options.count);
  const event = options.event === undefined ? undefined : eventNamed(journal, weeks, options.event);
  if (event && 'refusal' in event) return event;
  try {
    const { count, top } = options;
    return planNewBlock(journal, { ...planning, first, count, top, ...(event ? { event } : {}) });
  } catch (error) {
    if (!(error instanceof BlockOverlapError)) throw error;
    return {
      refusal: `${error.block.note} has a row of ${error.week} already; --again plans that block again.`,
    };
  }
}

function weekReport({ row, figures, placed, fitted, leftOut }: BlockPlanWeek) {
  const { week, role, isOver, minutes, byKind, changePercent } = figures;
  return {
    week,
    role,
    ...(isOver ? { over: true } : {}),
    minutes,
    byKind: Object.fromEntries(byKind),
    ...(changePercent === undefined ? {} : { changePercent: Math.round(changePercent) }),
    ...(row.words ? { notes: row.words.value } : {}),
    sessions: placed.map(printedSession),
    changed: fitted,
    leftOut: leftOut.map(({ goal, kind, why }) => ({
      ...(goal === undefined ? {} : { goal }),
      kind,
      why: fillMessage(why),
    })),
  };
}

function reportOf({ today }: JournalToRead, plan: BlockPlan, written: readonly NotePath[] | undefined) {
  return {
    today,
    note: plan.note,
    status: plan.status,
    before: { weeks: plan.before.weeks, minutes: Object.fromEntries(plan.before.minutes) },
    weeks: plan.weeks.map(weekReport),
    warnings: plan.warnings.map(fillMessage),
    cautions: plan.cautions.map(fillMessage),
    ...(written ? { written } : {}),
  };
}

function change(percent: number | undefined): string {
  return percent === undefined ? '' : `, ${percent > 0 ? '+' : ''}${percent} %`;
}

function blockWords(report: ReturnType<typeof reportOf>): string {
  const lines = [
    `${report.note}: ${report.weeks.length} weeks, ${report.status}`,
    ...report.weeks.flatMap((one) => [
      `  ${one.week} ${one.role}: ${one.minutes} min${change(one.changePercent)}${'over' in one ? ', over' : ''} (${Object.entries(
        one.byKind,
      )
        .map(([kind, minutes]) => `${kind} ${minutes}`)
        .join(', ')})`,
      ...one.sessions.map(({ date, start, minutes, kind }) =>
        ['   ', date, ...(start === undefined ? [] : [start]), `${minutes} min`, kind].join(' '),
      ),
      ...one.changed.map(({ date, kind, from, to }) =>
        to === undefined
          ? `    ${date} ${kind}: taken out`
          : `    ${date} ${kind}: ${from} min becomes ${to} min`,
      ),
      ...one.leftOut.map(({ kind, why }) => `    left out: ${kind}. ${why}`),
    ]),
    ...report.warnings.map((warning) => `note: ${warning}.`),
    ...report.cautions,
    ...(report.written
      ? [`${report.written.length} ${report.written.length === 1 ? 'note' : 'notes'} written`]
      : []),
  ];
  return `${lines.map(terminalLine).join('\n')}\n`;
}

/** The weeks whose day notes are written: all of a new block on request, and those that change of one planned again. */
function weeksToWrite(plan: BlockPlan, { days }: BlockOptions): readonly IsoWeek[] {
  return plan.weeks
    .filter((week) => hasChanges(week) && (days || (!plan.newNote && week.isWritten)))
    .map(({ row }) => row.week.value);
}

/** Lays out a block in one journal, or plans the one that stands again, and writes it when that is asked for. */
export function blockAnswer(
  options: BlockOptions,
  { journals }: JournalsToRead,
  surroundings: PlanSurroundings,
): PlanAnswer {
  const [only, another] = journals;
  if (!only || another)
    return { refusal: `A block is for one journal, and ${severalJournals(options.folder, journals)}.` };
  const { journal, today, zone } = only;
  const planning: BlockPlanOptions = {
    today,
    zone,
    comfortable: learnedGaps(checkContext(journal, { today, zone })),
    settings: { ...defaultBlockSettings, mostIncrease: options.limit, lighterEvery: options.lighter },
  };
  const plan = planned(only, options, planning);
  if ('refusal' in plan) return plan;
  const changes = options.write ? blockChanges(journal, plan, weeksToWrite(plan, options), planning) : [];
  if (options.write) {
    const refusal = surroundings.writeNotes(options.folder, changes);
    if (refusal !== undefined) return { refusal };
  }
  const report = reportOf(only, plan, options.write ? changes.map(({ note }) => note) : undefined);
  const text = options.json ? `${terminalJson(report)}\n` : blockWords(report);
  return { text, code: plan.weeks.every(({ leftOut }) => leftOut.length === 0) ? 0 : 1 };
}
