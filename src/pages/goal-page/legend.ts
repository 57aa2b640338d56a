import type { ChartView, PageTexts, SeriesView } from '../goal-page-data';
import { element, picture, type Shape } from '../parts/dom';

const circle: Shape = ['circle', { cx: 12, cy: 6, r: 3.5, class: 'full' }];
const triangle: Shape = ['path', { d: 'M12 1.5 16 9.5H8Z', class: 'full' }];
const line: Shape = ['path', { d: 'M0 6H24' }];

function entry(name: string, words: string, ...shapes: readonly Shape[]): HTMLLIElement {
  const sign = picture(...shapes);
  sign.classList.add(name);
  return element('li', {}, sign, words);
}

function seriesEntry(series: SeriesView): HTMLLIElement {
  return series.side === 'right'
    ? entry('right', series.name, triangle)
    : entry(series.side, series.name, circle);
}

/** What is drawn of a line and its bands, once for all series; the noise for each, as it has a size of its own. */
function trendEntries(view: ChartView, texts: PageTexts): readonly HTMLLIElement[] {
  const drawn = view.series.filter(({ trend }) => trend !== undefined);
  const colour = drawn.length === 1 ? (drawn[0]?.side ?? 'step') : 'step';
  const has = (part: 'band' | 'fan'): boolean => drawn.some(({ trend }) => trend?.[part] !== undefined);
  const noises = drawn.map(({ side, name, noise }) => ({
    side,
    words: drawn.length === 1 ? noise.label : `${name}: ${noise.label}`,
  }));
  return [
    ...(drawn.length > 0 ? [entry(colour, texts.line, line)] : []),
    ...(has('band') ? [entry(colour, texts.band, ['path', { d: 'M0 3 24 1V11L0 9Z', class: 'faint' }])] : []),
    ...(has('fan')
      ? [
          entry(
            colour,
            texts.fan,
            ['path', { d: 'M0 6 24 1V11Z', class: 'fainter' }],
            ['path', { d: 'M0 6 24 1M0 6 24 11', 'stroke-dasharray': '5 4' }],
          ),
        ]
      : []),
    ...noises.map(({ side, words }) =>
      entry(side, words, ['path', { d: 'M0 1.5H24M0 10.5H24', 'stroke-dasharray': '1 4' }]),
    ),
  ];
}

/** The signs of readings in another state: an upright cross, on the right side a lying one. */
function otherShapes(view: ChartView): readonly Shape[] {
  const isRight = (series: SeriesView): boolean => series.side === 'right';
  const measured = view.series.filter((series) => series.others.length > 0);
  return [
    ...(measured.some((series) => !isRight(series))
      ? [['path', { d: 'M6 1.5V10.5M1.5 6H10.5' }] as const]
      : []),
    ...(measured.some(isRight) ? [['path', { d: 'M14.5 2.5 21.5 9.5M21.5 2.5 14.5 9.5' }] as const] : []),
  ];
}

/** The colour of the only side that has such readings; that of words when both have. */
function otherColour(view: ChartView): string {
  const [first, ...more] = view.series.filter((series) => series.others.length > 0);
  return first && more.length === 0 ? first.side : 'step';
}

/** What the readings in other states are called. */
function othersNames(view: ChartView): readonly string[] {
  const names = view.series.flatMap(({ others, othersName }) =>
    others.length > 0 && othersName !== undefined ? [othersName] : [],
  );
  return [...new Set(names)].slice(0, 1);
}

/** Says what the shapes of a chart stand for; only those that it draws. */
export function legend(view: ChartView, texts: PageTexts): HTMLUListElement {
  const hasRepeats = view.series.some((series) => series.repeats.length > 0);
  return element(
    'ul',
    { class: 'legend' },
    ...view.series.map(seriesEntry),
    hasRepeats ? entry('none', texts.repeat, ['circle', { cx: 12, cy: 6, r: 3 }]) : undefined,
    ...othersNames(view).map((name) => entry(otherColour(view), name, ...otherShapes(view))),
    ...trendEntries(view, texts),
    view.target
      ? entry('target', texts.target, ['path', { d: 'M0 6H24', 'stroke-dasharray': '2 3' }])
      : undefined,
    view.steps.some((step) => !step.isDone)
      ? entry('step', texts.openStep, ['path', { d: 'M12 1 17 6 12 11 7 6Z' }])
      : undefined,
    view.steps.some((step) => step.isDone)
      ? entry('step', texts.doneStep, ['path', { d: 'M12 1 17 6 12 11 7 6Z', class: 'full' }])
      : undefined,
    view.weeks.length > 0
      ? entry('session', texts.sessions, ['path', { d: 'M9 2H15V11H9Z', class: 'full' }])
      : undefined,
    view.weeks.some(({ load }) => load > 0)
      ? entry('load', texts.loads, ['path', { d: 'M9 2H15V11H9Z', class: 'full' }])
      : undefined,
    view.weeks.some(({ load, loadIsLeast }) => load > 0 && loadIsLeast)
      ? entry('load', texts.leastLoads, ['path', { d: 'M9 2H15V11H9Z' }])
      : undefined,
  );
}
