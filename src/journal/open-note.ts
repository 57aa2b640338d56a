import type { NoteReading } from '../notation/note-reading';
import { readNote } from '../notation/read-note';
import { lineStarts } from '../notation/source-range';
import type { Note, NoteName, NoteOutline, NotePath } from './note';
import { readNoteName } from './note-name';
import { outlineOf } from './note-outline';

/** A note whose lines and entries are read when they are first asked for, and kept from then on. */
class OpenedNote implements Note {
  readonly path: NotePath;
  readonly name: NoteName;
  #text: string | (() => string);
  #outline: NoteOutline | undefined;
  #reading: NoteReading | undefined;
  #lineStarts: readonly number[] | undefined;

  constructor(path: NotePath, text: string | (() => string), outline?: NoteOutline) {
    this.path = path;
    this.name = readNoteName(path);
    this.#text = text;
    this.#outline = outline;
  }

  get text(): string {
    if (typeof this.#text !== 'string') this.#text = this.#text();
    return this.#text;
  }

  get lineStarts(): readonly number[] {
    this.#lineStarts ??= lineStarts(this.text);
    return this.#lineStarts;
  }

  get reading(): NoteReading {
    this.#reading ??= readNote(this.text);
    return this.#reading;
  }

  get outline(): NoteOutline {
    this.#outline ??= outlineOf(this.reading);
    return this.#outline;
  }
}

/** Reads `text`, from which the byte order mark has been taken, as the note at `path`. Any text is a note. */
export function openNote(path: NotePath, text: string): Note {
  return new OpenedNote(path, text);
}

/**
 * As {@link openNote}, for one of many notes of which most are never asked anything: what is read of it for its outline
 * is not kept, and takes no memory.
 */
export function openNoteForLater(path: NotePath, text: string): Note {
  return new OpenedNote(path, text, outlineOf(readNote(text)));
}

/** The note at `path` whose outline is known, and whose text is fetched when it is first asked for. */
export function knownOutline(path: NotePath, outline: NoteOutline, text: () => string): Note {
  return new OpenedNote(path, text, outline);
}
