import type { Chart } from 'chart.js';
import { drawGaps } from './load-page/gap-chart';
import { drawLoads } from './load-page/load-chart';
import { partFill } from './load-page/patterns';
import { drawShares } from './load-page/share-chart';
import type {
  FromLoadPage,
  LoadPageData,
  LoadPageState,
  PartView,
  RecoveryView,
  ToLoadPage,
} from './load-page-data';
import type { PagePlace, TableView } from './page-parts';
import type { ChartLook } from './parts/chart-frame';
import { type Child, element, pageFoot, picture, type Shape } from './parts/dom';
import { PageFrame } from './parts/page-frame';
import { foldedTable } from './parts/table';
import { onThemeChange, themeColours } from './parts/theme';

const frame = new PageFrame<FromLoadPage, LoadPageState>(state);
const { editor } = frame;

let data: LoadPageData | undefined;
let subject = editor.getState()?.subject;
let turned = new Set(editor.getState()?.turned ?? []);
let drawings: ((look: ChartLook) => Chart | undefined)[] = [];
let charts: readonly Chart[] = [];

function state(): Omit<LoadPageState, 'scroll'> | undefined {
  if (!data) return undefined;
  return {
    journal: data.journal,
    ...(subject === undefined ? {} : { subject }),
    turned: [...turned],
  };
}

function drawAll(): void {
  for (const chart of charts) chart.destroy();
  if (!data) return;
  const look: ChartLook = { colours: themeColours(), locale: data.locale };
  charts = drawings.map((draw) => draw(look)).filter((chart) => chart !== undefined);
}

const open = (place: PagePlace): void => editor.postMessage({ type: 'open', place });

/** A table that begins open or closed, and stays as it was turned. */
function table(key: string, view: TableView, beginsOpen: boolean, shown: LoadPageData): HTMLElement {
  return foldedTable(view, {
    key,
    isOpen: beginsOpen !== turned.has(key),
    texts: shown.texts,
    open,
    toggled: (_key, isOpen) => {
      turned = new Set([...turned].filter((one) => one !== key));
      if (isOpen !== beginsOpen) turned.add(key);
      frame.keep();
    },
  });
}

function chart(label: string, draw: (canvas: HTMLCanvasElement, look: ChartLook) => Chart): HTMLElement {
  const canvas = element('canvas', { role: 'img', 'aria-label': label });
  drawings.push((look) => draw(canvas, look));
  return element('div', { class: 'chart plain' }, canvas);
}

function legend(...entries: readonly (readonly [string, string, ...Shape[]])[]): HTMLElement {
  return element(
    'ul',
    { class: 'legend' },
    ...entries.map(([colour, words, ...shapes]) => {
      const sign = picture(...shapes);
      sign.classList.add(colour);
      return element('li', {}, sign, words);
    }),
  );
}

/** The kinds of the bars, each with the filling of its part. */
function kindsLegend(kinds: readonly string[]): HTMLElement {
  return element(
    'ul',
    { class: 'legend' },
    ...kinds.map((kind, index) => {
      const sign = element('canvas', { class: 'sign', width: 24, height: 12, 'aria-hidden': 'true' });
      drawings.push(({ colours }) => {
        const context = sign.getContext('2d');
        if (!context) return undefined;
        context.clearRect(0, 0, sign.width, sign.height);
        context.fillStyle = partFill(index, colours);
        context.fillRect(0, 0, sign.width, sign.height);
        return undefined;
      });
      return element('li', {}, sign, kind);
    }),
  );
}

function part(view: PartView, key: string, shown: LoadPageData, ...middle: readonly Child[]): HTMLElement {
  return element(
    'section',
    { class: 'goal', 'aria-label': view.title },
    element('h2', {}, view.title),
    ...view.sentences.map((sentence) => element('p', {}, sentence)),
    view.notice === undefined ? undefined : element('p', { class: 'notice' }, view.notice),
    ...middle,
    ...view.tables.map((one, index) => table(`${key}/${index}`, one, index === 0, shown)),
  );
}

function loadSection(shown: LoadPageData): HTMLElement {
  const { load } = shown;
  const { criticism, chart: view } = load;
  return part(
    load,
    'load',
    shown,
    criticism
      ? element(
          'details',
          {},
          element('summary', { 'data-key': 'criticism' }, criticism.title),
          element('ul', { class: 'plain' }, ...criticism.sentences.map((one) => element('li', {}, one))),
        )
      : undefined,
    ...(view
      ? [chart(view.label, (canvas, look) => drawLoads(canvas, view, look)), kindsLegend(view.kinds)]
      : []),
  );
}

function subjectChoice(chosen: RecoveryView, shown: LoadPageData): HTMLElement {
  const options = shown.recovery.subjects.map(({ key, name }) =>
    element('option', { value: key, selected: key === chosen.key }, name),
  );
  const select = element('select', { id: 'subject', 'data-key': 'subject' }, ...options);
  select.addEventListener('change', () => {
    subject = select.value;
    render();
  });
  return element(
    'div',
    { class: 'choices' },
    element('div', { class: 'choice' }, element('label', { for: 'subject' }, shown.texts.subject), select),
  );
}

function recoverySection(shown: LoadPageData): HTMLElement {
  const { recovery, texts } = shown;
  const chosen = recovery.subjects.find(({ key }) => key === subject) ?? recovery.subjects[0];
  if (!chosen) return part(recovery, 'recovery', shown);
  const { chart: view, evidence, suggestion } = chosen;
  return part(
    recovery,
    'recovery',
    shown,
    subjectChoice(chosen, shown),
    ...chosen.sentences.map((sentence) => element('p', {}, sentence)),
    suggestion === undefined ? undefined : element('p', { class: 'verdict' }, suggestion),
    ...(view
      ? [
          chart(view.label, (canvas, look) => drawGaps(canvas, view, look, open)),
          legend(
            ['right', texts.sore, ['path', { d: 'M12 1.5 16 9.5H8Z', class: 'full' }]],
            ['step', texts.ready, ['circle', { cx: 12, cy: 6, r: 3.5 }]],
            ...(view.curve.length > 0
              ? ([
                  ['left', texts.curve, ['path', { d: 'M0 2C10 2 14 10 24 10' }]],
                  ['left', texts.curveBand, ['path', { d: 'M0 1H24V11H0Z', class: 'faint' }]],
                ] as const)
              : []),
            [
              'step',
              `${texts.accepted} (${view.accepted.label})`,
              ['path', { d: 'M0 6H24', 'stroke-dasharray': '2 3' }],
            ],
            ...(view.learned
              ? ([
                  [
                    'target',
                    `${texts.learned} (${view.learned.label})`,
                    ['path', { d: 'M4 0H20V12H4Z', class: 'fainter' }],
                    ['path', { d: 'M12 0V12' }],
                  ],
                ] as const)
              : []),
            ...(view.current
              ? ([
                  [
                    'step',
                    `${texts.current} (${view.current.label})`,
                    ['path', { d: 'M12 0V12', 'stroke-dasharray': '4 2' }],
                  ],
                ] as const)
              : []),
          ),
        ]
      : []),
    evidence ? table(`evidence/${chosen.key}`, evidence, true, shown) : undefined,
  );
}

function adherenceSection(shown: LoadPageData): HTMLElement {
  const { adherence, texts } = shown;
  const view = adherence.chart;
  return part(
    adherence,
    'adherence',
    shown,
    ...(view
      ? [
          chart(view.label, (canvas, look) => drawShares(canvas, view, look)),
          legend(
            ['left', texts.share, ['circle', { cx: 12, cy: 6, r: 3.5, class: 'full' }]],
            ['left', texts.interval, ['path', { d: 'M12 1V11M8 1H16M8 11H16' }]],
          ),
        ]
      : []),
  );
}

function render(): void {
  if (!data) return;
  const shown = data;
  drawings = [];
  frame.show(
    () => [
      element('div', { class: 'top' }, element('h1', {}, shown.title)),
      loadSection(shown),
      recoverySection(shown),
      adherenceSection(shown),
      pageFoot(shown.texts, () => editor.postMessage({ type: 'guide' })),
    ],
    { draw: drawAll },
  );
}

onThemeChange(drawAll);
frame.listen((message: ToLoadPage) => {
  data = message.data;
  document.documentElement.lang = data.locale;
  render();
});
