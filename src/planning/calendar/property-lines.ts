import ICAL from 'ical.js';
import type { LocalMinutes } from '../../journal/calendar/calendar-time';
import { withoutDirectionMarks } from '../../notation/direction-marks';
import type { DayNumber } from '../../notation/time/iso-date';
import type { InstantMinutes } from '../../notation/time/zoned-time';

/** Characters that text of a calendar must not hold; a tab and a line break may. */
const forbidden = /[^\P{Cc}\t\n]/gu;

const longestLine = 75;

/** A property of text, its special characters escaped; not folded. */
export function textLine(name: string, text: string): string {
  // The library knows its names in small letters.
  const property = new ICAL.Property(name.toLowerCase());
  property.setValue(withoutDirectionMarks(text).replace(/\r\n?/g, '\n').replace(forbidden, ''));
  return property.toICALString();
}

/** A whole number with a sign and its digits, as dates and offsets write it. */
function digits(value: number, length: number): string {
  return String(value).padStart(length, '0');
}

/** `20260226T183000` of what a clock shows. */
export function localValue(local: LocalMinutes): string {
  return new Date(Math.round(local * 60_000)).toISOString().slice(0, 19).replaceAll(/[-:]/g, '');
}

/** `20260226T183000Z` of an instant. */
export function utcValue(instant: InstantMinutes): string {
  return `${localValue(instant)}Z`;
}

/** `20260226` of a day. */
export function dateValue(day: DayNumber): string {
  return localValue(day * 1440).slice(0, 8);
}

/** `+0100` of minutes ahead of UTC. */
export function offsetValue(minutes: number): string {
  const seconds = Math.round(Math.abs(minutes) * 60);
  const rest = seconds % 60 === 0 ? '' : digits(seconds % 60, 2);
  return `${minutes < 0 ? '-' : '+'}${digits(Math.floor(seconds / 3600), 2)}${digits(Math.floor(seconds / 60) % 60, 2)}${rest}`;
}

/**
 * A line in pieces of at most 75 octets of UTF-8, as RFC 5545, section 3.1, asks: each piece but the first begins with
 * a space, which counts, and no character is cut.
 */
export function foldLine(line: string): string {
  const encoder = new TextEncoder();
  const pieces: string[] = [];
  let piece = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > longestLine) {
      pieces.push(piece);
      piece = ' ';
      octets = 1;
    }
    piece += character;
    octets += size;
  }
  return [...pieces, piece].join('\r\n');
}

/** The text of a file of these lines, each folded and ended as the standard asks. */
export function fileOf(lines: readonly string[]): string {
  return lines.map((line) => `${foldLine(line)}\r\n`).join('');
}
