import { formatTime } from '../notation/time/wall-clock';
import type { PlannedSession } from '../planning/plan-weeks';
import { fillMessage } from '../training/finding';

/** A session as the notation names its fields; `with` and `for` as a note has them, several with commas. */
export function printedSession({
  date,
  start,
  minutes,
  kind,
  goal,
  with: company,
  from,
  reason,
}: PlannedSession) {
  return {
    date,
    ...(start === undefined ? {} : { start: formatTime(start) }),
    minutes,
    kind,
    ...(goal === undefined ? {} : { for: goal }),
    ...(company.length === 0 ? {} : { with: company.join(',') }),
    ...(from === undefined ? {} : { movedFrom: from.date }),
    reason: fillMessage(reason),
  };
}
