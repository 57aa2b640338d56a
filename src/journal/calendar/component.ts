import type { CalendarProblem } from './calendar-problem';
import type { ContentLine } from './content-lines';

/** A part of a calendar file between its `BEGIN` and `END`. */
export interface CalendarComponent {
  /** In capitals: `VEVENT`. */
  readonly name: string;
  readonly begin: ContentLine;
  /** Its own properties, those of its parts left out. */
  readonly lines: readonly ContentLine[];
  readonly parts: readonly CalendarComponent[];
}

interface OpenComponent extends CalendarComponent {
  readonly lines: ContentLine[];
  readonly parts: OpenComponent[];
}

/** The components of a file, and where its `BEGIN` and `END` lines do not go together. */
export interface ComponentTree {
  readonly calendars: readonly CalendarComponent[];
  readonly problems: readonly CalendarProblem[];
}

const delimiter = /^(BEGIN|END):(.*)$/i;

/**
 * Takes a file apart into its components. A component that is not ended is ended where the next of its own kind
 * begins, where the component around it ends, or where the file does.
 */
export function readComponents(lines: readonly ContentLine[]): ComponentTree {
  const calendars: OpenComponent[] = [];
  const problems: CalendarProblem[] = [];
  const open: OpenComponent[] = [];
  const problem = (reason: CalendarProblem['reason'], { range }: ContentLine, text: string) =>
    problems.push({ reason, range, text });
  /** Ends all that is open from `index` on; only the first of them may have been asked to end. */
  const close = (index: number, isAsked: boolean) => {
    for (const { name, begin } of open.splice(index).slice(isAsked ? 1 : 0)) {
      problem('not-ended', begin, name);
    }
  };
  const indexOf = (name: string) => open.map((one) => one.name).lastIndexOf(name);
  let strayLine: ContentLine | undefined;
  for (const line of lines) {
    const [, keyword, written = ''] = delimiter.exec(line.text) ?? [];
    const name = written.trim().toUpperCase();
    if (keyword === undefined) {
      const inside = open.at(-1);
      if (inside) inside.lines.push(line);
      else strayLine ??= line;
    } else if (keyword.toUpperCase() === 'BEGIN') {
      const same = indexOf(name);
      if (same >= 0) close(same, false);
      const component: OpenComponent = { name, begin: line, lines: [], parts: [] };
      const around = open.at(-1);
      if (around) around.parts.push(component);
      else calendars.push(component);
      open.push(component);
    } else {
      const begun = indexOf(name);
      if (begun >= 0) close(begun, true);
      else problem('not-begun', line, name);
    }
  }
  close(0, false);
  const own = calendars.filter(({ name }) => name === 'VCALENDAR');
  if (own.length === 0) {
    const first = lines[0];
    return {
      calendars: [],
      problems: [{ reason: 'not-a-calendar', range: first?.range ?? { start: 0, end: 0 }, text: '' }],
    };
  }
  if (strayLine) problem('outside', strayLine, strayLine.text.slice(0, 40));
  return { calendars: own, problems };
}
