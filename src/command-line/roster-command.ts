import { fillMessage } from '../training/finding';
import { PublishedFindings } from '../training/published-findings';
import { athleteFacts } from '../training/roster/athlete-facts';
import { type Athlete, type RosterRow, rosterOf } from '../training/roster/roster';
import { checkContext } from '../training/week-under-check';
import { weeksAround } from '../training/weeks-around';
import { printedValue } from './printed-values';
import { counted } from './printed-words';
import type { JournalsToRead, JournalToRead } from './read-journals';
import { terminalJson, terminalLine } from './terminal-text';

function athleteOf({ journal, today, zone }: JournalToRead): Athlete {
  const published = new PublishedFindings(journal);
  published.refresh({ today, zone, weeks: weeksAround(today), openNotes: new Set() });
  const { root, plan } = journal;
  return {
    id: root,
    name: plan.athlete?.name ?? (root === '' ? '.' : root),
    plan,
    facts: athleteFacts(checkContext(journal, { today, zone })),
    findings: published.all,
  };
}

/** The rows of all journals, those who need a word first, each with the journal that it tells of. */
function rowsOf({ journals }: JournalsToRead): readonly (readonly [RosterRow, JournalToRead])[] {
  const byRoot = new Map(journals.map((one) => [one.journal.root, one]));
  return rosterOf(journals.map(athleteOf)).flatMap((row) => {
    const read = byRoot.get(row.id);
    return read ? [[row, read] as const] : [];
  });
}

/** The roster as JSON: `{ today, athletes }`, those who need a word first, each with the reasons. */
export function rosterJson(read: JournalsToRead): string {
  const athletes = rowsOf(read).map(([row, one]) => {
    const { lastLog, week, pains, next, goalsPast } = row.facts;
    const value = {
      journal: row.id,
      today: one.today,
      name: row.name,
      reasons: row.reasons.map(({ kind, message, place }) => ({ kind, message, ...place })),
      ...(lastLog ? { lastLog: { date: lastLog.date, daysAgo: lastLog.daysAgo, ...lastLog.place } } : {}),
      week,
      findings: row.findings.counts,
      isSlipping: row.findings.slipping !== undefined,
      pains: pains.map(({ place, ...pain }) => ({ ...pain, ...place })),
      ...(next ? { next: { is: next.is, name: next.name, date: next.date, days: next.days } } : {}),
      goalsBehind: [...goalsPast, ...row.findings.behind].map(({ goal, title }) => ({ goal, title })),
    };
    return printedValue(value, one);
  });
  return `${terminalJson({ today: read.today, athletes })}\n`;
}

function lastWords({ lastLog }: RosterRow['facts']): string {
  if (!lastLog) return 'nothing logged yet';
  const { date, daysAgo } = lastLog;
  return `last logged on ${date}${daysAgo === 0 ? ', today' : `, ${counted(daysAgo, 'day')} ago`}`;
}

function nextWords({ next }: RosterRow['facts']): readonly string[] {
  if (!next) return [];
  return [
    `next: ${next.name} on ${next.date}${next.days === 0 ? ', today' : `, in ${counted(next.days, 'day')}`}`,
  ];
}

function rowLines([{ name, id, facts, findings, reasons }]: readonly [
  RosterRow,
  JournalToRead,
]): readonly string[] {
  const { week } = facts;
  const { error, warning, information } = findings.counts;
  return [
    id === name ? name : `${name} (${id === '' ? '.' : id}/)`,
    ...(reasons.length === 0
      ? ['nothing asks for a word']
      : reasons.map((reason) => fillMessage(reason.message))
    ).map((line) => `  ${line}`),
    `  ${[
      lastWords(facts),
      `this week ${week.done} of ${counted(week.planned, 'session')} done`,
      `${counted(error, 'error')}, ${counted(warning, 'warning')}, ${information} for information`,
      ...nextWords(facts),
    ].join('; ')}`,
  ];
}

/** The roster for people: an athlete, why somebody should have a word, and how things stand. */
export function rosterLines(read: JournalsToRead): string {
  return `${rowsOf(read).flatMap(rowLines).map(terminalLine).join('\n')}\n`;
}
