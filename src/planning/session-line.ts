import { formatSessionLength } from '../notation/time/length-of-time';
import { formatTime, type WallMinutes } from '../notation/time/wall-clock';
import { formatField } from '../notation/write-entry';

/** What a new planned session's line says. */
export interface SessionToWrite {
  readonly kind: string;
  readonly start?: WallMinutes;
  readonly minutes?: number;
  /** Effort, 0 to 10. */
  readonly rating?: number;
  readonly goals?: readonly string[];
  readonly with?: readonly string[];
  readonly where?: string;
  readonly routine?: string;
}

/** `- [ ] #session flexibility 18:30 75min 7/10 for:low-split with:coach routine:split-evening`. */
export function sessionLine(session: SessionToWrite): string {
  const fields = ['- [ ] #session', session.kind];
  if (session.start !== undefined) fields.push(formatTime(session.start));
  if (session.minutes !== undefined) fields.push(formatSessionLength(session.minutes));
  if (session.rating !== undefined) fields.push(`${session.rating}/10`);
  if (session.goals?.length) fields.push(formatField({ name: 'for', text: session.goals.join(',') }));
  if (session.with?.length) fields.push(formatField({ name: 'with', text: session.with.join(',') }));
  if (session.where !== undefined) fields.push(formatField({ name: 'where', text: session.where }));
  if (session.routine !== undefined) fields.push(formatField({ name: 'routine', text: session.routine }));
  return fields.join(' ');
}
