import * as vscode from 'vscode';
import type { Goal, Metric } from '../../journal/journal';
import type { Side } from '../../notation/entries';
import {
  convert,
  formatQuantity,
  type Quantity,
  readNumber,
  readQuantity,
  type Unit,
} from '../../notation/quantity';
import { addMeasurement } from '../../planning/measurement-change';
import { applyChanges } from '../apply-changes';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { chooseJournal } from './choose-journal';
import { registerCommand } from './run-command';

interface MetricChoice {
  readonly label: string;
  readonly description: string;
  readonly goal: Goal;
  readonly metric: Metric;
}

function metricChoices(journal: OpenJournal): MetricChoice[] {
  const goals = [...journal.journal.plan.goals.values()].filter((goal) => !goal.closed);
  return goals.flatMap((goal) =>
    goal.metrics.map((metric) => {
      const latest = journal.journal.measurements(goal.id, metric.name).at(-1);
      return {
        label: `${goal.title}: ${metric.name}`,
        description: latest
          ? vscode.l10n.t('latest {0} on {1}', formatQuantity(latest.quantity), latest.date)
          : vscode.l10n.t('no reading yet'),
        goal,
        metric,
      };
    }),
  );
}

/** The unit in which the metric is written. */
function unitOf(metric: Metric, journal: OpenJournal): Unit | undefined {
  const latest = journal.journal.measurements(metric.goal ?? '', metric.name).at(-1);
  return latest?.quantity.unit ?? metric.to?.unit ?? metric.from?.unit;
}

/** A quantity as typed; a bare number is one of `unit`. */
function quantityTyped(text: string, unit: Unit | undefined): Quantity | undefined {
  const typed = text.trim().replace(/\s+/g, '');
  const number = readNumber(typed);
  return number !== undefined && unit ? { value: number, unit } : readQuantity(typed);
}

async function askQuantity(metric: Metric, unit: Unit | undefined): Promise<Quantity | undefined> {
  const typed = await vscode.window.showInputBox({
    title: metric.name,
    prompt: unit
      ? vscode.l10n.t('The reading, in {0}. Successes out of attempts are written 3/5.', unit)
      : vscode.l10n.t('The reading with its unit, such as 9.5cm, 142deg or 20s.'),
    validateInput(text) {
      if (text.trim() === '') return undefined;
      const quantity = quantityTyped(text, unit);
      if (!quantity) return vscode.l10n.t('Write a number with its unit, such as 9.5cm, 142deg, 20s or 3/5.');
      if (unit && convert(quantity, unit) === undefined)
        return vscode.l10n.t('{0} is measured in {1}.', metric.name, unit);
      return undefined;
    },
  });
  return typed === undefined ? undefined : quantityTyped(typed, unit);
}

async function askSide(): Promise<Side | undefined> {
  const picked = await vscode.window.showQuickPick(
    [
      { label: vscode.l10n.t('left'), side: 'left' as const },
      { label: vscode.l10n.t('right'), side: 'right' as const },
    ],
    { title: vscode.l10n.t('Which side?') },
  );
  return picked?.side;
}

async function askCondition(): Promise<{ readonly condition?: 'warm' | 'cold' } | undefined> {
  const picked = await vscode.window.showQuickPick(
    [
      {
        label: vscode.l10n.t('warm'),
        description: vscode.l10n.t('after a warm-up'),
        condition: 'warm' as const,
      },
      {
        label: vscode.l10n.t('cold'),
        description: vscode.l10n.t('before any movement'),
        condition: 'cold' as const,
      },
      { label: vscode.l10n.t('not noted'), description: '', condition: undefined },
    ],
    { title: vscode.l10n.t('In which state?') },
  );
  return picked && (picked.condition ? { condition: picked.condition } : {});
}

/** Asks for a reading and writes it into today's note. */
export function registerMeasurementCommand(context: FeatureContext): vscode.Disposable {
  return registerCommand(context, 'addMeasurement', async (id) => {
    const journal = await chooseJournal(context.journals, id);
    if (!journal) return;
    const choices = metricChoices(journal);
    if (choices.length === 0) {
      void vscode.window.showInformationMessage(
        vscode.l10n.t(
          'No open goal has a metric yet. Add a line such as #metric gap from:12cm to:0cm below a goal.',
        ),
      );
      return;
    }
    const chosen =
      choices.length === 1
        ? choices[0]
        : await vscode.window.showQuickPick(choices, { title: vscode.l10n.t('What did you measure?') });
    if (!chosen) return;
    const { goal, metric } = chosen;
    const side = metric.sides ? await askSide() : undefined;
    if (metric.sides && !side) return;
    const quantity = await askQuantity(metric, unitOf(metric, journal));
    if (!quantity) return;
    const state = await askCondition();
    if (!state) return;
    const measurement = { goal: goal.id, metric: metric.name, quantity, ...(side ? { side } : {}), ...state };
    await applyChanges(journal, addMeasurement(journal.journal, journal.today(), measurement));
    vscode.window.setStatusBarMessage(
      vscode.l10n.t('{0} {1} written into today’s note.', metric.name, formatQuantity(quantity)),
      5000,
    );
  });
}
