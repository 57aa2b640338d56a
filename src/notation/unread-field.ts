import type { FieldToken } from './field-tokens';
import {
  lengthValue,
  perWeekValue,
  quantityValue,
  ratingValue,
  timeValue,
  type ValueKind,
  weekdayValue,
} from './field-values';
import { nearestWord } from './near-miss';
import type { NotationProblem, UnreadableReason } from './notation-problem';
import { readUnit, unitNames } from './quantity';
import type { SourceRange } from './source-range';
import { parseIsoDate } from './time/iso-date';
import { weekdayNames } from './time/weekday-names';

/** What a tag would have accepted. */
export interface AcceptedFields {
  readonly names: readonly string[];
  readonly bare: readonly ValueKind<unknown>[];
}

const lengthUnits = ['s', 'min', 'h', 'd'];

interface Explanation {
  readonly reason: UnreadableReason;
  readonly expected?: readonly string[] | undefined;
  readonly suggestion?: string | undefined;
}

function problem(range: SourceRange, text: string, why: Explanation): NotationProblem {
  return {
    code: 'unreadable-field',
    reason: why.reason,
    range,
    text,
    ...(why.expected ? { expected: why.expected } : {}),
    ...(why.suggestion ? { suggestion: why.suggestion } : {}),
  };
}

function examplesOf(accepted: AcceptedFields): readonly string[] {
  return accepted.bare.flatMap((kind) => kind.examples.slice(0, 1));
}

/** `2026-2-3` and `2026/02/03` written as ISO 8601 has it, when that date exists. */
function dateSuggestion(text: string): string | undefined {
  const match = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  if (!match) return undefined;
  return parseIsoDate(`${match[1]}-${match[2]?.padStart(2, '0')}-${match[3]?.padStart(2, '0')}`);
}

/** Units that the accepted fields take, for a number whose unit is missing or unknown. */
function unitsOf(accepted: AcceptedFields): readonly string[] {
  const takesLength = accepted.bare.includes(lengthValue);
  const takesQuantity = accepted.bare.includes(quantityValue);
  return [...(takesQuantity ? unitNames : []), ...(takesLength ? lengthUnits : [])];
}

function explainNumber(text: string, accepted: AcceptedFields): Explanation | undefined {
  const clock = /^(\d{1,2})[.h](\d{2})$/.exec(text);
  if (clock && accepted.bare.includes(timeValue)) {
    const time = `${clock[1]?.padStart(2, '0')}:${clock[2]}`;
    const suggestion = timeValue.read(time) ? time : undefined;
    return { reason: 'not-a-time', expected: timeValue.examples, suggestion };
  }
  const match = /^([-+−]?\d+(?:[.,]\d+)?)(\p{L}*|%|°)$/u.exec(text);
  if (!match) return undefined;
  if (accepted.bare.includes(perWeekValue) && unitsOf(accepted).length === 0)
    return { reason: 'not-per-week', expected: perWeekValue.examples, suggestion: `${match[1]}/week` };
  const expected = unitsOf(accepted);
  if (expected.length === 0) return undefined;
  if (match[2] === '') return { reason: 'missing-unit', expected };
  const near = nearestWord(match[2] ?? '', expected);
  const known = expected.includes(match[2] ?? '');
  return {
    reason: 'unknown-unit',
    expected,
    suggestion: near && !known ? `${match[1]}${near}` : undefined,
  };
}

function explainSlash(text: string, accepted: AcceptedFields): Explanation | undefined {
  const match = /^([\d.,]+)(?:x|×)?\/(.+)$/.exec(text);
  if (!match) return undefined;
  const weekly = accepted.bare.includes(perWeekValue);
  if (weekly && /^\d+$/.test(match[1] ?? '') && /^(w|wk|weeks?)$/i.test(match[2] ?? ''))
    return { reason: 'not-per-week', expected: perWeekValue.examples, suggestion: `${match[1]}/week` };
  if (accepted.bare.includes(ratingValue)) return { reason: 'not-a-rating', expected: ['7/10'] };
  if (weekly) return { reason: 'not-per-week', expected: perWeekValue.examples };
  if (accepted.bare.includes(quantityValue)) return { reason: 'not-a-quantity', expected: ['3/5'] };
  return undefined;
}

function explainBare(text: string, accepted: AcceptedFields): Explanation {
  if (accepted.bare.some((kind) => kind.read(text) !== undefined)) return { reason: 'repeated-field' };
  const bySlash = explainSlash(text, accepted);
  if (bySlash) return bySlash;
  const byNumber = explainNumber(text, accepted);
  if (byNumber) return byNumber;
  const first = accepted.bare[0];
  if (/^\d{1,2}[:.h]\d{0,2}/.test(text) && accepted.bare.includes(timeValue))
    return { reason: 'not-a-time', expected: timeValue.examples };
  if (accepted.bare.includes(weekdayValue)) {
    const suggestion = nearestWord(text, weekdayNames);
    return { reason: 'not-a-weekday', expected: weekdayValue.examples, suggestion };
  }
  if (accepted.names.length === 0 && accepted.bare.length === 1 && first)
    return { reason: first.reason, expected: first.examples, suggestion: dateSuggestion(text) };
  const date = dateSuggestion(text);
  if (date) return { reason: 'not-a-date', suggestion: date };
  if (/^\d{4}-\d{2}-\d{2}/.test(text) && accepted.bare.some((kind) => kind.reason === 'not-a-date'))
    return {
      reason: 'not-a-date',
      expected: accepted.bare.find((kind) => kind.reason === 'not-a-date')?.examples,
    };
  return {
    reason: 'unexpected-word',
    expected: [...accepted.names.map((name) => `${name}:`), ...examplesOf(accepted)],
  };
}

function explainNamed(token: FieldToken, accepted: AcceptedFields): NotationProblem {
  const name = token.name?.value ?? '';
  const expected = accepted.names.map((one) => `${one}:`);
  if (accepted.names.includes(name)) return problem(token.range, token.text, { reason: 'repeated-field' });
  return problem(token.name?.range ?? token.range, name, {
    reason: 'unknown-field',
    expected,
    suggestion: nearestWord(name, accepted.names),
  });
}

/** Whether `text` has a part shaped as a date that does not exist. */
function impossibleDate(text: string): string | undefined {
  const dates = text.match(/(?<!\d)\d{4}-\d{2}-\d{2}(?!\d)/g) ?? [];
  return dates.find((date) => parseIsoDate(date) === undefined);
}

/** Says of each field that no part of the tag could use what is wrong with it, and what may be meant. */
export function explainLeftover(
  left: readonly FieldToken[],
  accepted: AcceptedFields,
): readonly NotationProblem[] {
  const problems: NotationProblem[] = [];
  for (let index = 0; index < left.length; index += 1) {
    const token = left[index];
    const next = left[index + 1];
    if (!token) continue;
    const { range, text } = token;
    const badDate = impossibleDate(text);
    const isNumber = /^[-+−]?\d+(?:[.,]\d+)?$/.test(text);
    const units = unitsOf(accepted);
    if (token.unclosed) problems.push(problem(range, text, { reason: 'unclosed-quote' }));
    else if (badDate !== undefined) {
      const start = range.start + text.indexOf(badDate);
      problems.push({ code: 'bad-date', range: { start, end: start + badDate.length }, text: badDate });
    } else if (token.name && accepted.names.length > 0) problems.push(explainNamed(token, accepted));
    else if (isNumber && next && units.includes(readUnit(next.text) ?? next.text)) {
      const whole = { start: range.start, end: next.range.end };
      problems.push(
        problem(whole, `${text} ${next.text}`, {
          reason: 'space-before-unit',
          suggestion: `${text}${next.text}`,
        }),
      );
      index += 1;
    } else problems.push(problem(range, text, explainBare(text, accepted)));
  }
  return problems;
}
