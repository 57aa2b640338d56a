import { skipReasons } from '../../notation/skip-reasons';
import { message } from '../../training/wording';
import { skipSession } from '../session-changes';
import { foundSession } from './found-session';
import type { Remedy, RemedyMaker } from './remedy';

/** Marks the session skipped: one remedy for each reason. */
export const markSkipped: RemedyMaker = function* (mend): Generator<Remedy> {
  const session = foundSession(mend);
  if (!session) return;
  for (const reason of skipReasons) {
    yield {
      name: 'mark-skipped',
      title: message('Mark it skipped: {0}', reason),
      changes: skipSession(mend.journal, session, reason),
      preferred: false,
    };
  }
};
