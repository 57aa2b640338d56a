import { addDays, type IsoDate } from '../notation/time/iso-date';
import { type IsoMonth, isoMonthOf } from '../notation/time/iso-month';
import type { SessionMark } from '../training/month/month-facts';
import { markShapes } from './month-page/mark-shapes';
import type {
  FromMonthPage,
  MonthDayView,
  MonthPageData,
  MonthPageState,
  MonthSessionView,
  MonthWeekView,
  ToMonthPage,
} from './month-page-data';
import { button, type Child, drawing, element, pageFoot } from './parts/dom';
import { PageFrame } from './parts/page-frame';
import { foldedTable } from './parts/table';

const frame = new PageFrame<FromMonthPage, MonthPageState>(state, 'month');
const { editor } = frame;

/** Below this width days stand beneath each other; the same as in the style sheet. */
const narrow = window.matchMedia('(max-width: 46rem)');

let data: MonthPageData | undefined;
let day = editor.getState()?.day;
let isTableClosed = editor.getState()?.isTableClosed === true;
/** The keyboard turned to another month: its day is to have the focus there. */
let isFocusWanted = false;

function state(): Omit<MonthPageState, 'scroll'> | undefined {
  if (!data) return undefined;
  return {
    journal: data.journal,
    ...(data.isThisMonth ? {} : { month: data.month }),
    ...(day === undefined ? {} : { day }),
    isTableClosed,
  };
}

const dayKey = (date: string): string => `day/${date}`;

function mark(name: SessionMark): Element {
  return drawing('0 0 16 16', `mark ${name}`, markShapes[name]);
}

function sessionButton(session: MonthSessionView, key: string, isReachable: boolean): HTMLElement {
  const made = element(
    'button',
    { type: 'button', class: 'session', 'data-key': key, tabindex: isReachable ? 0 : -1 },
    mark(session.mark),
    element(
      'span',
      {},
      element('span', { class: 'kind' }, session.kind),
      ' ',
      element('span', { class: 'state' }, session.state),
    ),
  );
  made.addEventListener('click', () => editor.postMessage({ type: 'open', place: session.place }));
  return made;
}

function dayCell(view: MonthDayView, shown: MonthPageData): HTMLElement {
  const isReachable = view.date === day;
  const { note } = view;
  const number = element(
    'button',
    {
      type: 'button',
      class: 'number',
      'data-key': dayKey(view.date),
      tabindex: isReachable ? 0 : -1,
      'aria-disabled': note ? undefined : 'true',
      'aria-current': view.isToday ? 'date' : undefined,
      title: note ? shown.texts.openReading : shown.texts.noNote,
    },
    // Where days stand beneath each other, nothing but the whole date says which weekday it is.
    element('span', { class: 'short', 'aria-hidden': 'true' }, view.number),
    element('span', { class: 'long' }, view.label),
  );
  if (note) number.addEventListener('click', () => editor.postMessage({ type: 'open', place: note }));
  const classes = ['day', ...(view.isInMonth ? [] : ['other']), ...(view.isToday ? ['today'] : [])];
  return element(
    'td',
    { role: 'gridcell', class: classes.join(' '), 'data-date': view.date },
    number,
    view.isToday
      ? element('span', { class: 'word now', 'aria-hidden': 'true' }, shown.texts.today)
      : undefined,
    ...view.words.map((words) => element('span', { class: 'word' }, words)),
    ...view.sessions.map((session, index) => sessionButton(session, `${view.date}/${index}`, isReachable)),
  );
}

function weekRow(view: MonthWeekView, shown: MonthPageData): HTMLElement {
  return element(
    'tr',
    { role: 'row' },
    ...view.days.map((one) => dayCell(one, shown)),
    element(
      'td',
      { role: 'gridcell', class: 'week' },
      element('span', { class: 'name' }, view.label),
      ' ',
      element('span', {}, view.facts),
    ),
  );
}

/** Turns to another month; `to` is the day that gets the keyboard there. */
function turn(month: IsoMonth | undefined, to?: IsoDate): void {
  if (to !== undefined) {
    day = to;
    isFocusWanted = true;
  }
  editor.postMessage(month === undefined ? { type: 'month' } : { type: 'month', month });
}

/** Gives the keyboard to a day of the grid: its own buttons alone can be reached with the tab key. */
function moveTo(date: IsoDate): void {
  if (!data) return;
  if (!data.weeks.some(({ days }) => days.some((one) => one.date === date))) {
    turn(isoMonthOf(date), date);
    return;
  }
  day = date;
  for (const cell of Array.from(document.querySelectorAll<HTMLElement>('td.day'))) {
    for (const one of Array.from(cell.querySelectorAll('button'))) {
      one.tabIndex = cell.dataset.date === date ? 0 : -1;
    }
  }
  document.querySelector<HTMLElement>(`[data-key="${dayKey(date)}"]`)?.focus();
  frame.keep();
}

/** The day that a key leads to from `date`. */
function dayByKey(key: string, date: IsoDate, shown: MonthPageData): IsoDate | undefined {
  const week = shown.weeks.find(({ days }) => days.some((one) => one.date === date))?.days;
  switch (key) {
    case 'ArrowLeft':
      return addDays(date, -1);
    case 'ArrowRight':
      return addDays(date, 1);
    case 'ArrowUp':
      return addDays(date, narrow.matches ? -1 : -7);
    case 'ArrowDown':
      return addDays(date, narrow.matches ? 1 : 7);
    case 'Home':
      return week?.[0]?.date;
    case 'End':
      return week?.at(-1)?.date;
    default:
      return undefined;
  }
}

function onKey(event: KeyboardEvent): void {
  const cell = event.target instanceof Element ? event.target.closest<HTMLElement>('td.day') : null;
  if (!data || !cell || event.altKey || event.ctrlKey || event.metaKey) return;
  const date = cell.dataset.date as IsoDate;
  if (event.key === 'PageUp' || event.key === 'PageDown') {
    const { month } = event.key === 'PageUp' ? data.previous : data.next;
    // Each month has as many days as this one is asked for, or its last.
    const number = Math.min(Number(date.slice(8)), 28);
    turn(month, `${month}-${String(number).padStart(2, '0')}` as IsoDate);
  } else {
    const to = dayByKey(event.key, date, data);
    if (to === undefined) return;
    moveTo(to);
  }
  event.preventDefault();
}

function grid(shown: MonthPageData): HTMLElement {
  const table = element(
    'table',
    { role: 'grid', class: 'days', 'aria-label': shown.texts.grid, 'aria-describedby': 'keys' },
    element(
      'thead',
      { role: 'rowgroup' },
      element(
        'tr',
        { role: 'row' },
        ...shown.weekdays.map(({ short, long }) =>
          element('th', { role: 'columnheader', scope: 'col', 'aria-label': long }, short),
        ),
        element('th', { role: 'columnheader', scope: 'col', class: 'week' }, shown.texts.week),
      ),
    ),
    element('tbody', { role: 'rowgroup' }, ...shown.weeks.map((week) => weekRow(week, shown))),
  );
  table.addEventListener('keydown', onKey);
  return table;
}

/** The day that the keyboard stands on: as before where it is in sight, else today, else the first of the month. */
function chooseDay(shown: MonthPageData): void {
  const days = shown.weeks.flatMap((week) => week.days);
  const isInSight = (date: string | undefined): boolean => days.some((one) => one.date === date);
  if (isInSight(day)) return;
  day = shown.isThisMonth ? shown.today : days.find(({ isInMonth }) => isInMonth)?.date;
}

function contents(shown: MonthPageData): readonly Child[] {
  const { previous, next, texts } = shown;
  return [
    element(
      'div',
      { class: 'top' },
      element('h1', { 'aria-live': 'polite' }, shown.heading),
      element(
        'div',
        { class: 'actions' },
        button(`‹ ${previous.name}`, 'previous', () => turn(previous.month)),
        button(texts.thisMonth, 'this', () => turn(undefined)),
        button(`${next.name} ›`, 'next', () => turn(next.month)),
        button(texts.print, 'print', () => editor.postMessage({ type: 'print' })),
      ),
    ),
    ...shown.sentences.map((sentence) => element('p', {}, sentence)),
    grid(shown),
    element(
      'ul',
      { class: 'legend' },
      ...shown.legend.map(({ mark: name, words }) => element('li', {}, mark(name), words)),
    ),
    element('p', { class: 'caution', id: 'keys' }, texts.keys),
    foldedTable(shown.table, {
      key: 'kinds',
      isOpen: !isTableClosed,
      texts,
      open: (place) => editor.postMessage({ type: 'open', place }),
      toggled: (_key, isOpen) => {
        isTableClosed = !isOpen;
        frame.keep();
      },
    }),
    pageFoot(texts, () => editor.postMessage({ type: 'guide' })),
  ];
}

function render(): void {
  if (!data) return;
  const shown = data;
  chooseDay(shown);
  const focus = isFocusWanted ? dayKey(day ?? '') : undefined;
  isFocusWanted = false;
  frame.show(() => contents(shown), { focus });
}

frame.listen((message: ToMonthPage) => {
  data = message.data;
  document.documentElement.lang = data.locale;
  render();
});
