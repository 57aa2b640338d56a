import type { Chart } from 'chart.js';
import { type Drawing, goalSection } from './goal-page/goal-section';
import { drawReadings } from './goal-page/reading-chart';
import type { FilterState, FromGoalPage, GoalPageData, GoalPageState, ToGoalPage } from './goal-page-data';
import { element, pageFoot } from './parts/dom';
import { onThemeChange, themeColours } from './parts/theme';

/** What the editor gives to a page. */
interface EditorApi {
  postMessage(message: FromGoalPage): void;
  getState(): GoalPageState | undefined;
  setState(state: GoalPageState): void;
}

declare function acquireVsCodeApi(): EditorApi;

const editor = acquireVsCodeApi();
const root = element('main', {});
document.body.append(root);

let data: GoalPageData | undefined;
let closed = new Set(editor.getState()?.closed ?? []);
let filters: Readonly<Record<string, Partial<FilterState>>> = editor.getState()?.filters ?? {};
let scrollTo = editor.getState()?.scroll;
/** Private reasons that were asked for; they live as long as the page does and are never kept. */
const whys = new Map<string, readonly string[]>();
let drawings: readonly Drawing[] = [];
let charts: readonly Chart[] = [];

function keep(): void {
  if (!data) return;
  editor.setState({
    journal: data.journal,
    goal: data.chosen,
    closed: [...closed],
    filters,
    scroll: document.documentElement.scrollTop,
  });
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
        keep();
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

/** Puts everything on the page anew, and the keyboard's focus back to where it was. */
function render(): void {
  if (!data) return;
  const focused = document.activeElement?.getAttribute('data-key');
  const scroll = document.documentElement.scrollTop;
  root.replaceChildren(
    element(
      'div',
      { class: 'top' },
      element('h1', {}, data.title),
      data.choices.length > 1 ? choice(data) : undefined,
    ),
    ...(data.notice === undefined ? [] : [element('p', { class: 'notice' }, data.notice)]),
    ...sections(data),
    pageFoot(data.texts, () => editor.postMessage({ type: 'guide' })),
  );
  drawAll();
  for (const candidate of Array.from(root.querySelectorAll<HTMLElement>('[data-key]'))) {
    if (focused !== null && candidate.dataset.key === focused) candidate.focus({ preventScroll: true });
  }
  document.documentElement.scrollTop = scrollTo ?? scroll;
  scrollTo = undefined;
  keep();
}

window.addEventListener('message', ({ data: message }: MessageEvent<ToGoalPage>) => {
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

let scrolling: number | undefined;
window.addEventListener('scroll', () => {
  window.clearTimeout(scrolling);
  scrolling = window.setTimeout(keep, 200);
});

onThemeChange(drawAll);
editor.postMessage({ type: 'ready' });
