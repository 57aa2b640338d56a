import { badDate } from './bad-date';
import { duplicateGoal } from './duplicate-goal';
import { duplicateSession } from './duplicate-session';
import type { NoteRule } from './note-rule';
import { unitMismatch } from './unit-mismatch';
import { unknownGoal } from './unknown-goal';
import { unknownMetric } from './unknown-metric';
import { unknownTag } from './unknown-tag';
import { unreadableField } from './unreadable-field';

/** Every check of what one note writes. */
export const noteRules: readonly NoteRule[] = [
  unreadableField,
  unknownTag,
  unknownGoal,
  unknownMetric,
  unitMismatch,
  duplicateGoal,
  duplicateSession,
  badDate,
];
