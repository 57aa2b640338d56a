/** What a number measures; only units of one dimension can be compared. */
export type Dimension = 'distance' | 'mass' | 'duration' | 'angle' | 'share' | 'count';

/** The units a quantity may be written in, as {@link readQuantity} names them. */
export type Unit = 'mm' | 'cm' | 'm' | 'in' | 'kg' | 'lb' | 's' | 'min' | 'deg' | '%' | 'reps';

/** A number with its unit; successes out of attempts are a share in per cent that keeps its two counts. */
export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
  readonly attempts?: { readonly successes: number; readonly of: number };
}

interface UnitFacts {
  readonly dimension: Dimension;
  /** How many of the dimension's first unit one of this unit is. */
  readonly factor: number;
}

/** Exact by definition: the international inch (25.4 mm) and pound (0.45359237 kg) of 1959. */
const units: Readonly<Record<Unit, UnitFacts>> = {
  cm: { dimension: 'distance', factor: 1 },
  mm: { dimension: 'distance', factor: 0.1 },
  m: { dimension: 'distance', factor: 100 },
  in: { dimension: 'distance', factor: 2.54 },
  kg: { dimension: 'mass', factor: 1 },
  lb: { dimension: 'mass', factor: 0.45359237 },
  s: { dimension: 'duration', factor: 1 },
  min: { dimension: 'duration', factor: 60 },
  deg: { dimension: 'angle', factor: 1 },
  '%': { dimension: 'share', factor: 1 },
  reps: { dimension: 'count', factor: 1 },
};

/** Every unit that can be written, `°` aside, which is another spelling of `deg`. */
export const unitNames = Object.keys(units) as readonly Unit[];

/** The unit written as `text`, or `undefined`. */
export function readUnit(text: string): Unit | undefined {
  if (text === '°') return 'deg';
  return Object.hasOwn(units, text) ? (text as Unit) : undefined;
}

/** The dimension that `unit` belongs to. */
export function dimensionOf(unit: Unit): Dimension {
  return units[unit].dimension;
}

/** The number in `text`, with decimal point or comma and an optional sign (hyphen or minus), or `undefined`. */
export function readNumber(text: string): number | undefined {
  const match = /^([-+−]?)(\d+)(?:[.,](\d+))?$/.exec(text);
  if (!match) return undefined;
  const size = Number(`${match[2]}.${match[3] ?? '0'}`);
  return match[1] === '-' || match[1] === '−' ? -size : size;
}

/** Reads `9.5cm`, `9,5cm`, `-2cm`, `142deg`, `142°`, `12reps`, `60%` and, as a share, `3/5`. */
export function readQuantity(text: string): Quantity | undefined {
  const attempts = /^(\d+)\/(\d+)$/.exec(text);
  if (attempts) {
    const successes = Number(attempts[1]);
    const of = Number(attempts[2]);
    if (of === 0 || successes > of) return undefined;
    return { value: (100 * successes) / of, unit: '%', attempts: { successes, of } };
  }
  const match = /^([-+−]?\d+(?:[.,]\d+)?)(\p{L}+|%|°)$/u.exec(text);
  const value = readNumber(match?.[1] ?? '');
  const unit = readUnit(match?.[2] ?? '');
  return value === undefined || unit === undefined ? undefined : { value, unit };
}

/** `quantity` as a number of `unit`, or `undefined` when the two are of different dimensions. */
export function convert(quantity: Quantity, unit: Unit): number | undefined {
  if (quantity.unit === unit) return quantity.value;
  const from = units[quantity.unit];
  const to = units[unit];
  return from.dimension === to.dimension ? (quantity.value * from.factor) / to.factor : undefined;
}

/** The quantity in the notation, readable by {@link readQuantity}; at most three decimals. */
export function formatQuantity(quantity: Quantity): string {
  if (quantity.attempts) return `${quantity.attempts.successes}/${quantity.attempts.of}`;
  return `${Number(quantity.value.toFixed(3))}${quantity.unit}`;
}
