// The sample athlete's notes, read a second way: with regular expressions, and none of the project's own readers.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import jstat from 'jstat';

const { jStat } = jstat;
const root = join(process.cwd(), 'sample-journal/athlete');

/** The notes of the athlete by path. */
export const sampleNotes = new Map<string, string>(
  readdirSync(root, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.md'))
    .map((path) => [path.replaceAll('\\', '/'), readFileSync(join(root, path), 'utf8')] as const),
);

/** Days since 1970-01-01. */
export const daysSince1970 = (on: string): number => Date.parse(`${on}T00:00Z`) / 86_400_000;
export const dateOf = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

/** Every line of the day notes up to and including a day, with its date. */
export function linesUpTo(last: string): readonly (readonly [on: string, line: string])[] {
  return [...sampleNotes]
    .flatMap(([path, text]) => {
      const on = /(?:^|\/)(\d{4}-\d{2}-\d{2})[^/]*\.md$/.exec(path)?.[1];
      return on === undefined || on > last
        ? []
        : text
            .split('\n')
            .filter((line) => !/^\s{2}/.test(line))
            .map((line) => [on, line] as const);
    })
    .sort(([one], [other]) => (one < other ? -1 : one > other ? 1 : 0));
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;

/** A session as its line says. */
export interface WrittenSession {
  readonly on: string;
  readonly kind: string;
  readonly line: string;
  readonly state: 'done' | 'skipped' | 'moved' | 'open';
  readonly rating: number;
  readonly minutes: number;
}

/** The sessions of the day notes up to and including a day, by day. */
export const writtenSessions = (last: string): readonly WrittenSession[] =>
  linesUpTo(last).flatMap(([on, line]) => {
    const found = /^[-*] \[([ x])\] #session (\S+) ([^—]*?)(?: -- .*)?$/.exec(line);
    if (!found) return [];
    const fields = found[3] ?? '';
    const span = / (\d+):(\d+)-(\d+):(\d+)/.exec(` ${fields}`)?.slice(1).map(Number);
    const [fromHour = 0, fromMinute = 0, toHour = 0, toMinute = 0] = span ?? [];
    const minutes = span
      ? 60 * (toHour - fromHour) + toMinute - fromMinute
      : Number(/ (\d+)min/.exec(` ${fields}`)?.[1] ?? 60 * Number(/ (\d+)h /.exec(` ${fields}`)?.[1]));
    return [
      {
        on,
        kind: found[2] ?? '',
        line,
        state: fields.includes('skipped:')
          ? 'skipped'
          : fields.includes('moved:')
            ? 'moved'
            : found[1] === 'x'
              ? 'done'
              : 'open',
        rating: Number(/(\d+)\/10/.exec(fields)?.[1]),
        minutes,
      } as const,
    ];
  });

/** Wilson's bounds as the two roots of (p - x)^2 = z^2 x (1 - x) / n. */
export function wilsonByHand(successes: number, n: number): readonly [number, number] {
  const z = jStat.normal.inv(0.975, 0, 1);
  const p = successes / n;
  const [a, b, c] = [1 + z ** 2 / n, -(2 * p + z ** 2 / n), p ** 2];
  const root = Math.sqrt(b ** 2 - 4 * a * c);
  return [(-b - root) / (2 * a), (-b + root) / (2 * a)];
}
