import { parseArgs } from 'node:util';
import { type IsoDate, parseIsoDate } from '../notation/time/iso-date';
import { isKnownZone } from '../notation/time/zoned-time';
import { type BlockOptions, readBlockOptions } from './block-arguments';
import type { FolderOptions } from './folder-options';
import { type PlanOptions, readPlanOptions } from './plan-arguments';
import { type ReviewOptions, type ReviewWords, readReviewOptions } from './review-arguments';

/** What `calendar` is asked beside. */
export interface CalendarOptions extends FolderOptions {
  /** First and last day, both included. */
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** The file that the last export wrote, as it was typed. */
  readonly previous?: string;
  readonly alarmMinutes?: number;
  /** The weekly look back; not in the calendar when left out. */
  readonly review?: ReviewOptions;
}

const folderCommands = ['check', 'progress', 'load', 'recovery', 'adherence', 'roster'] as const;

/** A command that prints figures or findings of a folder. */
export type FolderCommand = (typeof folderCommands)[number];

const mostWeeks = 1000;

/** A week: nobody is reminded of a session earlier than that. */
const mostAlarmMinutes = 7 * 1440;

/** What the words on the command line ask for. */
export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | ({ readonly kind: FolderCommand } & FolderOptions)
  | ({ readonly kind: 'calendar' } & CalendarOptions)
  | ({ readonly kind: 'plan' } & PlanOptions)
  | ({ readonly kind: 'block' } & BlockOptions)
  /** They cannot be understood; the message says why in one line. */
  | { readonly kind: 'refused'; readonly message: string };

/** How the program is called. */
export const usage = `Usage:
  command-line.js check FOLDER [--today DATE] [--zone ZONE] [--json]
  command-line.js progress FOLDER [--today DATE] [--zone ZONE] [--json]
  command-line.js load FOLDER [--weeks N] [--today DATE] [--zone ZONE] [--json]
  command-line.js recovery FOLDER [--chance C] [--weeks N] [--today DATE] [--zone ZONE] [--json]
  command-line.js adherence FOLDER [--weeks N] [--today DATE] [--zone ZONE] [--json]
  command-line.js roster FOLDER [--today DATE] [--zone ZONE] [--json]
  command-line.js calendar FOLDER --from DATE --to DATE [--previous FILE] [--alarm MINUTES]
                           [--review DAY [--review-at TIME]] [--today DATE] [--zone ZONE]
  command-line.js plan FOLDER [--week WEEK | --weeks N --from WEEK] [--write]
                       [--today DATE] [--zone ZONE] [--json]
  command-line.js block FOLDER [--from WEEK] [--weeks N] [--event NAME] [--top PERCENT] [--limit PERCENT]
                        [--lighter N] [--write [--days]] [--today DATE] [--zone ZONE] [--json]
  command-line.js block FOLDER --again [--limit PERCENT] [--write [--days]] [--today DATE] [--zone ZONE] [--json]

check      prints what the notes below FOLDER say and a rule, a goal or the notation does not allow.
progress   prints how far each goal has come, and when it arrives at the pace of its readings.
load       prints effort x minutes by week and kind.
recovery   prints how long each kind and region stays sore, as far as the notes tell.
adherence  prints how many planned sessions were done.
roster     prints the athletes whose journals lie below FOLDER, those who need a word first, and why.
calendar   prints the sessions of a span as an iCalendar file, for a phone or another calendar.
plan       prints the best legal weeks that the goals ask for, or why there are none; --write writes their notes.
block      lays out four to twelve weeks with their volumes, lighter weeks and a taper; --write writes the block's note,
           --days the day notes as well; --again plans a written block again by its table.

  --today DATE  the day from which past and future are told apart, such as 2026-02-24 (default: today)
  --zone ZONE   the time zone in which hours are counted, such as Europe/Lisbon
                (default: the one that the journal names, else this machine's)
  --weeks N     how many weeks to look back (default: load 12, recovery 52, adherence 26), or to plan (at most 12;
                block 4 to 12, default 10)
  --chance C    the chance of still being sore that is accepted, between 0 and 1 (default: 0.2)
  --from DATE, --to DATE
                the first and the last day of the calendar
  --week WEEK, --from WEEK
                the week to plan, or the first of several, such as 2026-W10 (default: the one after today's)
  --write       write the planned notes
  --event NAME  the name or the date of the event before which the block tapers (default: no taper)
  --top PERCENT what is wanted at the top, of what the needs ask: 50 to 150 (default: 100)
  --limit PERCENT
                the most that a building week holds above the three before it: 1 to 30 (default: 10)
  --lighter N   every how many weeks one is lighter: 3 to 6, or 0 for none (default: 5)
  --days        write the day notes of a block as well
  --again       plan the block that stands again: what its table says otherwise by now
  --previous FILE
                the file that the last export wrote: what changed since is counted, what is gone is cancelled
  --alarm MINUTES
                how long before a session the calendar reminds of it (default: not at all)
  --review DAY, --review-at TIME
                a weekly appointment to look back on the week, such as sunday, at 18:00 unless another time is given
  --json        print one JSON value
  --help        print this
  --version     print the version

Exit code of check: 0 without warnings and errors, 1 with some; of plan and block: 0 when everything fits, 1 when
something is left out; of any command: 2 when it cannot be understood.
`;

const options = {
  today: { type: 'string' },
  zone: { type: 'string' },
  json: { type: 'boolean' },
  weeks: { type: 'string' },
  chance: { type: 'string' },
  from: { type: 'string' },
  to: { type: 'string' },
  previous: { type: 'string' },
  alarm: { type: 'string' },
  review: { type: 'string' },
  'review-at': { type: 'string' },
  week: { type: 'string' },
  write: { type: 'boolean' },
  event: { type: 'string' },
  top: { type: 'string' },
  limit: { type: 'string' },
  lighter: { type: 'string' },
  days: { type: 'boolean' },
  again: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
} as const;

function refused(message: string): Command {
  return { kind: 'refused', message };
}

const commands = [...folderCommands, 'calendar', 'plan', 'block'] as const;

/** Commands that take a number of weeks. */
const countsWeeks: readonly string[] = ['load', 'recovery', 'adherence', 'plan', 'block'];

const commandList = `${commands.slice(0, -1).join(', ')} or ${commands.at(-1)}`;

function readWeeks(text: string): number | undefined {
  const weeks = /^\d{1,4}$/.test(text) ? Number(text) : 0;
  return weeks >= 1 && weeks <= mostWeeks ? weeks : undefined;
}

function readChance(text: string): number | undefined {
  const chance = /^0?\.\d+$/.test(text) ? Number(text) : 0;
  return chance > 0 && chance < 1 ? chance : undefined;
}

/** What `calendar` is given beside, as it was typed. */
interface CalendarWords extends ReviewWords {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly previous?: string | undefined;
  readonly alarm?: string | undefined;
}

function readCalendarOptions(asked: FolderOptions, words: CalendarWords): Command {
  if (asked.json) return refused('--json does not go with calendar.');
  if (words.from === undefined || words.to === undefined) {
    return refused('Say which days: --from 2026-03-02 --to 2026-03-29.');
  }
  const [from, to] = [parseIsoDate(words.from), parseIsoDate(words.to)];
  if (from === undefined || to === undefined) {
    return refused(`"${from === undefined ? words.from : words.to}" is not a date such as 2026-02-24.`);
  }
  if (to < from) return refused(`The calendar ends on ${to}, before it begins on ${from}.`);
  const { previous, alarm } = words;
  const alarmMinutes = alarm !== undefined && /^\d{1,5}$/.test(alarm) ? Number(alarm) : undefined;
  if (alarm !== undefined && !(alarmMinutes !== undefined && alarmMinutes <= mostAlarmMinutes)) {
    return refused(`"${alarm}" is not a number of minutes from 0 to ${mostAlarmMinutes}.`);
  }
  const review = readReviewOptions(words);
  if (typeof review === 'string') return refused(review);
  return {
    kind: 'calendar',
    ...asked,
    from,
    to,
    ...(previous === undefined ? {} : { previous }),
    ...(alarmMinutes === undefined ? {} : { alarmMinutes }),
    ...(review === undefined ? {} : { review }),
  };
}

function parse(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true });
  } catch (error) {
    // The first sentence says what is wrong; the others explain the parser.
    return String(error instanceof Error ? error.message : error).split(/\. |\n/)[0] ?? '';
  }
}

/** Options of single commands. */
const ownOptions = {
  calendar: ['from', 'to', 'previous', 'alarm', 'review', 'review-at'],
  plan: ['from', 'week', 'write'],
  block: ['from', 'event', 'top', 'limit', 'lighter', 'write', 'days', 'again'],
} as const;

/** An option that was given and belongs to other commands. */
function misplacedOption(command: string, values: Readonly<Record<string, unknown>>): string | undefined {
  const own: readonly string[] = Object.entries(ownOptions).find(([name]) => name === command)?.[1] ?? [];
  return Object.values(ownOptions)
    .flat()
    .find((name) => values[name] !== undefined && !own.includes(name));
}

/** Reads the words behind the program's name. */
export function parseArguments(words: readonly string[]): Command {
  const parsed = parse(words);
  if (typeof parsed === 'string') return refused(`${parsed.replace(/\.$/, '')}.`);
  const { values, positionals } = parsed;
  if (values.help) return { kind: 'help' };
  if (values.version) return { kind: 'version' };
  const [kind, folder, ...more] = positionals;
  const command = commands.find((name) => name === kind);
  if (kind === undefined) return refused(`Say what to do: ${commandList}.`);
  if (command === undefined) return refused(`Unknown command "${kind}": ${commandList}.`);
  if (folder === undefined || folder === '')
    return refused(`Say which folder to ${command === 'check' ? 'check' : 'read'}.`);
  if (more.length > 0) return refused(`One folder at a time: "${more[0]}" is one too many.`);
  const today = values.today === undefined ? undefined : parseIsoDate(values.today);
  if (values.today !== undefined && today === undefined) {
    return refused(`"${values.today}" is not a date such as 2026-02-24.`);
  }
  if (values.zone !== undefined && !isKnownZone(values.zone)) {
    return refused(`"${values.zone}" is not a time zone that this machine knows, such as Europe/Lisbon.`);
  }
  if (values.weeks !== undefined && !countsWeeks.includes(command))
    return refused(`--weeks does not go with ${command}.`);
  if (values.chance !== undefined && command !== 'recovery') {
    return refused(`--chance does not go with ${command}.`);
  }
  const back = command === 'plan' || command === 'block' ? undefined : values.weeks;
  const weeks = back === undefined ? undefined : readWeeks(back);
  if (back !== undefined && weeks === undefined) {
    return refused(`"${back}" is not a number of weeks from 1 to ${mostWeeks}.`);
  }
  const chance = values.chance === undefined ? undefined : readChance(values.chance);
  if (values.chance !== undefined && chance === undefined) {
    return refused(`"${values.chance}" is not a chance between 0 and 1, such as 0.2.`);
  }
  const asked: FolderOptions = {
    folder,
    ...(today === undefined ? {} : { today }),
    ...(values.zone === undefined ? {} : { zone: values.zone }),
    json: values.json === true,
    ...(weeks === undefined ? {} : { weeks }),
    ...(chance === undefined ? {} : { chance }),
  };
  const misplaced = misplacedOption(command, values);
  if (misplaced !== undefined) return refused(`--${misplaced} does not go with ${command}.`);
  if (command === 'calendar') return readCalendarOptions(asked, values);
  if (command === 'block') {
    const block = readBlockOptions(asked, values);
    return typeof block === 'string' ? refused(block) : { kind: 'block', ...block };
  }
  if (command !== 'plan') return { kind: command, ...asked };
  const plan = readPlanOptions(asked, values);
  return typeof plan === 'string' ? refused(plan) : { kind: 'plan', ...plan };
}
