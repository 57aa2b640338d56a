import type { JournalPlan, Need, Routine, Session } from '../journal/journal';

/** The routine that a session names, or else the one of the first need it counts for that names one. */
export function sessionRoutine(
  session: Session,
  countsFor: readonly Need[],
  plan: JournalPlan,
): Routine | undefined {
  const id =
    session.entry.routine?.value ??
    countsFor.find((need) => need.routine !== undefined)?.routine ??
    undefined;
  return id === undefined ? undefined : plan.routines.get(id);
}

/**
 * How long a session lasts, in minutes of the clock: its span, else its length, else the length of a need it
 * counts for, else that of its routine; `undefined` when none says.
 */
export function sessionMinutes(
  session: Session,
  countsFor: readonly Need[],
  plan: JournalPlan,
): number | undefined {
  const { span, length } = session.entry;
  if (span?.value.end !== undefined) return span.value.end - span.value.start;
  if (length) return length.value.minutes;
  const need = countsFor.find((one) => one.length !== undefined);
  return need?.length?.minutes ?? sessionRoutine(session, countsFor, plan)?.length?.minutes;
}
