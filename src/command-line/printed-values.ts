import { fillMessage, type Message } from '../training/finding';
import { printedPlace } from './printed-place';
import type { JournalToRead } from './read-journals';

type Fields = Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isMessage(value: Fields): value is Fields & Message {
  return Object.keys(value).length === 2 && typeof value.template === 'string' && Array.isArray(value.values);
}

/** `value` with each note and range in it turned into file, line and column, and each message into its sentence. */
export function printedValue(value: unknown, { journal }: JournalToRead): unknown {
  const turn = (inner: unknown): unknown => {
    if (Array.isArray(inner)) return inner.map(turn);
    if (!isObject(inner)) return inner;
    if (isMessage(inner)) return fillMessage(inner);
    const { note, range, ...rest } = inner;
    const turned = Object.fromEntries(Object.entries(rest).map(([key, each]) => [key, turn(each)]));
    if (typeof note !== 'string' || !isObject(range)) return turned;
    return {
      ...turned,
      ...printedPlace(journal, note, { start: Number(range.start), end: Number(range.end) }),
    };
  };
  return turn(value);
}
