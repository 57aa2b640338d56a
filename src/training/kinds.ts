import type { JournalPlan } from '../journal/journal';

/** Kinds that need no `#kind` line. */
export const builtInKinds = ['flexibility', 'strength', 'skill', 'conditioning', 'recovery'] as const;

/** Whether the notation or the journal has a kind called `name`. */
export function isKind(name: string, kinds: JournalPlan['kinds']): boolean {
  return (builtInKinds as readonly string[]).includes(name) || kinds.has(name);
}

/** `kind` itself, what it is like, what that is like, and so on; own kinds that are like each other end the chain. */
export function kindsOf(kind: string, kinds: JournalPlan['kinds']): readonly string[] {
  const chain = [kind];
  for (let like = kinds.get(kind); like !== undefined && !chain.includes(like); like = kinds.get(like)) {
    chain.push(like);
  }
  return chain;
}
