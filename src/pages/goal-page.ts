import type { Chart } from 'chart.js';
import { type Drawing, goalSection } from './goal-page/goal-section';
import { drawReadings } from './goal-page/reading-chart';
import type { FilterState, FromGoalPage, GoalPageData, GoalPageState, ToGoalPage } from './goal-page-data';
import { element, pageFoot } from './parts/dom';
import { PageFrame } from './parts/page-frame';
import { onThemeChange, themeColours } from './parts/theme';

const frame = new PageFrame<FromGoalPage, GoalPageState>(state);
const { editor } = frame;

let data: GoalPageData | undefined;
let closed = new Set(editor.getState()?.closed ?? []);
let filters: Readonly<Record<string, Partial<FilterState>>> = editor.getState()?.filters ?? {};
/** Private reasons that were asked for; they live as long as the page does and are never kept. */
const whys = new Map<string, readonly string[]>();
let drawings: readonly Drawing[] = [];
let charts: readonly Chart[] = [];

function state(): Omit<GoalPageState, 'scroll'> | undefined {
  if (!data) return undefined;
  return { journal: data.journal, goal: data.chosen, closed: [...closed], filters };
}

function drawAll(): void {
  for (const chart of charts) chart.destroy();
  if (!data) return;
  const look = { colours: themeColours(), locale: data.locale };
  charts = drawings.map(({ canvas, chart }) =>
    drawReadings(canvas, chart, look, (place) => editor.postMessage({ type: 'open', place })),
  );
}

function choice(shown: GoalPageData): HTMLElement {
  const options = shown.choices.map(({ goal, label }) =>
    element('option', { value: goal, selected: goal === shown.chosen }, label),
  );
  const select = element('select', { id: 'goal', 'data-key': 'goal' }, ...options);
  select.addEventListener('change', () => editor.postMessage({ type: 'choose', goal: select.value }));
  return element('div', { class: 'choice' }, element('label', { for: 'goal' }, shown.texts.goal), select);
}

function sections(shown: GoalPageData): readonly HTMLElement[] {
  const found: Drawing[] = [];
  const made = shown.goals.map((goal) =>
    goalSection(goal, {
      texts: shown.texts,
      why: whys.get(goal.id),
      isClosed: (key) => closed.has(key),
      toggled: (key, isOpen) => {
        closed = new Set([...closed].filter((one) => one !== key));
        if (!isOpen) closed.add(key);
        frame.keep();
      },
      filter: (key) => filters[key],
      filtered: (key, filter) => {
        filters = { ...filters, [key]: filter };
        render();
      },
      open: (place) => editor.postMessage({ type: 'open', place }),
      toggleWhy: () => {
        if (whys.delete(goal.id)) render();
        else editor.postMessage({ type: 'why', goal: goal.id });
      },
      copy: () => editor.postMessage({ type: 'copy', goal: goal.id }),
      draw: (drawing) => found.push(drawing),
    }),
  );
  drawings = found;
  return made;
}

function render(): void {
  if (!data) return;
  const shown = data;
  frame.show(
    () => [
      element(
        'div',
        { class: 'top' },
        element('h1', {}, shown.title),
        shown.choices.length > 1 ? choice(shown) : undefined,
      ),
      ...(shown.notice === undefined ? [] : [element('p', { class: 'notice' }, shown.notice)]),
      ...sections(shown),
      pageFoot(shown.texts, () => editor.postMessage({ type: 'guide' })),
    ],
    { draw: drawAll },
  );
}

onThemeChange(drawAll);
frame.listen((message: ToGoalPage) => {
  if (message.type === 'why') {
    whys.set(message.goal, message.words);
  } else {
    const shown = message.data.goals.map((goal) => goal.id);
    // A reason that was shown may have been written anew, or its goal is no longer here.
    for (const goal of [...whys.keys()]) {
      if (shown.includes(goal)) editor.postMessage({ type: 'why', goal });
      else whys.delete(goal);
    }
    data = message.data;
    document.documentElement.lang = data.locale;
  }
  render();
});
