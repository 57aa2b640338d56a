/** Minutes since the midnight with which a note's day begins; 24:00 and more lie on the next day. */
export type WallMinutes = number;

const minutesADay = 1440;

/** A time of day, with an end when a span was written. The end is always after the start. */
export interface TimeSpan {
  readonly start: WallMinutes;
  /** Above 1440 when the span ends on the next day. */
  readonly end?: WallMinutes;
}

function readTime(text: string): WallMinutes | undefined {
  const match = /^(\d{1,2}):(\d{2})$/.exec(text);
  if (!match) return undefined;
  const hours = Number(match[1]);
  const minutes = Number(match[2]);
  return hours <= 24 && minutes <= 59 && hours * 60 + minutes <= minutesADay
    ? hours * 60 + minutes
    : undefined;
}

/**
 * Reads `18:30` or `18:30-19:45` (an en dash serves as well). A span whose end is not later than its start
 * ends on the next day. `24:00` is an end, never a start. `undefined` when it is neither.
 */
export function readTimeSpan(text: string): TimeSpan | undefined {
  const [first = '', second, ...more] = text.split(/[-–]/);
  const start = readTime(first);
  if (start === undefined || start === minutesADay || more.length > 0) return undefined;
  if (second === undefined) return { start };
  const end = readTime(second);
  if (end === undefined) return undefined;
  return { start, end: end > start ? end : end + minutesADay };
}

/** `18:30`; minutes of the next day start again at 00:00, except exactly 24:00. */
export function formatTime(minutes: WallMinutes): string {
  const within = minutes === minutesADay ? minutes : minutes % minutesADay;
  return `${String(Math.floor(within / 60)).padStart(2, '0')}:${String(within % 60).padStart(2, '0')}`;
}

/** `18:30` or `18:30-19:45`, readable by {@link readTimeSpan}. */
export function formatTimeSpan(span: TimeSpan): string {
  return span.end === undefined
    ? formatTime(span.start)
    : `${formatTime(span.start)}-${formatTime(span.end)}`;
}
