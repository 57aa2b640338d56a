import type {
  FilterState,
  FilterView,
  GoalView,
  MetricView,
  PagePlace,
  PageTexts,
  StepView,
  TableView,
} from '../goal-page-data';
import { button, element } from '../parts/dom';
import { foldedTable } from '../parts/table';
import { filteredChart, filteredFigures, filteredReadings, filterOf } from './filter';
import { legend } from './legend';

/** A canvas that is still to be drawn, with what it draws. */
export interface Drawing {
  readonly canvas: HTMLCanvasElement;
  readonly chart: NonNullable<MetricView['chart']>;
}

/** What a goal's section needs of the page around it. */
export interface SectionBehaviour {
  readonly texts: PageTexts;
  /** The words of the private reason, while they are shown. */
  readonly why: readonly string[] | undefined;
  readonly isClosed: (key: string) => boolean;
  readonly toggled: (key: string, isOpen: boolean) => void;
  /** What was chosen for a metric, by the key of its section. */
  readonly filter: (key: string) => Partial<FilterState> | undefined;
  readonly filtered: (key: string, filter: FilterState) => void;
  readonly open: (place: PagePlace) => void;
  readonly toggleWhy: () => void;
  readonly copy: () => void;
  readonly draw: (drawing: Drawing) => void;
}

const stepSigns: Readonly<Record<StepView['state'], string>> = {
  done: '✓',
  reached: '✓',
  overdue: '!',
  open: '○',
};

function paragraphs(sentences: readonly string[], className?: string): readonly HTMLParagraphElement[] {
  return sentences.map((sentence) => element('p', { class: className }, sentence));
}

function table(key: string, view: TableView, how: SectionBehaviour): HTMLElement {
  const { texts, toggled, open } = how;
  return foldedTable(view, { key, isOpen: !how.isClosed(key), texts, toggled, open });
}

function choice<Key extends string>(
  key: string,
  filter: FilterView<Key>,
  chosen: Key,
  choose: (key: Key) => void,
): HTMLElement {
  const options = filter.options.map((option) =>
    element('option', { value: option.key, selected: option.key === chosen }, option.label),
  );
  const select = element('select', { id: key, 'data-key': key }, ...options);
  select.addEventListener('change', () => {
    const found = filter.options.find((option) => option.key === select.value);
    if (found) choose(found.key);
  });
  return element('div', { class: 'choice' }, element('label', { for: key }, filter.label), select);
}

function choices(
  key: string,
  metric: MetricView,
  filter: FilterState,
  how: SectionBehaviour,
): HTMLElement | undefined {
  const { sides, conditions } = metric;
  if (!sides && !conditions) return undefined;
  return element(
    'div',
    { class: 'choices' },
    sides && choice(`${key}/side`, sides, filter.side, (side) => how.filtered(key, { ...filter, side })),
    conditions &&
      choice(`${key}/condition`, conditions, filter.condition, (condition) =>
        how.filtered(key, { ...filter, condition }),
      ),
  );
}

function metricPart(goal: GoalView, metric: MetricView, how: SectionBehaviour): HTMLElement {
  const key = `${goal.id}/${metric.name}`;
  const filter = filterOf(metric, how.filter(key));
  const part = element(
    'section',
    { class: 'metric', 'aria-label': metric.name },
    element('h3', {}, metric.name),
    ...paragraphs(metric.verdicts, 'verdict'),
    ...paragraphs(metric.sentences),
    metric.notice === undefined ? undefined : element('p', { class: 'notice' }, metric.notice),
    choices(key, metric, filter, how),
  );
  if (metric.chart) {
    const chart = filteredChart(metric.chart, filter);
    const canvas = element('canvas', { role: 'img', 'aria-label': chart.label });
    const plain = chart.weeks.length === 0 ? 'chart without-sessions' : 'chart';
    part.append(element('div', { class: plain }, canvas), legend(chart, how.texts));
    how.draw({ canvas, chart });
  }
  if (metric.figures) part.append(table(`${key}/figures`, filteredFigures(metric.figures, filter), how));
  if (metric.table) part.append(table(`${key}/readings`, filteredReadings(metric.table, filter), how));
  return part;
}

function stepItem(goal: GoalView, step: StepView, how: SectionBehaviour): HTMLLIElement {
  const link = button(step.name, `${goal.id}/step/${step.name}`, () => how.open(step.place));
  link.classList.add('place');
  return element(
    'li',
    {},
    element('span', { class: 'state', 'aria-hidden': 'true' }, stepSigns[step.state]),
    link,
    element('span', { class: 'text' }, step.text),
  );
}

function actions(goal: GoalView, how: SectionBehaviour): HTMLElement {
  const { texts } = how;
  const why = goal.hasWhy
    ? button(how.why ? texts.hideWhy : texts.showWhy, `${goal.id}/why`, how.toggleWhy)
    : undefined;
  why?.setAttribute('aria-expanded', String(how.why !== undefined));
  const hasReadings = goal.metrics.some((metric) => metric.table);
  return element(
    'div',
    { class: 'actions' },
    why,
    hasReadings ? button(texts.copy, `${goal.id}/copy`, how.copy) : undefined,
    button(texts.openGoal, `${goal.id}/open`, () => how.open(goal.place)),
  );
}

/** A goal: where it stands, its charts and tables, its steps. */
export function goalSection(goal: GoalView, how: SectionBehaviour): HTMLElement {
  return element(
    'section',
    { class: 'goal', 'aria-label': goal.title },
    element('h2', {}, goal.title),
    ...paragraphs(goal.sentences),
    actions(goal, how),
    how.why ? element('div', { class: 'why', role: 'note' }, ...paragraphs(how.why)) : undefined,
    ...paragraphs(goal.notices, 'notice'),
    ...goal.metrics.map((metric) => metricPart(goal, metric, how)),
    goal.steps.length === 0
      ? undefined
      : element(
          'section',
          { class: 'metric', 'aria-label': how.texts.steps },
          element('h3', {}, how.texts.steps),
          element('ul', { class: 'steps' }, ...goal.steps.map((step) => stepItem(goal, step, how))),
        ),
    goal.sessions ? table(`${goal.id}/sessions`, goal.sessions, how) : undefined,
  );
}
