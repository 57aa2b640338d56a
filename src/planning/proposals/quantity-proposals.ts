import type { Measurement, Metric } from '../../journal/journal';
import type { FieldContext } from '../../notation/cursor-context';
import { formatQuantity, type Quantity, type Unit, unitNames } from '../../notation/quantity';
import { blank, type Proposal, type ProposalSource, plain, snippet } from './proposal';

const number = /^[-+−]?\d+(?:[.,]\d*)?$/;

/** A quantity whose numbers are places to fill in. */
function fillable(quantity: Quantity): string {
  const { attempts } = quantity;
  if (attempts) return `${blank(1, attempts.successes)}/${blank(2, attempts.of)}`;
  const written = formatQuantity(quantity);
  return `${blank(1, written.slice(0, written.length - quantity.unit.length))}${quantity.unit}`;
}

/** The typed number with each unit that it may have. */
function withUnits(typed: string, units: readonly Unit[], asked: boolean): readonly Proposal[] {
  const isOpen = /[.,]$/.test(typed);
  return units.map((unit) =>
    isOpen
      ? snippet(`${typed}0${unit}`, `${typed}${blank(1, 0)}${unit}`, { is: 'value' }, { asked })
      : plain(`${typed}${unit}`, { is: 'value' }, { asked }),
  );
}

function unitsOf(quantity: Quantity | undefined): readonly Unit[] {
  if (!quantity) return unitNames;
  return [quantity.unit];
}

/** The latest reading of a goal's metric, the one that is being written left out. */
function latestReading(
  source: ProposalSource,
  context: FieldContext,
  metric: Metric,
): Measurement | undefined {
  const { start } = context.range;
  return source.journal
    .measurements(metric.goal ?? '', metric.name)
    .filter((one) => one.note !== source.note || start < one.entry.range.start || start > one.entry.range.end)
    .at(-1);
}

/** The next reading of a metric, with its unit; it starts from the latest one. */
export function readingProposals(
  source: ProposalSource,
  context: FieldContext,
  metric: Metric | undefined,
): readonly Proposal[] {
  const latest = metric && latestReading(source, context, metric);
  const like = latest?.quantity ?? metric?.from ?? metric?.to;
  if (number.test(context.typed)) return withUnits(context.typed, unitsOf(like), true);
  if (!like) return [];
  return [
    snippet(
      formatQuantity(like),
      fillable(like),
      { is: 'reading', ...(latest ? { latest } : {}) },
      { asked: true, continues: true },
    ),
  ];
}

/** A quantity of a plan, such as a target, in the unit of what is known. */
export function plannedQuantities(
  typed: string,
  known: readonly (Quantity | undefined)[],
): readonly Proposal[] {
  const first = known.find((one) => one !== undefined);
  if (number.test(typed)) return withUnits(typed, unitsOf(first), false);
  if (!first) return [];
  return [snippet(formatQuantity(first), fillable(first), { is: 'value' })];
}
