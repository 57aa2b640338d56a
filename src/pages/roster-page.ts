import { button, type Child, drawing, element, pageFoot } from './parts/dom';
import { PageFrame } from './parts/page-frame';
import { mostBoxes, severityShapes, stateShapes, weekBoxes } from './roster-page/roster-shapes';
import {
  type FromRosterPage,
  type RosterLink,
  type RosterMark,
  type RosterPageData,
  type RosterPageState,
  type RosterRowView,
  rosterActs,
  type ToRosterPage,
} from './roster-page-data';

let data: RosterPageData | undefined;

const frame = new PageFrame<FromRosterPage, RosterPageState>(() => (data ? {} : undefined), 'roster');
const { editor } = frame;

function mark(name: RosterMark): Element {
  return drawing('0 0 16 16', `mark ${name}`, stateShapes[name]);
}

/** Words that lead to their place, or words alone. */
function linked({ words, place }: RosterLink, row: RosterRowView, key: string): Child {
  if (!place) return words;
  const made = button(words, key, () => editor.postMessage({ type: 'openIn', journal: row.journal, place }));
  made.classList.add('place');
  return made;
}

function list(items: readonly (readonly Child[])[]): HTMLElement {
  return element('ul', {}, ...items.map((children) => element('li', {}, ...children)));
}

function reasons(row: RosterRowView, shown: RosterPageData): Child {
  if (row.reasons.length === 0) return element('p', { class: 'reasons' }, mark('fine'), shown.texts.fine);
  const made = list(
    row.reasons.map((reason, index) => [
      mark(reason.mark),
      element('span', {}, linked(reason, row, `${row.journal}/why/${index}`)),
    ]),
  );
  made.classList.add('reasons');
  return made;
}

function week({ week: { done, planned, words } }: RosterRowView): readonly Child[] {
  const boxes =
    planned > 0 && planned <= mostBoxes
      ? drawing(`0 0 ${planned * 10} 14`, 'boxes', weekBoxes(done, planned))
      : undefined;
  return [words, boxes];
}

function findings(row: RosterRowView, { texts }: RosterPageData): readonly Child[] {
  if (row.findings.length === 0) return [texts.none];
  return [
    list(
      row.findings.map((found) => [
        drawing('0 0 16 16', `mark ${found.severity}`, severityShapes[found.severity]),
        element('span', {}, linked(found, row, `${row.journal}/${found.severity}`)),
      ]),
    ),
  ];
}

function pains(row: RosterRowView, { texts }: RosterPageData): readonly Child[] {
  if (row.pains.length === 0) return [texts.none];
  return [list(row.pains.map((pain, index) => [linked(pain, row, `${row.journal}/pain/${index}`)]))];
}

function goals(row: RosterRowView, { texts }: RosterPageData): readonly Child[] {
  if (row.goalsBehind.length === 0) return [texts.none];
  return [
    list(
      row.goalsBehind.map(({ goal, words }) => {
        const made = button(words, `${row.journal}/goal/${goal}`, () =>
          editor.postMessage({ type: 'goal', journal: row.journal, goal }),
        );
        made.classList.add('place');
        return [made];
      }),
    ),
  ];
}

function commentButton(row: RosterRowView, { texts }: RosterPageData): Child {
  if (texts.acts.comment === undefined) return undefined;
  const made = button(texts.comment, `${row.journal}/comment`, () =>
    editor.postMessage({ type: 'act', act: 'comment', journal: row.journal }),
  );
  made.setAttribute('aria-label', row.commentLabel);
  return made;
}

/** Each cell carries the head of its column, for windows in which cells stand beneath each other. */
function tableRow(row: RosterRowView, shown: RosterPageData): HTMLElement {
  const { texts } = shown;
  const [, ...heads] = texts.head;
  const cells: readonly (readonly Child[])[] = [
    [linked(row.lastLog, row, `${row.journal}/last`)],
    week(row),
    findings(row, shown),
    [linked(row.slipping, row, `${row.journal}/slipping`)],
    pains(row, shown),
    [linked(row.next, row, `${row.journal}/next`)],
    goals(row, shown),
  ];
  return element(
    'tr',
    { role: 'row' },
    element(
      'th',
      { role: 'rowheader', scope: 'row' },
      element('span', { class: 'name' }, linked(row.name, row, `${row.journal}/name`)),
      reasons(row, shown),
      commentButton(row, shown),
    ),
    ...cells.map((children, index) =>
      element(
        'td',
        { role: 'cell' },
        // Seen only where the heads of the columns are not: a screen reader reads those.
        element('span', { class: 'head', 'aria-hidden': 'true' }, heads[index] ?? ''),
        element('div', {}, ...children),
      ),
    ),
  );
}

/** The place in the table to which a key leads: up and down the same column, to the first and the last athlete. */
function onKey(event: KeyboardEvent): void {
  const from = event.target instanceof Element ? event.target.closest('button') : null;
  const cell = from?.closest<HTMLTableCellElement>('td, th');
  const rows = Array.from(document.querySelectorAll<HTMLTableRowElement>('table.roster tbody tr'));
  const row = rows.findIndex((one) => cell && one.contains(cell));
  if (!cell || row < 0 || event.altKey || event.ctrlKey || event.metaKey) return;
  const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  const candidates =
    step === undefined
      ? event.key === 'Home'
        ? rows
        : event.key === 'End'
          ? [...rows].reverse()
          : []
      : step > 0
        ? rows.slice(row + 1)
        : rows.slice(0, row).reverse();
  const column = cell.cellIndex;
  // A cell in which nothing can be opened is passed over.
  const to = candidates.flatMap((one) => one.cells[column]?.querySelector('button') ?? [])[0];
  if (!to) return;
  to.focus();
  event.preventDefault();
}

function table(shown: RosterPageData): HTMLElement {
  const { texts } = shown;
  const made = element(
    'table',
    { role: 'table', class: 'roster', 'aria-label': texts.table, 'aria-describedby': 'keys' },
    element(
      'thead',
      { role: 'rowgroup' },
      element(
        'tr',
        { role: 'row' },
        ...texts.head.map((head) => element('th', { role: 'columnheader', scope: 'col' }, head)),
      ),
    ),
    element('tbody', { role: 'rowgroup' }, ...shown.rows.map((row) => tableRow(row, shown))),
  );
  made.addEventListener('keydown', onKey);
  return made;
}

function contents(shown: RosterPageData): readonly Child[] {
  const { texts, rows } = shown;
  return [
    element(
      'div',
      { class: 'top' },
      element('h1', {}, shown.title),
      element(
        'div',
        { class: 'actions' },
        ...rosterActs.flatMap((act) => {
          const words = texts.acts[act];
          return words === undefined
            ? []
            : [button(words, act, () => editor.postMessage({ type: 'act', act }))];
        }),
      ),
    ),
    ...shown.sentences.map((sentence) => element('p', {}, sentence)),
    ...(rows.length === 0
      ? [element('p', {}, texts.empty)]
      : [table(shown), element('p', { class: 'caution', id: 'keys' }, texts.keys)]),
    pageFoot(texts, () => editor.postMessage({ type: 'guide' })),
  ];
}

frame.listen((message: ToRosterPage) => {
  data = message.data;
  document.documentElement.lang = message.data.locale;
  frame.show(() => contents(message.data));
});
