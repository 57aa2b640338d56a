import type { CursorContext, FieldContext } from '../../notation/cursor-context';
import { tagFields } from '../../notation/tag-fields';
import { bareProposals } from './bare-proposals';
import { type Proposal, type ProposalSource, plain } from './proposal';
import { tagProposals } from './tag-proposals';
import { valueProposals } from './value-proposals';

/** Tags whose first word is a name that only the athlete can give. */
const needsOwnName = new Set(['goal', 'metric', 'step', 'routine', 'kind']);

/** Named fields and flags that the tag takes and that are not written yet. */
function fieldProposals(context: FieldContext): readonly Proposal[] {
  if (needsOwnName.has(context.tag) && context.wordsBefore.length === 0) return [];
  const { named, flags } = tagFields[context.tag];
  const written = new Set(context.fields.map((one) => one.name?.value ?? one.text));
  const state = written.has('warm') || written.has('cold') ? ['warm', 'cold'] : [];
  return [
    ...named
      .filter((name) => !written.has(name))
      .filter((name) => name !== 'title')
      .map((name) => plain(`${name}:`, { is: 'field', name }, { continues: name !== 'photo' })),
    ...flags
      .filter((flag) => !written.has(flag) && !state.includes(flag))
      .map((flag) => plain(flag, { is: 'flag' })),
  ];
}

/**
 * What can be written where the cursor stands, the likeliest first. Names that were seen before come without the
 * half-written one under the cursor.
 */
export function proposals(source: ProposalSource, context: CursorContext): readonly Proposal[] {
  if (context.place === 'tag-name') return tagProposals(source, context);
  const found =
    context.name === undefined
      ? [...bareProposals(source, context), ...fieldProposals(context)]
      : valueProposals(source, context);
  const left = found.filter((one) => !context.taken.includes(one.label));
  const isSeen = ({ subject }: Proposal): boolean =>
    subject.is === 'partner' ||
    subject.is === 'place' ||
    subject.is === 'region' ||
    (subject.is === 'kind' && subject.origin === 'seen');
  const whole = left.filter((one) => one.label !== context.typed || !isSeen(one));
  return context.beforeField ? whole.map((one) => ({ ...one, text: `${one.text} ` })) : whole;
}
