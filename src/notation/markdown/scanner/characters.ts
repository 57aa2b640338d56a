// UTF-16 code units that mean something to Markdown, and classes of them.

export const tab = 0x09;
export const lineFeed = 0x0a;
export const carriageReturn = 0x0d;
export const space = 0x20;
export const exclamation = 0x21;
export const quotation = 0x22;
export const hash = 0x23;
export const ampersand = 0x26;
export const apostrophe = 0x27;
export const openParenthesis = 0x28;
export const closeParenthesis = 0x29;
export const asterisk = 0x2a;
export const plus = 0x2b;
export const hyphen = 0x2d;
export const dot = 0x2e;
export const slash = 0x2f;
export const zero = 0x30;
export const one = 0x31;
export const nine = 0x39;
export const colon = 0x3a;
export const semicolon = 0x3b;
export const less = 0x3c;
export const equals = 0x3d;
export const greater = 0x3e;
export const question = 0x3f;
export const at = 0x40;
export const openBracket = 0x5b;
export const backslash = 0x5c;
export const closeBracket = 0x5d;
export const underscore = 0x5f;
export const backtick = 0x60;
export const tilde = 0x7e;

/** Space or tab. `NaN`, which stands behind the last character, is neither. */
export function isBlank(unit: number): boolean {
  return unit === space || unit === tab;
}

/** Space, tab or line feed: what separates words where lines are joined by line feeds. */
export function isWhitespace(unit: number): boolean {
  return unit === space || unit === tab || unit === lineFeed;
}

export function isDigit(unit: number): boolean {
  return unit >= zero && unit <= nine;
}

/** An ASCII letter. */
export function isLetter(unit: number): boolean {
  const lower = unit | 0x20;
  return lower >= 0x61 && lower <= 0x7a;
}

/** An ASCII letter or digit. */
export function isAlphanumeric(unit: number): boolean {
  return isLetter(unit) || isDigit(unit);
}

/** An ASCII control character. */
export function isControl(unit: number): boolean {
  return unit < space || unit === 0x7f;
}

/** ASCII punctuation, which a backslash can escape. */
export function isPunctuation(unit: number): boolean {
  return (
    (unit > space && unit < zero) ||
    (unit > nine && unit < 0x41) ||
    (unit > 0x5a && unit < 0x61) ||
    (unit > 0x7a && unit < 0x7f)
  );
}
