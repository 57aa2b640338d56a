import type { TagName } from './entries';

/** What can stand behind a tag besides its words and numbers. */
export interface TagFields {
  /** Names of named fields, in the order of the guide: `for` in `for:low-split`. */
  readonly named: readonly string[];
  /** Words with a meaning of their own, such as `warm`. */
  readonly flags: readonly string[];
}

const nothing: TagFields = { named: [], flags: [] };

/** The named fields and flags that the readers of the tags take. */
export const tagFields: { readonly [Tag in TagName]: TagFields } = {
  goal: { named: ['by', 'from', 'title'], flags: [] },
  why: nothing,
  metric: { named: ['from', 'to', 'noise'], flags: ['sides'] },
  step: { named: ['by', 'metric', 'to'], flags: [] },
  need: { named: ['gap', 'max', 'where', 'with', 'routine'], flags: [] },
  routine: { named: ['regions'], flags: [] },
  rule: { named: ['gap', 'min', 'max', 'cap'], flags: [] },
  kind: { named: ['like'], flags: [] },
  free: { named: ['where', 'with'], flags: [] },
  busy: nothing,
  event: { named: ['for'], flags: [] },
  block: nothing,
  athlete: { named: ['consent', 'born'], flags: ['minor'] },
  zone: nothing,
  session: { named: ['for', 'with', 'where', 'routine', 'skipped', 'moved'], flags: [] },
  measure: { named: ['side', 'photo'], flags: ['warm', 'cold'] },
  sore: nothing,
  pain: { named: [], flags: ['clear'] },
  win: nothing,
};

/** Whether the tag holds free words only, in which nothing is a field. */
export function holdsFreeWords(tag: TagName): boolean {
  return tag === 'why' || tag === 'win';
}

/** Named fields that take several values, joined by commas. */
export const listFields: ReadonlySet<string> = new Set(['for', 'with', 'regions']);
