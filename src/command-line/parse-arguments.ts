import { parseArgs } from 'node:util';
import { type IsoDate, parseIsoDate } from '../notation/time/iso-date';
import { isKnownZone } from '../notation/time/zoned-time';

/** What every command is asked to look at. */
export interface FolderOptions {
  /** As it was typed. */
  readonly folder: string;
  readonly today?: IsoDate;
  readonly zone?: string;
  readonly json: boolean;
  /** How many weeks back, for those commands that look back. */
  readonly weeks?: number;
  /** The accepted chance of still being sore, inside 0..1, for `recovery`. */
  readonly chance?: number;
}

const folderCommands = ['check', 'progress', 'load', 'recovery', 'adherence'] as const;

/** A command that reads a folder. */
export type FolderCommand = (typeof folderCommands)[number];

const mostWeeks = 1000;

/** What the words on the command line ask for. */
export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | ({ readonly kind: FolderCommand } & FolderOptions)
  /** They cannot be understood; the message says why in one line. */
  | { readonly kind: 'refused'; readonly message: string };

/** How the program is called. */
export const usage = `Usage:
  command-line.js check FOLDER [--today DATE] [--zone ZONE] [--json]
  command-line.js progress FOLDER [--today DATE] [--zone ZONE] [--json]
  command-line.js load FOLDER [--weeks N] [--today DATE] [--zone ZONE] [--json]
  command-line.js recovery FOLDER [--chance C] [--weeks N] [--today DATE] [--zone ZONE] [--json]
  command-line.js adherence FOLDER [--weeks N] [--today DATE] [--zone ZONE] [--json]

check      prints what the notes below FOLDER say and a rule, a goal or the notation does not allow.
progress   prints how far each goal has come, and when it arrives at the pace of its readings.
load       prints effort x minutes by week and kind.
recovery   prints how long each kind and region stays sore, as far as the notes tell.
adherence  prints how many planned sessions were done.

  --today DATE  the day from which past and future are told apart, such as 2026-02-24 (default: today)
  --zone ZONE   the time zone in which hours are counted, such as Europe/Lisbon
                (default: the one that the journal names, else this machine's)
  --weeks N     how many weeks to look back (default: load 12, recovery 52, adherence 26)
  --chance C    the chance of still being sore that is accepted, between 0 and 1 (default: 0.2)
  --json        print one JSON value
  --help        print this
  --version     print the version

Exit code of check: 0 without warnings and errors, 1 with some; of any command: 2 when it cannot be understood.
`;

const options = {
  today: { type: 'string' },
  zone: { type: 'string' },
  json: { type: 'boolean' },
  weeks: { type: 'string' },
  chance: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
} as const;

function refused(message: string): Command {
  return { kind: 'refused', message };
}

const commandList = `${folderCommands.slice(0, -1).join(', ')} or ${folderCommands.at(-1)}`;

function readWeeks(text: string): number | undefined {
  const weeks = /^\d{1,4}$/.test(text) ? Number(text) : 0;
  return weeks >= 1 && weeks <= mostWeeks ? weeks : undefined;
}

function readChance(text: string): number | undefined {
  const chance = /^0?\.\d+$/.test(text) ? Number(text) : 0;
  return chance > 0 && chance < 1 ? chance : undefined;
}

function parse(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true });
  } catch (error) {
    // The first sentence says what is wrong; the others explain the parser.
    return String(error instanceof Error ? error.message : error).split(/\. |\n/)[0] ?? '';
  }
}

/** Reads the words behind the program's name. */
export function parseArguments(words: readonly string[]): Command {
  const parsed = parse(words);
  if (typeof parsed === 'string') return refused(`${parsed.replace(/\.$/, '')}.`);
  const { values, positionals } = parsed;
  if (values.help) return { kind: 'help' };
  if (values.version) return { kind: 'version' };
  const [kind, folder, ...more] = positionals;
  const command = folderCommands.find((name) => name === kind);
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
  const looksBack = command !== 'check' && command !== 'progress';
  if (values.weeks !== undefined && !looksBack) return refused(`--weeks does not go with ${command}.`);
  if (values.chance !== undefined && command !== 'recovery') {
    return refused(`--chance does not go with ${command}.`);
  }
  const weeks = values.weeks === undefined ? undefined : readWeeks(values.weeks);
  if (values.weeks !== undefined && weeks === undefined) {
    return refused(`"${values.weeks}" is not a number of weeks from 1 to ${mostWeeks}.`);
  }
  const chance = values.chance === undefined ? undefined : readChance(values.chance);
  if (values.chance !== undefined && chance === undefined) {
    return refused(`"${values.chance}" is not a chance between 0 and 1, such as 0.2.`);
  }
  return {
    kind: command,
    folder,
    ...(today === undefined ? {} : { today }),
    ...(values.zone === undefined ? {} : { zone: values.zone }),
    json: values.json === true,
    ...(weeks === undefined ? {} : { weeks }),
    ...(chance === undefined ? {} : { chance }),
  };
}
