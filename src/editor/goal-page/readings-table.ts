import { formatQuantity } from '../../notation/quantity';
import type { GoalProgress } from '../../training/goal-progress';
import { type PageContext, say } from '../page/page-context';

function cell(text: string): string {
  return text.replace(/\|/g, '\\|').replace(/\s+/g, ' ');
}

function row(cells: readonly string[]): string {
  return `| ${cells.map(cell).join(' | ')} |`;
}

/**
 * The readings of a goal as a Markdown table, oldest first, dates as ISO 8601 has them and values as they were
 * written. `undefined` when there is no reading.
 */
export function readingsAsMarkdown(goal: GoalProgress, context: PageContext): string | undefined {
  const readings = goal.metrics
    .flatMap((metric) =>
      metric.series.flatMap((series) =>
        series.readings.map((reading) => ({ metric: metric.name, side: series.side, reading })),
      ),
    )
    .sort(
      (one, other) =>
        one.reading.day - other.reading.day || one.reading.range.start - other.reading.range.start,
    );
  if (readings.length === 0) return undefined;
  const sides = { left: say(context, 'left'), right: say(context, 'right') };
  const conditions = { warm: say(context, 'warm'), cold: say(context, 'cold') };
  const hasSides = readings.some(({ side }) => side !== undefined);
  const hasConditions = readings.some(({ reading }) => reading.condition !== undefined);
  const head = [
    say(context, 'Day'),
    say(context, 'Metric'),
    say(context, 'Value'),
    ...(hasSides ? [say(context, 'Side')] : []),
    ...(hasConditions ? [say(context, 'Measured')] : []),
  ];
  const lines = readings.map(({ metric, side, reading }) =>
    row([
      reading.date,
      metric,
      formatQuantity(reading.written),
      ...(hasSides ? [side ? sides[side] : ''] : []),
      ...(hasConditions ? [reading.condition ? conditions[reading.condition] : ''] : []),
    ]),
  );
  return [row(head), row(head.map(() => '---')), ...lines, ''].join('\n');
}
