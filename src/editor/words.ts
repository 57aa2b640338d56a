import type { Unit } from '../notation/quantity';
import type { Message } from '../training/finding';
import { message } from '../training/wording';
import { type DateWords, dateWords, usableLanguage } from './date-words';

/** All that is needed to speak a person's language; what uses it needs no editor and is tested without one. */
export interface Words {
  /** A sentence with its values in the person's language. */
  readonly say: (message: Message) => string;
  readonly dates: DateWords;
  /** A number as the language writes it, rounded to at most `digits` decimals. */
  number(value: number, digits: number): string;
  /** A value with its unit: `9.8 cm`, `166°`, `60%`, `12 reps`. */
  quantity(value: number, unit: Unit): string;
}

/** Decimals that are shown; a mean of readings has more than a tape can tell. */
const decimals: Readonly<Partial<Record<Unit, number>>> = { m: 2, '%': 0 };

/** Words of `language`, a BCP 47 tag, in which `say` makes the sentences. */
export function wordsOf(language: string, say: (message: Message) => string): Words {
  const locale = usableLanguage(language);
  const number = (value: number, digits: number) =>
    // What rounds to zero has no sign.
    new Intl.NumberFormat(locale, { maximumFractionDigits: digits })
      .format(value)
      .replace(/^-(?=0(?:[.,]0*)?$)/, '');
  return {
    say,
    dates: dateWords(language),
    number,
    quantity(value, unit) {
      const written = number(value, decimals[unit] ?? 1);
      if (unit === 'deg') return `${written}°`;
      if (unit === '%') return `${written}%`;
      if (unit !== 'reps') return `${written} ${unit}`;
      return say(value === 1 ? message('{0} repetition', written) : message('{0} repetitions', written));
    },
  };
}
