import type { Entry } from '../notation/entries';
import type { NoteReading } from '../notation/note-reading';
import { type DayNumber, dayNumber } from '../notation/time/iso-date';
import type { NamedThing, NoteOutline, WrittenName } from './note';
import { planningEntries } from './planning-entries';

function* namesIn(entry: Entry): Iterable<readonly [NamedThing, { readonly value: string } | undefined]> {
  switch (entry.tag) {
    case 'session':
    case 'need':
      yield ['kind', entry.kind];
      yield ['where', entry.where];
      for (const partner of entry.with) yield ['with', partner];
      break;
    case 'free':
      yield ['where', entry.where];
      for (const partner of entry.with) yield ['with', partner];
      break;
    case 'routine':
      yield ['kind', entry.kind];
      for (const region of entry.regions) yield ['region', region];
      break;
    case 'kind':
      yield ['kind', entry.name];
      yield ['kind', entry.like];
      break;
    case 'sore':
    case 'pain':
      yield ['region', entry.region];
      break;
    default:
  }
}

/** The outline of a note that has been read. */
export function outlineOf(reading: NoteReading): NoteOutline {
  const { entries } = reading;
  const movedTo: DayNumber[] = [];
  const measured = new Set<string>();
  const names: WrittenName[] = [];
  let tellsOfPain = false;
  let hasOpenSession = false;
  for (const entry of entries) {
    for (const [of, name] of namesIn(entry)) if (name !== undefined) names.push([of, name.value]);
    tellsOfPain ||= entry.tag === 'pain';
    if (entry.tag === 'measure' && entry.goal) measured.add(entry.goal.value);
    if (entry.tag !== 'session' || !entry.kind) continue;
    if (entry.moved) movedTo.push(dayNumber(entry.moved.value));
    else if (!entry.skipped && !entry.task?.checked) hasOpenSession = true;
  }
  const plans = planningEntries({ reading }).length > 0;
  return { movedTo, measured: [...measured], tellsOfPain, plans, hasOpenSession, names };
}
