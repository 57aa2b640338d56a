import { message } from '../../training/wording';
import { tickSession } from '../session-changes';
import { foundSession } from './found-session';
import type { Remedy, RemedyMaker } from './remedy';

/** Ticks the session that was done after all. */
export const tickAsDone: RemedyMaker = function* (mend): Generator<Remedy> {
  const session = foundSession(mend);
  if (!session) return;
  yield {
    name: 'tick-as-done',
    title: message('Tick it as done'),
    changes: tickSession(mend.journal, session, true),
    preferred: false,
  };
};
