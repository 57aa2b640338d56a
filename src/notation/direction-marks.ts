/**
 * Marks of Unicode that change the order in which text is shown until another mark ends them: embeddings, overrides and
 * isolates (UAX #9, section 2). Letters of every script keep their own direction without them.
 */
const directionMarks = /[\u202a-\u202e\u2066-\u2069]/g;

/**
 * Words of a note for a sentence that is not the athlete's own: a mark in them may turn around neither the rest of the
 * sentence nor the end of a file's name. The note itself keeps them.
 */
export function withoutDirectionMarks(text: string): string {
  return text.replace(directionMarks, '');
}
