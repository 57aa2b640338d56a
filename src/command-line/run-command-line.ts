import type { NoteSource } from '../journal/note-source';
import { present } from '../notation/present';
import { adherenceJson, adherenceLines } from './adherence-command';
import { blockAnswer } from './block-command';
import { type CalendarSurroundings, calendarAnswer } from './calendar-command';
import { checkJson, checkLines, checkReport, hasWarnings } from './check-command';
import { loadJson, loadLines } from './load-command';
import { type Command, type FolderCommand, parseArguments, usage } from './parse-arguments';
import { type PlanSurroundings, planAnswer } from './plan-command';
import { progressJson, progressLines } from './progress-command';
import { type JournalsToRead, type Machine, readJournals } from './read-journals';
import { recoveryJson, recoveryLines } from './recovery-command';
import { rosterJson, rosterLines } from './roster-command';
import { terminalLine } from './terminal-text';

/** The program's surroundings. */
export interface Surroundings extends Machine, CalendarSurroundings, PlanSurroundings {
  readonly version: string;
  /** The notes below a folder, or `undefined` when there is no such folder. */
  openFolder(folder: string): NoteSource | undefined;
  write(text: string): void;
  writeError(text: string): void;
}

/** A command that prints figures or findings. */
type ReportCommand = Extract<Command, { readonly kind: FolderCommand }>;

/** 0 nothing to mend, 1 a warning, an error or something left out, 2 not understood. */
export type ExitCode = 0 | 1 | 2;

function figures(command: ReportCommand, read: JournalsToRead): string {
  const { json, weeks, chance } = command;
  switch (command.kind) {
    case 'load':
      return json ? loadJson(read, weeks) : loadLines(read, weeks);
    case 'recovery': {
      const options = present({ weeks, acceptedChance: chance });
      return json ? recoveryJson(read, options) : recoveryLines(read, options);
    }
    case 'adherence':
      return json ? adherenceJson(read, weeks) : adherenceLines(read, weeks);
    case 'roster':
      return json ? rosterJson(read) : rosterLines(read);
    default:
      return json ? progressJson(read) : progressLines(read);
  }
}

function report(command: ReportCommand, read: JournalsToRead, out: Surroundings): ExitCode {
  if (command.kind === 'check') {
    const checked = checkReport(read);
    out.write(command.json ? checkJson(checked) : checkLines(checked, command.folder));
    return hasWarnings(checked) ? 1 : 0;
  }
  out.write(figures(command, read));
  return 0;
}

/** Does what the words behind the program's name ask for, and gives the exit code. */
export async function runCommandLine(
  words: readonly string[],
  surroundings: Surroundings,
): Promise<ExitCode> {
  const refuse = (message: string): ExitCode => {
    surroundings.writeError(`${terminalLine(message)}\n`);
    return 2;
  };
  const command = parseArguments(words);
  switch (command.kind) {
    case 'help':
      surroundings.write(usage);
      return 0;
    case 'version':
      surroundings.write(`${surroundings.version}\n`);
      return 0;
    case 'refused':
      return refuse(command.message);
    default: {
      const source = surroundings.openFolder(command.folder);
      if (!source) return refuse(`"${command.folder}" is not a folder that can be read.`);
      const read = await readJournals(source, command, surroundings);
      if (read.journals.length === 0) {
        return refuse(`No journal in "${command.folder}": neither a note named journal.md nor a day note.`);
      }
      if (command.kind === 'plan' || command.kind === 'block') {
        const answer =
          command.kind === 'plan'
            ? planAnswer(command, read, surroundings)
            : blockAnswer(command, read, surroundings);
        if ('refusal' in answer) return refuse(answer.refusal);
        surroundings.write(answer.text);
        return answer.code;
      }
      if (command.kind !== 'calendar') return report(command, read, surroundings);
      const answer = calendarAnswer(command, read, surroundings);
      if ('refusal' in answer) return refuse(answer.refusal);
      surroundings.write(answer.text);
      return 0;
    }
  }
}
