import { formatQuantity } from '../../notation/quantity';
import { message } from '../../training/wording';
import { addUnderGoal, foundGoal } from './goal-lines';
import type { Remedy, RemedyMaker } from './remedy';

/**
 * Adds a `#metric` beneath the goal, with the first reading that the notes hold. What nothing says yet is left empty,
 * so that the place to fill in is seen.
 */
export const addMetric: RemedyMaker = function* (mend): Generator<Remedy> {
  const goal = foundGoal(mend);
  if (!goal) return;
  const { journal, finding } = mend;
  const asked = finding.facts.metric;
  const readings = journal.measurements(goal.id);
  const first = readings.find(({ entry }) =>
    asked === undefined ? entry.metric !== undefined : entry.metric?.value === asked,
  );
  const name = asked === undefined ? (first?.entry.metric?.value ?? 'reading') : String(asked);
  const reading = first ?? (asked === undefined ? readings[0] : undefined);
  const from = reading ? formatQuantity(reading.quantity) : '';
  yield {
    name: 'add-metric',
    title:
      from === ''
        ? message('Add a #metric line {0}, to be filled in', name)
        : message('Add a #metric line {0} from {1}, to be filled in', name, from),
    changes: addUnderGoal(journal, goal, `- #metric ${name} from:${from} to:`, ['metric', 'why']),
    preferred: finding.remedies[0] === 'add-metric',
  };
};
