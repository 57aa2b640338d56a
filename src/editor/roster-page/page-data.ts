import { joinPath } from '../../journal/note-path';
import {
  type FromRosterPage,
  type RosterLink,
  type RosterPageData,
  type RosterPageState,
  type RosterRowView,
  rosterActs,
} from '../../pages/roster-page-data';
import type { Finding, Severity } from '../../training/finding';
import type { NextDate } from '../../training/roster/athlete-facts';
import type { KeptFacts } from '../../training/roster/kept-facts';
import { type RosterRow, rosterOf } from '../../training/roster/roster';
import { usableLanguage } from '../date-words';
import type { OpenJournal } from '../open-journal';
import { commonTexts } from '../page/common-texts';
import { type PageContext, pagePlace, say, sayWithDays } from '../page/page-context';
import { isPlace, isRecord } from '../page/read-message';
import type { Words } from '../words';

/** What the page needs of a journal that is open. */
export type JournalOfRoster = Pick<OpenJournal, 'id' | 'title' | 'journal' | 'today' | 'zone'> & {
  readonly settings: { readonly findings: { readonly enabled: boolean } };
};

/** What the rows are made from. */
export interface RosterSource {
  readonly journals: readonly JournalOfRoster[];
  readonly kept: KeptFacts;
  /** The findings that are shown of a journal. */
  readonly findingsOf: (open: JournalOfRoster) => readonly Finding[];
}

function daysAgo(days: number, context: PageContext): string {
  if (days === 0) return say(context, 'today');
  return days === 1 ? say(context, 'yesterday') : say(context, '{0} days ago', days);
}

function daysAhead(days: number, context: PageContext): string {
  if (days === 0) return say(context, 'today');
  return days === 1 ? say(context, 'tomorrow') : say(context, 'in {0} days', days);
}

function nextLink(next: NextDate | undefined, context: PageContext): RosterLink {
  if (!next) return { words: say(context, 'none') };
  const { words, today } = context;
  const day = words.dates.day(next.date, today);
  return {
    words: say(context, '{0}: {1}, {2}', next.name, day, daysAhead(next.days, context)),
    place: pagePlace(next.place),
  };
}

function countWords(severity: Severity, count: number, context: PageContext): string {
  switch (severity) {
    case 'error':
      return count === 1 ? say(context, '1 error') : say(context, '{0} errors', count);
    case 'warning':
      return count === 1 ? say(context, '1 warning') : say(context, '{0} warnings', count);
    case 'information':
      return say(context, '{0} for information', count);
  }
}

function findingLinks(findings: readonly Finding[], context: PageContext): RosterRowView['findings'] {
  return (['error', 'warning', 'information'] as const).flatMap((severity) => {
    const [first, ...more] = findings.filter((one) => one.severity === severity);
    return first
      ? [{ severity, words: countWords(severity, more.length + 1, context), place: pagePlace(first) }]
      : [];
  });
}

function slippingLink({ findings: { slipping } }: RosterRow, context: PageContext): RosterLink {
  if (!slipping) return { words: say(context, 'no') };
  const { done = 0, planned = 0, usualShare = 0 } = slipping.facts;
  const usual = Math.round(100 * Number(usualShare));
  return {
    words: say(context, '{0} of {1}, usually {2} %', done, planned, usual),
    place: pagePlace(slipping),
  };
}

function rowView(
  row: RosterRow,
  open: JournalOfRoster,
  findings: readonly Finding[],
  context: PageContext,
): RosterRowView {
  const { lastLog, week, pains, next, goalsPast } = row.facts;
  const first = open.journal.note(joinPath(open.journal.root, 'journal.md'));
  const place = lastLog?.place ?? (first && { note: first.path, range: { start: 0, end: 0 } });
  const behind = [...goalsPast, ...row.findings.behind];
  return {
    journal: open.id,
    name: { words: row.name, ...(place ? { place: pagePlace(place) } : {}) },
    reasons: row.reasons.map(({ kind, message, place: where }) => ({
      mark: kind,
      words: sayWithDays(context, message),
      ...(where ? { place: pagePlace(where) } : {}),
    })),
    lastLog: lastLog
      ? { words: daysAgo(lastLog.daysAgo, context), place: pagePlace(lastLog.place) }
      : { words: say(context, 'nothing logged yet') },
    week: {
      done: week.done,
      planned: week.planned,
      words:
        week.planned === 0
          ? say(context, 'no sessions')
          : say(context, '{0} of {1} done', week.done, week.planned),
    },
    findings: open.settings.findings.enabled
      ? findingLinks(findings, context)
      : [{ severity: 'information', words: say(context, 'turned off') }],
    slipping: slippingLink(row, context),
    pains: pains.map(({ region, rating, place: where }) => ({
      words: rating === undefined ? region : `${region} ${rating}/10`,
      place: pagePlace(where),
    })),
    next: nextLink(next, context),
    goalsBehind: behind.map(({ goal, title }) => ({ goal, words: title })),
    commentLabel: say(context, 'Comment for {0}', row.name),
  };
}

function sentences(rows: readonly RosterRow[], context: PageContext): readonly string[] {
  const needing = rows.filter(({ reasons }) => reasons.length > 0).length;
  if (rows.length === 0) return [];
  if (needing === 0) return [say(context, 'Nothing asks for a word: {0} of {0} are fine.', rows.length)];
  return [
    needing === 1
      ? say(context, '1 of {1} may need a word, and comes first.', needing, rows.length)
      : say(context, '{0} of {1} may need a word, and come first.', needing, rows.length),
  ];
}

/** Facts and findings of every athlete; each is as of the athlete's own day. */
function rowsOf({ journals, kept, findingsOf }: RosterSource): readonly RosterRow[] {
  return rosterOf(
    journals.map((open) => ({
      id: open.id,
      name: open.title,
      plan: open.journal.plan,
      facts: kept.of(open.journal, { today: open.today(), zone: open.zone() }),
      findings: findingsOf(open),
    })),
  );
}

/**
 * All that the page of the roster shows.
 * @param language BCP 47 tag of the editor's language
 */
export function rosterPageData(source: RosterSource, words: Words, language: string): RosterPageData {
  const byId = new Map(source.journals.map((open) => [open.id, open]));
  const rows = rowsOf(source);
  const [firstOpen] = source.journals;
  const page: PageContext = { words, today: firstOpen?.today() ?? ('1970-01-01' as PageContext['today']) };
  return {
    title: say(page, 'Athletes'),
    locale: usableLanguage(language),
    sentences: sentences(rows, page),
    rows: rows.flatMap((row) => {
      const open = byId.get(row.id);
      return open ? [rowView(row, open, source.findingsOf(open), { words, today: open.today() })] : [];
    }),
    texts: {
      ...commonTexts(page),
      guide: say(page, 'What this page shows'),
      acts: {
        // What takes several journals is offered where there are several.
        ...(rows.length > 1
          ? {
              lay: say(page, 'Add a routine or a need to several journals…'),
              copy: say(page, 'Copy planned weeks to another athlete…'),
            }
          : {}),
        ...(rows.length > 0 ? { comment: say(page, 'Comment for an athlete…') } : {}),
      },
      table: say(page, 'Athletes, those who need a word first'),
      head: [
        say(page, 'Athlete'),
        say(page, 'Last logged'),
        say(page, 'This week'),
        say(page, 'Findings'),
        say(page, 'Slipping'),
        say(page, 'Open pain'),
        say(page, 'Next date'),
        say(page, 'Goals behind'),
      ],
      fine: say(page, 'Nothing asks for a word'),
      none: say(page, 'none'),
      comment: say(page, 'Comment'),
      keys: say(
        page,
        'Arrow keys up and down move within a column, Home and End to the first and the last athlete. Enter opens the note, the finding or the goal.',
      ),
      empty: say(page, 'There is no training journal in this workspace yet.'),
      caution: say(
        page,
        'The order is arithmetic on the notes of your athletes: common practice, no source. Pain is no diagnosis; a licensed health professional looks at it. It is not medical advice.',
      ),
    },
  };
}

/** What the page asked for, or `undefined` when it is nothing that it may ask for. */
export function readRosterPageMessage(value: unknown): FromRosterPage | undefined {
  if (!isRecord(value)) return undefined;
  const { type, journal, place, goal, act } = value;
  if (type === 'ready' || type === 'guide') return { type };
  if (type === 'openIn' && typeof journal === 'string' && isPlace(place)) return { type, journal, place };
  if (type === 'goal' && typeof journal === 'string' && typeof goal === 'string')
    return { type, journal, goal };
  const known = rosterActs.find((one) => one === act);
  if (type !== 'act' || known === undefined) return undefined;
  return { type, act: known, ...(typeof journal === 'string' ? { journal } : {}) };
}

/** What a page that was kept had kept: nothing but that it was there. */
export function readRosterPageState(value: unknown): RosterPageState | undefined {
  return isRecord(value) ? {} : undefined;
}
