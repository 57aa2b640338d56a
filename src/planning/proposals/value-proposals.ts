import type { Metric } from '../../journal/journal';
import type { FieldContext } from '../../notation/cursor-context';
import { readQuantity } from '../../notation/quantity';
import { deadlineProposals, moveProposals, todayProposal } from './date-proposals';
import {
  goalProposals,
  kindProposals,
  metricProposals,
  partnerProposals,
  placeProposals,
  reasonProposals,
  regionProposals,
  routineProposals,
} from './name-proposals';
import { blank, type Proposal, type ProposalSource, plain, snippet } from './proposal';
import { plannedQuantities } from './quantity-proposals';

function values(...texts: readonly string[]): readonly Proposal[] {
  return texts.map((text) => plain(text, { is: 'value' }));
}

const gaps = values('24h', '36h', '48h', '72h', '7d');
const counts = [1, 2, 3, 4].map((count) =>
  snippet(`${count}/week`, `${blank(1, count)}/week`, { is: 'value' }),
);

/** The metric that the fields of a `#step` name, or the only one of the goal. */
function metricOfStep(source: ProposalSource, context: FieldContext): Metric | undefined {
  const metrics = goalAround(source, context)?.metrics ?? [];
  const name = context.fields.find((one) => one.name?.value === 'metric')?.value.value;
  return name === undefined && metrics.length === 1 ? metrics[0] : metrics.find((one) => one.name === name);
}

/** The goal in whose scope the cursor stands. */
function goalAround(source: ProposalSource, context: FieldContext) {
  const offset = context.range.start;
  return [...source.journal.plan.goals.values()].find(
    ({ note, entry }) => note === source.note && entry.scope.start <= offset && offset <= entry.scope.end,
  );
}

function quantityProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  if (context.tag === 'step') {
    const metric = metricOfStep(source, context);
    return plannedQuantities(context.typed, [metric?.to, metric?.from]);
  }
  const written = (name: string) => {
    const field = context.fields.find((one) => one.name?.value === name);
    return field && readQuantity(field.value.value);
  };
  const known = [written('from'), written('to')];
  if (context.name !== 'noise') return plannedQuantities(context.typed, known);
  const unit = known.find((one) => one !== undefined)?.unit;
  return plannedQuantities(context.typed, [unit && { value: 1, unit }]);
}

/** What the value of the named field can be in which the cursor stands. */
export function valueProposals(source: ProposalSource, context: FieldContext): readonly Proposal[] {
  const kind = context.tag === 'routine' ? context.wordsBefore[1] : context.wordsBefore[0];
  switch (context.name) {
    case 'for':
      return goalProposals(source);
    case 'with':
      return partnerProposals(source, context.quoted);
    case 'where':
      return placeProposals(source, context.quoted);
    case 'routine':
      return routineProposals(source, kind);
    case 'skipped':
      return reasonProposals();
    case 'moved':
      return moveProposals(source);
    case 'by':
      return deadlineProposals(source);
    case 'from':
      return context.tag === 'goal' ? todayProposal(source) : quantityProposals(source, context);
    case 'to':
    case 'noise':
      return quantityProposals(source, context);
    case 'metric':
      return metricProposals(source, goalAround(source, context)?.id ?? '');
    case 'side':
      return ['left', 'right'].map((side) => plain(side, { is: 'side' }));
    case 'like':
      return kindProposals(source);
    case 'regions':
      return regionProposals(source);
    case 'gap':
      return gaps;
    case 'cap':
      return values('60min', '90min', '2h', '2h30');
    case 'min':
    case 'max':
      return counts;
    default:
      return [];
  }
}
