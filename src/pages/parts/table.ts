import type { CommonTexts, PagePlace, TableView } from '../page-parts';
import { button, element } from './dom';

/** How a table is shown: what keeps it open or closed, and where its rows lead. */
export interface TableBehaviour {
  readonly key: string;
  readonly isOpen: boolean;
  readonly texts: CommonTexts;
  readonly toggled: (key: string, isOpen: boolean) => void;
  readonly open: (place: PagePlace) => void;
}

/** A table of more columns is as wide as its words, and scrolls sideways where there is no room. */
const mostColumnsSqueezed = 4;

/** A table of more rows scrolls in itself. */
const mostRowsInFull = 12;

function firstCell(
  words: string,
  place: PagePlace | undefined,
  row: number,
  how: TableBehaviour,
): HTMLElement {
  if (!place) return element('th', { scope: 'row' }, words);
  const link = button(words, `${how.key}/${row}`, () => how.open(place));
  link.classList.add('place');
  link.title = how.texts.openReading;
  return element('th', { scope: 'row' }, link);
}

/** A table that can be closed; the first cell of a row opens the note behind it. */
export function foldedTable(view: TableView, how: TableBehaviour): HTMLDetailsElement {
  const table = element(
    'table',
    { class: view.head.length > mostColumnsSqueezed && 'wide' },
    element('caption', {}, view.caption),
    element(
      'thead',
      {},
      element('tr', {}, ...view.head.map((cell) => element('th', { scope: 'col' }, cell))),
    ),
    element(
      'tbody',
      {},
      ...view.rows.map(({ cells: [first = '', ...others], place }, row) =>
        element(
          'tr',
          {},
          firstCell(first, place, row, how),
          ...others.map((cell) => element('td', {}, cell)),
        ),
      ),
    ),
  );
  const shown = view.rows.length <= mostRowsInFull ? 'table whole' : 'table';
  const details = element(
    'details',
    { open: how.isOpen },
    element('summary', { 'data-key': how.key }, view.caption),
    // A long table scrolls, so the keyboard must reach it.
    element('div', { class: shown, tabindex: 0, role: 'region', 'aria-label': view.caption }, table),
  );
  details.addEventListener('toggle', () => how.toggled(how.key, details.open));
  return details;
}
