import type { Message } from '../../training/finding';

/** The template of `part` with its places counted on from `from`. */
function shifted(part: Message, from: number): string {
  return part.template.replace(/\{(\d+)\}/g, (_, index) => `{${Number(index) + from}}`);
}

/** One message that says one after the other. */
export function joined(parts: readonly (Message | string)[]): Message {
  const values: (string | number)[] = [];
  let template = '';
  for (const part of parts) {
    if (typeof part === 'string') {
      template += part;
      continue;
    }
    template += shifted(part, values.length);
    values.push(...part.values);
  }
  return { template, values };
}

/** The parts with `separator` between them, ready to be joined. */
export function separated(parts: readonly Message[], separator: string): readonly (Message | string)[] {
  return parts.flatMap((part, index) => (index === 0 ? [part] : [separator, part]));
}

/** `one, another and a third`. */
export function listed(parts: readonly Message[], lastSeparator = ' and '): Message {
  return joined(
    parts.flatMap((part, index) => {
      if (index === 0) return [part];
      return [index === parts.length - 1 ? lastSeparator : ', ', part];
    }),
  );
}
