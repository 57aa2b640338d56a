import type { DayNumber } from '../../notation/time/iso-date';
import type { NamedThing, Note, NoteOutline, NotePath, WrittenName } from '../note';
import type { NoteFile } from '../note-source';
import { knownOutline } from '../open-note';
import { WorkSlices } from '../work-slices';
import { crc32 } from './crc32';

/** A note as it was read from its file. */
export interface ReadFile {
  readonly file: NoteFile;
  readonly note: Note;
}

/** Notes of an earlier session: which file each was read from, and its outline and text without reading it again. */
export interface KeptNotes {
  readonly size: number;
  /** The note that was read from this very file; `undefined` when the file has another size or time of change now. */
  noteOf(file: NoteFile): Note | undefined;
}

/** What kept notes were read with and from; those of another reader or another place are not taken. */
export interface KeptFrom {
  /** Other for each version of what reads notes. */
  readonly reader: string;
  /** The folder that they lie in, as the editor names it. */
  readonly folder: string;
}

/**
 * A file's time of change may be as coarse as two seconds (FAT), in which a file can change a second time and look the
 * same. One that had not rested for longer than this when it was listed is read again the next time.
 */
const restBeforeReading = 3000;

/** Notes whose outlines stand in one piece, which is read in one go. */
const notesPerPiece = 256;

const bytesPerSlice = 1 << 20;

/** Behind the checksum and the length of the head. */
const headStart = 8;

/** The head: what stands behind it, and the names that notes hold by their number in it. */
interface Head extends KeptFrom {
  /** Bytes of each piece of rows. */
  readonly pieces: readonly number[];
  readonly names: readonly (readonly [NamedThing, string])[];
}

/** Path, size, time of change, bytes of text, days moved to, goals measured, flags, names. */
type Row = readonly [
  NotePath,
  number,
  number,
  number,
  readonly DayNumber[],
  readonly string[],
  number,
  readonly number[],
];

function flagsOf({ tellsOfPain, plans, hasOpenSession }: NoteOutline): number {
  return (tellsOfPain ? 1 : 0) | (plans ? 2 : 0) | (hasOpenSession ? 4 : 0);
}

/** Numbers names in the order in which they come. */
class NameNumbers {
  readonly names: WrittenName[] = [];
  readonly #numbers = new Map<string, number>();

  of(name: WrittenName): number {
    const key = name.join(' ');
    let number = this.#numbers.get(key);
    if (number === undefined) {
      number = this.names.push(name) - 1;
      this.#numbers.set(key, number);
    }
    return number;
  }
}

/** Whether the file had rested long enough when the folder was listed at `listedAt`, milliseconds since 1970. */
function hadRested({ modified }: NoteFile, listedAt: number): boolean {
  return modified <= listedAt - restBeforeReading;
}

/** Whether the text is the whole file, but for a byte order mark. */
function isWhole(bytes: Uint8Array, { size }: NoteFile): boolean {
  return bytes.length === size || bytes.length + 3 === size;
}

/**
 * The bytes in which notes are kept for the next session. Notes that may look the same and be others then are left out.
 * Gives way between slices.
 * @param listedAt when the folder was listed before they were read, milliseconds since 1970
 */
export async function encodeKeptNotes(
  notes: Iterable<ReadFile>,
  from: KeptFrom,
  listedAt: number,
): Promise<Uint8Array> {
  const slices = new WorkSlices();
  const encoder = new TextEncoder();
  const numbers = new NameNumbers();
  const pieces: Uint8Array[] = [];
  const texts: Uint8Array[] = [];
  let rows: Row[] = [];
  const endPiece = () => {
    if (rows.length > 0) pieces.push(encoder.encode(JSON.stringify(rows)));
    rows = [];
  };
  for (const { file, note } of notes) {
    await slices.pauseWhenDue();
    if (!hadRested(file, listedAt)) continue;
    const text = encoder.encode(note.text);
    if (!isWhole(text, file)) continue;
    const { movedTo, measured, names } = note.outline;
    texts.push(text);
    rows.push([
      file.path,
      file.size,
      file.modified,
      text.length,
      movedTo,
      measured,
      flagsOf(note.outline),
      names.map((name) => numbers.of(name)),
    ]);
    if (rows.length === notesPerPiece) endPiece();
  }
  endPiece();
  const head: Head = { ...from, pieces: pieces.map((piece) => piece.length), names: numbers.names };
  return joined([encoder.encode(JSON.stringify(head)), ...pieces, ...texts], slices);
}

/** Checksum, length of the head, and then everything one behind the other. */
async function joined(parts: readonly Uint8Array[], slices: WorkSlices): Promise<Uint8Array> {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, headStart));
  const view = new DataView(bytes.buffer);
  view.setUint32(4, parts[0]?.length ?? 0);
  let end = headStart;
  for (const part of parts) {
    bytes.set(part, end);
    end += part.length;
    await slices.pauseWhenDue();
  }
  view.setUint32(0, await checksum(bytes, slices));
  return bytes;
}

/** The checksum of all that stands behind its own four bytes. */
async function checksum(bytes: Uint8Array, slices: WorkSlices): Promise<number> {
  let sum = 0;
  for (let start = 4; start < bytes.length; start += bytesPerSlice) {
    sum = crc32(bytes.subarray(start, start + bytesPerSlice), sum);
    await slices.pauseWhenDue();
  }
  return sum;
}

/**
 * The notes that were kept in `bytes`, by the same reader and from the same folder; `undefined` when they were not, or
 * when a single bit of them is not as it was written. Gives way between slices.
 */
export async function decodeKeptNotes(bytes: Uint8Array, from: KeptFrom): Promise<KeptNotes | undefined> {
  try {
    if (bytes.length <= headStart) return undefined;
    const slices = new WorkSlices();
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    if (view.getUint32(0) !== (await checksum(bytes, slices))) return undefined;
    const decoder = new TextDecoder();
    const json = (start: number, end: number): unknown =>
      JSON.parse(decoder.decode(bytes.subarray(start, end)));
    let end = headStart + view.getUint32(4);
    const head = json(headStart, end) as Head;
    if (head.reader !== from.reader || head.folder !== from.folder) return undefined;
    const rows: Row[] = [];
    for (const length of head.pieces) {
      rows.push(...(json(end, end + length) as Row[]));
      end += length;
      await slices.pauseWhenDue();
    }
    return new DecodedNotes(bytes.subarray(end), rows, head.names);
  } catch {
    // What another program wrote under this name.
    return undefined;
  }
}

class DecodedNotes implements KeptNotes {
  readonly #texts: Uint8Array;
  readonly #names: readonly WrittenName[];
  readonly #rows = new Map<NotePath, { readonly row: Row; readonly start: number }>();

  constructor(texts: Uint8Array, rows: readonly Row[], names: readonly WrittenName[]) {
    this.#texts = texts;
    this.#names = names;
    let start = 0;
    for (const row of rows) {
      this.#rows.set(row[0], { row, start });
      start += row[3];
    }
  }

  get size(): number {
    return this.#rows.size;
  }

  noteOf(file: NoteFile): Note | undefined {
    const found = this.#rows.get(file.path);
    if (!found) return undefined;
    const { row, start } = found;
    const [path, size, modified, length, movedTo, measured, flags, names] = row;
    if (size !== file.size || modified !== file.modified) return undefined;
    const outline: NoteOutline = {
      movedTo,
      measured,
      tellsOfPain: (flags & 1) !== 0,
      plans: (flags & 2) !== 0,
      hasOpenSession: (flags & 4) !== 0,
      names: names.map((number) => this.#names[number] as WrittenName),
    };
    const bytes = this.#texts.subarray(start, start + length);
    return knownOutline(path, outline, () => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes));
  }
}
