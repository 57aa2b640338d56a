import { type LoadTotal, totalLoad } from '../statistics/session-load';
import { knownMinutes } from './day-loads';
import type { SessionLoad } from './session-loads';

/** The part of a load that one kind or region has. */
export interface LoadShare {
  /** `undefined` for sessions whose regions nothing says. */
  readonly name: string | undefined;
  readonly load: LoadTotal;
  readonly minutes: number;
}

function shares(
  sessions: readonly SessionLoad[],
  namesOf: (session: SessionLoad) => readonly (string | undefined)[],
): readonly LoadShare[] {
  const groups = new Map<string | undefined, SessionLoad[]>();
  for (const session of sessions) {
    for (const name of namesOf(session)) groups.set(name, [...(groups.get(name) ?? []), session]);
  }
  return [...groups]
    .map(([name, own]) => ({
      name,
      load: totalLoad(own.map(({ load }) => load)),
      minutes: knownMinutes(own),
    }))
    .sort((one, other) => {
      if (one.name === undefined || other.name === undefined) return one.name === undefined ? 1 : -1;
      return one.name < other.name ? -1 : 1;
    });
}

/** The load by kind as written, in order of name. These add up to the whole. */
export function loadByKind(sessions: readonly SessionLoad[]): readonly LoadShare[] {
  return shares(sessions, ({ kind }) => [kind]);
}

/**
 * The load by region, in order of name. A session counts wholly for each region that its routine names, as nothing
 * says how it was shared out, so these add up to more than the whole; sessions without regions come last.
 */
export function loadByRegion(sessions: readonly SessionLoad[]): readonly LoadShare[] {
  return shares(sessions, ({ regions }) => (regions.length === 0 ? [undefined] : regions));
}
