import ICAL from 'ical.js';
import type { ContentLine } from './content-lines';

/** A property of a calendar component, its value as it was written. */
export interface CalendarProperty {
  /** In small letters: `dtstart`. */
  readonly name: string;
  /** Parameters by name in small letters; quotation marks taken off. */
  readonly parameters: Readonly<Record<string, string>>;
  readonly value: string;
  readonly line: ContentLine;
}

/**
 * Makes the library read a line's syntax and leave its value alone: it would mend or drop what is wrong with a
 * value, which is to be told of instead.
 */
const valuesAsWritten = { value: {}, param: {}, property: {}, propertyGroups: false };

/** Name of the property on a line, in small letters, at little cost. */
export function propertyName({ text }: ContentLine): string {
  return (/^[^:;]*/.exec(text)?.[0] ?? '').toLowerCase();
}

/** Reads one line, or `undefined` when it is no property. */
export function readProperty(line: ContentLine): CalendarProperty | undefined {
  try {
    const [name, parameters, type, value] = ICAL.parse.property(line.text, valuesAsWritten) as [
      string,
      Record<string, string | readonly string[]>,
      string,
      string,
    ];
    const written = Object.entries(parameters).map(([key, each]) => [key, String(each)]);
    return {
      name,
      // The library takes `VALUE=` for the type of the value.
      parameters: { ...Object.fromEntries(written), ...(type === 'unknown' ? {} : { value: type }) },
      value,
      line,
    };
  } catch {
    return undefined;
  }
}

/** The words in a property of text, escapes undone (RFC 5545, section 3.3.11). */
export function textValue({ value }: CalendarProperty): string {
  return value.replace(/\\([\\;,Nn])/g, (_, escaped: string) =>
    escaped === 'n' || escaped === 'N' ? '\n' : escaped,
  );
}
