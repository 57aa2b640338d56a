import type { WeekRule } from '../week-under-check';
import { dayOverCap } from './day-over-cap';
import { gapTooShort } from './gap-too-short';
import { noRecoverySession } from './no-recovery-session';
import { noRestDay } from './no-rest-day';
import { noTimeWithPartner } from './no-time-with-partner';
import { openPain } from './open-pain';
import { outsideFreeHours } from './outside-free-hours';
import { overlappingSessions } from './overlapping-sessions';
import { sessionOverdue } from './session-overdue';
import { under18Hours } from './under-18-hours';
import { under18Photo } from './under-18-photo';
import { under18Rest } from './under-18-rest';
import { weekOverMaximum } from './week-over-maximum';
import { weekUnderMinimum } from './week-under-minimum';

/** Every check of a week. */
export const weekRules: readonly WeekRule[] = [
  gapTooShort,
  weekOverMaximum,
  weekUnderMinimum,
  noRecoverySession,
  noRestDay,
  dayOverCap,
  sessionOverdue,
  outsideFreeHours,
  overlappingSessions,
  noTimeWithPartner,
  openPain,
  under18Hours,
  under18Rest,
  under18Photo,
];
