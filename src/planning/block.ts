import type { Journal, WrittenBlock } from '../journal/journal';
import type { NotePath } from '../journal/note';
import type { BlockRow } from '../notation/entries';
import { dayNumber } from '../notation/time/iso-date';
import { type IsoWeek, isoWeekOf, isoWeekOfDay, mondayOf, weeksInRow } from '../notation/time/iso-week';
import type { Message } from '../training/finding';
import { type CheckContext, checkContext } from '../training/week-under-check';
import { type BlockWeekFigures, blockFigures } from './block/block-figures';
import { blockNoteChange } from './block/block-note';
import { type OutlineOptions, outlineBlock } from './block/block-outline';
import type { BlockSettings } from './block/block-settings';
import { blockCautions, blockWarnings, outlineWarnings } from './block/block-warnings';
import { type FittedSession, fitSessions } from './block/fit-sessions';
import type { VolumeBefore } from './block/volume-before';
import { DraftJournal } from './draft-journal';
import type { NoteChange } from './note-change';
import {
  changesFor,
  type LeftOutSession,
  type PlannedSession,
  type PlanWeeksOptions,
  planWeeksSteps,
  type WeeksPlanStatus,
} from './plan-weeks';
import { weekNotes } from './plan-weeks/week-notes';
import { finish, inSlices, type SliceOptions, type SliceProgress, type Steps } from './solver/slices';

/** How a block is planned. */
export interface BlockPlanOptions
  extends Pick<PlanWeeksOptions, 'today' | 'zone' | 'comfortable' | 'timeOfDay' | 'nodeLimit'> {
  readonly settings: BlockSettings;
}

/** How a new block is planned. */
export type NewBlockOptions = BlockPlanOptions & Omit<OutlineOptions, 'settings'>;

/** A week of a block, ready to be shown. */
export interface BlockPlanWeek {
  readonly row: BlockRow;
  readonly figures: BlockWeekFigures;
  /** Sessions that the week gains, in order of day and time. */
  readonly placed: readonly PlannedSession[];
  /** Planned sessions that become as the table says. */
  readonly fitted: readonly FittedSession[];
  readonly leftOut: readonly LeftOutSession[];
  /** Whether a session stood in it before, so that its notes are written already. */
  readonly isWritten: boolean;
}

/** A block, ready to be shown and written. */
export interface BlockPlan {
  /** The note with the table. */
  readonly note: NotePath;
  /** The change that writes that note, for a new block. */
  readonly newNote?: Extract<NoteChange, { kind: 'create' }>;
  readonly before: VolumeBefore;
  readonly weeks: readonly BlockPlanWeek[];
  readonly status: WeeksPlanStatus;
  /** Whether no plan of the weeks is better, everything that is left out included. */
  readonly isProven: boolean;
  readonly warnings: readonly Message[];
  /** To be shown with the plan. */
  readonly cautions: readonly Message[];
}

/** Thrown when a block is laid into weeks of which another has a row. */
export class BlockOverlapError extends Error {
  override readonly name = 'BlockOverlapError';

  constructor(
    readonly block: WrittenBlock,
    readonly week: IsoWeek,
  ) {
    super(`${block.note} has a row of ${week} already.`);
  }
}

/** The weeks from `first` to `last`. */
function weeksFrom(first: IsoWeek, last: IsoWeek): readonly IsoWeek[] {
  return weeksInRow(first, (mondayOf(last) - mondayOf(first)) / 7 + 1);
}

function weekOf({ date }: PlannedSession): IsoWeek {
  return isoWeekOfDay(dayNumber(date));
}

/** The blocks that are not over, those with the earliest week first. */
export function openBlocks(
  { plan }: Journal,
  options: Pick<BlockPlanOptions, 'today'>,
): readonly WrittenBlock[] {
  const current = isoWeekOf(options.today);
  const firstOf = ({ rows }: WrittenBlock) => rows[0]?.week.value ?? '';
  return plan.blocks
    .filter(({ rows }) => rows.some(({ week }) => week.value >= current))
    .sort((one, other) => (firstOf(one) < firstOf(other) ? -1 : 1));
}

/** Plans what the weeks of a block's table still lack, in a draft in which its note stands. */
function* planRows(
  journal: Journal,
  draft: DraftJournal,
  block: WrittenBlock,
  options: BlockPlanOptions,
): Steps<Omit<BlockPlan, 'note' | 'cautions'>> {
  const { settings, ...check } = options;
  const original: CheckContext = checkContext(journal, check);
  const current = isoWeekOf(options.today);
  const rows = block.rows.filter(({ week }) => week.value >= current);
  const fitted = new Map(
    rows.map(({ week }) => [week.value, fitSessions(draft, week.value, check)] as const),
  );
  yield 0;
  const [first, last] = [rows[0]?.week.value, rows.at(-1)?.week.value];
  const context = checkContext(draft.journal, check);
  const figures = blockFigures(context, block, settings);
  const plan =
    first === undefined || last === undefined
      ? undefined
      : yield* planWeeksSteps(draft.journal, { ...check, weeks: weeksFrom(first, last), explain: false });
  return {
    before: figures.before,
    status: plan?.status ?? 'proven best',
    isProven: plan?.isProven ?? true,
    weeks: block.rows.flatMap((row, index): readonly BlockPlanWeek[] => {
      const week = row.week.value;
      const own = figures.weeks[index];
      return own
        ? [
            {
              row,
              figures: own,
              placed: plan?.placed.filter((session) => weekOf(session) === week) ?? [],
              fitted: fitted.get(week)?.fitted ?? [],
              leftOut: plan?.leftOut.filter((session) => session.week === week) ?? [],
              isWritten: original.weeks(week).sessions.length > 0,
            },
          ]
        : [];
    }),
    warnings: [
      ...blockWarnings(context, block, figures, settings),
      ...[...fitted.values()].flatMap(({ kept }) => kept),
    ],
  };
}

/** The steps of {@link planNewBlock}. */
export function* planNewBlockSteps(journal: Journal, options: NewBlockOptions): Steps<BlockPlan> {
  const { first, count, event, top, ...planning } = options;
  const { settings, ...check } = planning;
  const context = checkContext(journal, check);
  const outline = outlineBlock(context, { first, count, ...(event ? { event } : {}), top, settings });
  for (const block of journal.plan.blocks) {
    const taken = block.rows.find(({ week }) => outline.weeks.some((one) => one.week === week.value));
    if (taken) throw new BlockOverlapError(block, taken.week.value);
  }
  const newNote = blockNoteChange(journal, outline);
  const draft = new DraftJournal(journal);
  draft.write([newNote]);
  const block = draft.journal.plan.blocks.find(({ note }) => note === newNote.note);
  if (!block) throw new RangeError(`The table of ${newNote.note} cannot be read back.`);
  const planned = yield* planRows(journal, draft, block, planning);
  return {
    ...planned,
    note: newNote.note,
    newNote,
    warnings: [...outlineWarnings(context, outline, top), ...planned.warnings],
    cautions: blockCautions,
  };
}

/**
 * Lays out a block: the volume of each week and kind by {@link outlineBlock}, and the sessions of its weeks by the
 * planner, so that no rule is broken. Its note and the day notes of chosen weeks are written by {@link blockChanges}.
 * @throws BlockOverlapError when another block has a row of one of its weeks.
 */
export function planNewBlock(journal: Journal, options: NewBlockOptions): BlockPlan {
  return finish(planNewBlockSteps(journal, options));
}

/** The steps of {@link planBlockAgain}. */
export function* planBlockAgainSteps(
  journal: Journal,
  block: WrittenBlock,
  options: BlockPlanOptions,
): Steps<BlockPlan> {
  const planned = yield* planRows(journal, new DraftJournal(journal), block, options);
  return { ...planned, note: block.note, cautions: blockCautions };
}

/**
 * Plans a block again by its table as it is now, from today on: planned sessions become as many and as long as it says,
 * and what its weeks lack is added. What is done, agreed with somebody or written by hand stays, and so do weeks that
 * are over. Planning again after the changes of a proven plan are made changes nothing.
 */
export function planBlockAgain(journal: Journal, block: WrittenBlock, options: BlockPlanOptions): BlockPlan {
  return finish(planBlockAgainSteps(journal, block, options));
}

/** Whether a week of a plan has something to write into its day notes. */
export function hasChanges({ placed, fitted }: BlockPlanWeek): boolean {
  return placed.length > 0 || fitted.length > 0;
}

/**
 * The changes that write a block: its note when it is new, and the day notes of the chosen weeks. A week without any
 * note yet gets one for each day; in one that is written, only what changes is.
 * @param journal The journal that the plan was made for.
 */
export function blockChanges(
  journal: Journal,
  plan: BlockPlan,
  weeks: readonly IsoWeek[],
  options: BlockPlanOptions,
): readonly NoteChange[] {
  const { settings: _, ...check } = options;
  const draft = new DraftJournal(journal);
  if (plan.newNote) draft.write([plan.newNote]);
  for (const { row, placed, isWritten } of plan.weeks) {
    const week = row.week.value;
    if (!weeks.includes(week)) continue;
    fitSessions(draft, week, check);
    const { standing } = checkContext(draft.journal, check).weeks(week);
    draft.write(
      isWritten
        ? weekNotes(draft.journal, [], placed, standing)
        : changesFor(draft.journal, { ...check, weeks: [week] }, placed),
    );
  }
  return draft.changes;
}

/** Steps in slices, between which others may work; `'stopped'` when they were stopped. */
export function* blockInSlices(
  steps: Steps<BlockPlan>,
  options: SliceOptions,
): Generator<SliceProgress, BlockPlan | 'stopped', void> {
  return (yield* inSlices(steps, options)) ?? 'stopped';
}
