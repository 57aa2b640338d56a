import { message, weekdayName } from '../../training/wording';
import { recoveryEffort, turnIntoRecovery } from '../session-changes';
import { foundSession } from './found-session';
import type { Remedy, RemedyMaker } from './remedy';

/** Makes an easy session of recovery out of the one that was found. */
export const turnFoundIntoRecovery: RemedyMaker = function* (mend): Generator<Remedy> {
  const session = foundSession(mend);
  if (!session) return;
  yield {
    name: 'turn-into-recovery',
    title: message(
      "Turn {0}'s {1} session into recovery at effort {2}",
      weekdayName(session.day),
      session.kind,
      recoveryEffort,
    ),
    changes: turnIntoRecovery(mend.journal, session),
    preferred: false,
  };
};
