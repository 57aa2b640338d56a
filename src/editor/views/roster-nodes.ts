import type { PagePlace } from '../../pages/page-parts';
import type { RosterLink, RosterMark, RosterPageData, RosterRowView } from '../../pages/roster-page-data';
import { idWithRows, inOneLine } from './view-context';
import type { ViewNode, ViewNodeKind } from './view-node';

/** A shape for each reason, and for none. */
const icons: Readonly<Record<RosterMark, string>> = {
  pain: 'pulse',
  slipping: 'arrow-down',
  silent: 'comment-unresolved',
  findings: 'warning',
  behind: 'watch',
  fine: 'pass',
};

function rowUnder(
  { journal }: RosterRowView,
  id: string,
  row: {
    readonly label: string;
    readonly description?: string;
    readonly icon?: string;
    readonly place?: PagePlace | undefined;
    readonly goal?: string;
    readonly kind?: ViewNodeKind;
  },
): ViewNode {
  const { place, kind = 'text', ...rest } = row;
  return {
    id: `${journal}/${id}`,
    kind,
    journal,
    ...rest,
    ...(row.description ? { accessibilityLabel: inOneLine(row.label, row.description) } : {}),
    ...(place ? { place: { journal, ...place } } : {}),
    children: [],
  };
}

/** The facts of an athlete, each under the name that its column has on the page; those that say nothing are left out. */
function factRows(row: RosterRowView, { head, none }: RosterPageData['texts']): readonly ViewNode[] {
  const [, lastLog = '', week = '', findings = '', slipping = '', pain = '', next = '', behind = ''] = head;
  const fact = (id: string, label: string, links: readonly RosterLink[]) =>
    links.length === 0 || links.every(({ words }) => words === none)
      ? []
      : [
          rowUnder(row, id, {
            label,
            description: links.map(({ words }) => words).join(', '),
            place: links.find(({ place }) => place)?.place,
          }),
        ];
  return [
    ...fact('last', lastLog, [row.lastLog]),
    ...fact('week', week, [{ words: row.week.words }]),
    ...fact('findings', findings, row.findings),
    ...(row.slipping.place ? fact('slipping', slipping, [row.slipping]) : []),
    ...fact('pain', pain, row.pains),
    ...fact('next', next, [row.next]),
    ...row.goalsBehind.map(({ goal, words }) =>
      rowUnder(row, `behind/${goal}`, {
        kind: 'goal',
        label: behind,
        description: words,
        icon: 'watch',
        goal,
      }),
    ),
  ];
}

function athleteNode(row: RosterRowView, texts: RosterPageData['texts']): ViewNode {
  const reasons = row.reasons.map(({ mark, words, place }, index) =>
    rowUnder(row, `reason/${index}`, { label: words, icon: icons[mark], place }),
  );
  const [first, ...more] = row.reasons;
  const description = first
    ? inOneLine(first.words, more.length > 0 ? `+${more.length}` : undefined)
    : texts.fine;
  const children = [...reasons, ...factRows(row, texts)];
  return {
    id: idWithRows(`${row.journal}/athlete`, children),
    kind: 'athlete',
    journal: row.journal,
    label: row.name.words,
    description,
    tooltip: [row.name.words, ...(first ? row.reasons.map(({ words }) => words) : [texts.fine])].join('\n'),
    icon: icons[first?.mark ?? 'fine'],
    accessibilityLabel: inOneLine(row.name.words, description),
    collapsed: true,
    children,
  };
}

/** The athletes of a coach, those who need a word first, each with the reasons and facts of the page below it. */
export function rosterNodes({ rows, texts }: RosterPageData): readonly ViewNode[] {
  return rows.map((row) => athleteNode(row, texts));
}
