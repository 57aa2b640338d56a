import type { LoadTotal } from '../../training/statistics/session-load';
import { type PageContext, say } from './page-context';

/** `480`, `at least 300 (1 session unknown)`, `unknown (2 sessions)`. What is not known is never taken for zero. */
export function loadInWords({ n, knownTotal, unknown }: LoadTotal, context: PageContext): string {
  const known = context.words.number(knownTotal, 0);
  if (unknown === 0) return known;
  if (unknown === n) {
    return unknown === 1
      ? say(context, 'unknown (1 session)')
      : say(context, 'unknown ({0} sessions)', unknown);
  }
  return unknown === 1
    ? say(context, 'at least {0} (1 session unknown)', known)
    : say(context, 'at least {0} ({1} sessions unknown)', known, unknown);
}
