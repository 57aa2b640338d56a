// Moves the dates of a text by whole weeks, so that every weekday stays what it was.

const dayMs = 86_400_000;

/**
 * The number of a calendar day, counted from 1970-01-01; undefined for a day that the calendar does not have.
 * @param {number} year
 * @param {number} month from 1
 * @param {number} day from 1
 * @returns {number | undefined}
 */
function dayNumber(year, month, day) {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  const real =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return real ? date.getTime() / dayMs : undefined;
}

/** @param {number} number a day number */
function isoDate(number) {
  return new Date(number * dayMs).toISOString().slice(0, 10);
}

/**
 * The day number of the Monday of an ISO 8601 week: week 1 holds 4 January.
 * @param {string} week `YYYY-Www`
 * @returns {number | undefined} undefined for a week that its year does not have
 */
function mondayOf(week) {
  const [, year, number] = /^(\d{4})-W(\d{2})$/.exec(week) ?? [];
  if (year === undefined || number === undefined) return undefined;
  const fourth = dayNumber(Number(year), 1, 4) ?? 0;
  const monday = startOfWeek(fourth) + (Number(number) - 1) * 7;
  return isoWeek(monday) === week ? monday : undefined;
}

/** @param {number} number a day number @returns {number} that of its Monday; day 0 was a Thursday */
function startOfWeek(number) {
  return number - ((((number + 3) % 7) + 7) % 7);
}

/** @param {number} number a day number @returns {string} its ISO 8601 week; its year is that of its Thursday */
function isoWeek(number) {
  const monday = startOfWeek(number);
  const year = new Date((monday + 3) * dayMs).getUTCFullYear();
  const first = startOfWeek(dayNumber(year, 1, 4) ?? 0);
  return `${String(year).padStart(4, '0')}-W${String((monday - first) / 7 + 1).padStart(2, '0')}`;
}

/**
 * The ISO 8601 week of a date.
 * @param {string} date `YYYY-MM-DD`
 * @returns {string} `YYYY-Www`
 * @throws {RangeError} when there is no such date
 */
export function weekOfDate(date) {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  const number = dayNumber(Number(year), Number(month), Number(day));
  if (number === undefined) throw new RangeError(`${date} is not a date.`);
  return isoWeek(number);
}

/**
 * How many weeks lie between two ISO 8601 weeks.
 * @param {string} from `YYYY-Www`
 * @param {string} to `YYYY-Www`
 * @returns {number} negative when `to` is earlier
 * @throws {RangeError} when there is no such week
 */
export function weeksBetween(from, to) {
  const [start, end] = [mondayOf(from), mondayOf(to)];
  if (start === undefined) throw new RangeError(`${from} is not a week.`);
  if (end === undefined) throw new RangeError(`${to} is not a week.`);
  return (end - start) / 7;
}

// A date stands alone: not inside a longer number, word or chain of numbers. It may begin a file name
// (`2026-02-24-left.jpg`), end one (`left-2026-02-24.jpg`), or carry a time (`2026-02-24T18:30`).
const dateOrWeek =
  /(?<![\p{L}\p{N}_]|\p{N}-)(?:(\d{4})-(\d{2})-(\d{2})(?!\p{N}|-\p{N}|_|(?!T\d)\p{L})|(\d{4}-W\d{2})(?![\p{L}\p{N}_]))/gu;

/**
 * Moves every ISO 8601 date and every ISO 8601 week name of a text, or of a file name, by whole weeks. What only looks
 * like one (2026-02-30, 2025-W53, 12026-02-24) stays as it is, and so does everything else.
 * @param {string} text
 * @param {number} weeks a whole number
 */
export function shiftDates(text, weeks) {
  return text.replace(dateOrWeek, (whole, year, month, day, week) => {
    const from = week === undefined ? dayNumber(Number(year), Number(month), Number(day)) : mondayOf(week);
    if (from === undefined) return whole;
    return week === undefined ? isoDate(from + weeks * 7) : isoWeek(from + weeks * 7);
  });
}
