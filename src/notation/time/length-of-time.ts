/** How a length was written: sessions are counted in minutes, gaps in hours or whole days. */
export type LengthUnit = 's' | 'min' | 'h' | 'd';

/** A length of time such as `75min`, `1h15`, `90s`, `48h` or `7d`. */
export interface LengthOfTime {
  /** Minutes, a day counted as 24 hours. */
  readonly minutes: number;
  /** The largest unit that was written. */
  readonly unit: LengthUnit;
}

const minutesOf: Record<LengthUnit, number> = { s: 1 / 60, min: 1, h: 60, d: 1440 };

/** Reads a length; the number may have a decimal point or comma. `undefined` when it is none or not above zero. */
export function readLength(text: string): LengthOfTime | undefined {
  const mixed = /^(\d+)h(\d{1,2})(?:min)?$/.exec(text);
  if (mixed) {
    const minutes = Number(mixed[1]) * 60 + Number(mixed[2]);
    return Number(mixed[2]) < 60 && minutes > 0 ? { minutes, unit: 'h' } : undefined;
  }
  const plain = /^(\d+(?:[.,]\d+)?)(s|min|h|d)$/.exec(text);
  if (!plain) return undefined;
  const unit = plain[2] as LengthUnit;
  const minutes = Number(plain[1]?.replace(',', '.')) * minutesOf[unit];
  return minutes > 0 ? { minutes, unit } : undefined;
}

/** A session's length in the notation, whole minutes: `75min`. */
export function formatSessionLength(minutes: number): string {
  return `${Math.max(1, Math.round(minutes))}min`;
}
