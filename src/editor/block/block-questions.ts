import * as vscode from 'vscode';
import type { Journal, JournalEvent } from '../../journal/journal';
import { dayNumber, type IsoDate, isoDate } from '../../notation/time/iso-date';
import {
  addWeeks,
  type IsoWeek,
  isoWeekOf,
  isoWeekOfDay,
  mondayOf,
  weeksInRow,
} from '../../notation/time/iso-week';
import { openBlocks } from '../../planning/block';
import { askedByKind } from '../../planning/block/block-outline';
import { eventsOfBlock } from '../../planning/block/block-roles';
import { fewestBlockWeeks, mostBlockWeeks } from '../../planning/block/block-settings';
import { totalOf, volumeBefore } from '../../planning/block/volume-before';
import { checkContext } from '../../training/week-under-check';
import { minutesInWords } from '../../training/wording';
import { editorWords } from '../editor-words';
import type { OpenJournal } from '../open-journal';

/** The weeks of a block, and the event that it leads to. */
export interface AskedWeeks {
  readonly first: IsoWeek;
  readonly count: number;
  readonly event?: JournalEvent;
}

/** How many of the coming weeks a block can begin in. */
const firstWeeks = 12;

function spanWords(first: IsoWeek, count: number): string {
  return vscode.l10n.t('{0} to {1}', first, addWeeks(first, count - 1));
}

/** The week after this one, or after the last one that a block has laid out. */
export function firstFreeWeek({ plan }: Journal, today: IsoDate): IsoWeek {
  const last = plan.blocks.flatMap(({ rows }) => rows.map(({ week }) => week.value)).sort();
  const next = addWeeks(isoWeekOf(today), 1);
  const after = last.length === 0 ? next : addWeeks(last.at(-1) ?? next, 1);
  return after > next ? after : next;
}

function eventWords({ name, date }: JournalEvent): string {
  return name === '' ? date : `${name}, ${date}`;
}

interface WeeksItem extends vscode.QuickPickItem {
  readonly asked?: AskedWeeks | 'again' | 'other first week';
}

function weeksItems(journal: Journal, first: IsoWeek): readonly WeeksItem[] {
  const most = weeksInRow(first, mostBlockWeeks);
  const upTo = eventsOfBlock(journal.plan, most).flatMap((event): readonly WeeksItem[] => {
    const count = most.indexOf(isoWeekOfDay(dayNumber(event.date))) + 1;
    return count < fewestBlockWeeks
      ? []
      : [
          {
            label: vscode.l10n.t('{0} weeks, up to {1}', count, eventWords(event)),
            description: vscode.l10n.t('{0}, with a taper before it', spanWords(first, count)),
            asked: { first, count, event },
          },
        ];
  });
  const counts = Array.from(
    { length: mostBlockWeeks - fewestBlockWeeks + 1 },
    (_, index) => mostBlockWeeks - index,
  );
  return [
    ...upTo,
    ...counts.map(
      (count): WeeksItem => ({
        label: vscode.l10n.t('{0} weeks', count),
        description: spanWords(first, count),
        asked: { first, count },
      }),
    ),
    {
      label: vscode.l10n.t('Another first week…'),
      description: vscode.l10n.t('now {0}', first),
      asked: 'other first week',
    },
  ];
}

async function askFirst(today: IsoDate): Promise<IsoWeek | undefined> {
  const { dates } = editorWords();
  const current = isoWeekOf(today);
  const picked = await vscode.window.showQuickPick(
    weeksInRow(current, firstWeeks).map((week) => ({
      label: week,
      description: dates.weekdayAndDay(isoDate(mondayOf(week)), today),
      week,
    })),
    { title: vscode.l10n.t('A block of weeks: which week is the first?') },
  );
  return picked?.week;
}

/** A taper before an event, where the weeks were chosen by their number and hold one. */
async function askEvent(journal: Journal, { first, count }: AskedWeeks): Promise<AskedWeeks | undefined> {
  const events = eventsOfBlock(journal.plan, weeksInRow(first, count));
  if (events.length === 0) return { first, count };
  const picked = await vscode.window.showQuickPick(
    [
      ...events.map((event) => ({
        label: vscode.l10n.t('A taper before {0}', eventWords(event)),
        description: vscode.l10n.t('less volume, the same sessions and effort'),
        asked: { first, count, event } as AskedWeeks,
      })),
      { label: vscode.l10n.t('No taper'), description: '', asked: { first, count } as AskedWeeks },
    ],
    { title: vscode.l10n.t('A block of weeks: does it lead to an event?') },
  );
  return picked?.asked;
}

/** Asks for the weeks of a block; `'again'` when the one that stands is to be planned again. */
export async function askWeeks(open: OpenJournal): Promise<AskedWeeks | 'again' | undefined> {
  const { journal } = open;
  const today = open.today();
  const [standing] = openBlocks(journal, { today });
  for (let first: IsoWeek | undefined = firstFreeWeek(journal, today); first !== undefined; ) {
    const items: readonly WeeksItem[] = [
      ...(standing
        ? [
            {
              label: vscode.l10n.t('Plan the block that stands again'),
              description: vscode.l10n.t('{0}, by its table as it is now', standing.note),
              asked: 'again',
            } as const,
          ]
        : []),
      ...weeksItems(journal, first),
    ];
    const picked = await vscode.window.showQuickPick([...items], {
      title: vscode.l10n.t('A block of weeks: how many? Eight to twelve are usual'),
    });
    if (picked?.asked !== 'other first week') {
      const asked = picked?.asked;
      return asked === undefined || asked === 'again' || asked.event ? asked : askEvent(journal, asked);
    }
    first = await askFirst(today);
  }
  return undefined;
}

/** What is wanted at the top, in percent of what the needs ask. */
export async function askTop(open: OpenJournal, { first }: AskedWeeks): Promise<number | undefined> {
  const { journal } = open;
  const asked = askedByKind(journal.plan, first);
  const minutes = [...asked.values()].reduce((sum, one) => sum + one.minutes, 0);
  if (minutes === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t(
        'No open goal asks for sessions in {0}. Write a #need first: the block is laid out from it.',
        first,
      ),
    );
    return undefined;
  }
  const context = checkContext(journal, { today: open.today(), zone: open.zone() });
  const before = volumeBefore(context, first, [...asked.keys()]);
  const lately = Math.round(totalOf(before.minutes));
  const picked = await vscode.window.showQuickPick(
    [100, 110, 120, 130].map((top) => ({
      label:
        top === 100
          ? vscode.l10n.t('What your goals ask: {0} a week', minutesInWords(minutes))
          : vscode.l10n.t('{0} % more: {1} a week', top - 100, minutesInWords((minutes * top) / 100)),
      description:
        lately === 0
          ? vscode.l10n.t('the notes tell of none before')
          : vscode.l10n.t('{0} a week of late', minutesInWords(lately)),
      top,
    })),
    { title: vscode.l10n.t('A block of weeks: how much at the top, in steps within your limit?') },
  );
  return picked?.top;
}
