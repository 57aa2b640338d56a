import { parseArgs } from 'node:util';
import { type IsoDate, parseIsoDate } from '../notation/time/iso-date';
import { isKnownZone } from '../notation/time/zoned-time';

/** What `check` and `progress` are asked to look at. */
export interface FolderOptions {
  /** As it was typed. */
  readonly folder: string;
  readonly today?: IsoDate;
  readonly zone?: string;
  readonly json: boolean;
}

/** What the words on the command line ask for. */
export type Command =
  | { readonly kind: 'help' }
  | { readonly kind: 'version' }
  | ({ readonly kind: 'check' | 'progress' } & FolderOptions)
  /** They cannot be understood; the message says why in one line. */
  | { readonly kind: 'refused'; readonly message: string };

/** How the program is called. */
export const usage = `Usage:
  command-line.js check FOLDER [--today DATE] [--zone ZONE] [--json]
  command-line.js progress FOLDER [--today DATE] [--zone ZONE] [--json]

check     prints what the notes below FOLDER say and a rule, a goal or the notation does not allow.
progress  prints how far each goal has come.

  --today DATE  the day from which past and future are told apart, such as 2026-02-24 (default: today)
  --zone ZONE   the time zone in which hours are counted, such as Europe/Lisbon
                (default: the one that the journal names, else this machine's)
  --json        print one JSON value
  --help        print this
  --version     print the version

Exit code of check: 0 without warnings and errors, 1 with some; of any command: 2 when it cannot be understood.
`;

const options = {
  today: { type: 'string' },
  zone: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean', short: 'v' },
} as const;

function refused(message: string): Command {
  return { kind: 'refused', message };
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
  if (kind === undefined) return refused('Say what to do: check or progress.');
  if (kind !== 'check' && kind !== 'progress')
    return refused(`Unknown command "${kind}": check or progress.`);
  if (folder === undefined || folder === '')
    return refused(`Say which folder to ${kind === 'check' ? 'check' : 'read'}.`);
  if (more.length > 0) return refused(`One folder at a time: "${more[0]}" is one too many.`);
  const today = values.today === undefined ? undefined : parseIsoDate(values.today);
  if (values.today !== undefined && today === undefined) {
    return refused(`"${values.today}" is not a date such as 2026-02-24.`);
  }
  if (values.zone !== undefined && !isKnownZone(values.zone)) {
    return refused(`"${values.zone}" is not a time zone that this machine knows, such as Europe/Lisbon.`);
  }
  return {
    kind,
    folder,
    ...(today === undefined ? {} : { today }),
    ...(values.zone === undefined ? {} : { zone: values.zone }),
    json: values.json === true,
  };
}
