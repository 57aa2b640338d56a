// Every number on the sample athlete's page about load and recovery, worked out a second time: the notes are read with
// regular expressions, and what stands on the page is compared word by word. The numbers come from formulas written out
// by hand and from a general-purpose library (jstat).
import assert from 'node:assert/strict';
import jstat from 'jstat';
import { describe, it } from 'mocha';
import { loadPageData } from '../../src/editor/load-page/page-data';
import { wordsOf } from '../../src/editor/words';
import { JournalIndex } from '../../src/journal/journal-index';
import { openNote } from '../../src/journal/open-note';
import type { IsoDate } from '../../src/notation/time/iso-date';
import type { RecoveryView } from '../../src/pages/load-page-data';
import type { TableView } from '../../src/pages/page-parts';
import { fillMessage } from '../../src/training/finding';
import {
  dateOf,
  daysSince1970,
  linesUpTo,
  mean,
  sampleNotes,
  type WrittenSession,
  wilsonByHand,
  writtenSessions,
} from '../training/sample-by-hand';

const { jStat } = jstat;
const z = jStat.normal.inv(0.975, 0, 1);

/** A Thursday; the journal begins on Monday 2025-11-10, and the clock of Lisbon in winter is that of Greenwich. */
const today = '2026-02-26';
const firstMonday = daysSince1970('2025-11-10');
const thisMonday = daysSince1970('2026-02-23');

const journal = new JournalIndex();
for (const [path, text] of sampleNotes) journal.replace(openNote(path, text));
const open = {
  id: 'file:///ilka',
  title: 'Ilka',
  journal,
  today: () => today as IsoDate,
  zone: () => 'Europe/Lisbon',
};
const page = loadPageData(open, wordsOf('en', fillMessage), 'en');

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
const numberInWords = (value: number, digits = 0): string =>
  value.toLocaleString('en-US', { maximumFractionDigits: digits });
const percent = (share: number): string => `${Math.round(100 * share)}%`;

function dayInWords(day: number): string {
  const [year, month, date] = dateOf(day).split('-').map(Number);
  const names = 'January February March April May June July August September October November December';
  const words = `${names.split(' ')[(month ?? 0) - 1]} ${date}`;
  return year === 2026 ? words : `${words}, ${year}`;
}

function timeInWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [...(hours > 0 ? [`${hours} h`] : []), ...(rest > 0 || hours === 0 ? [`${rest} min`] : [])].join(
    ' ',
  );
}

const cellsOf = (table: TableView | undefined): readonly (readonly string[])[] =>
  table?.rows.map(({ cells }) => cells) ?? [];

const sessions = writtenSessions(today);
const done = sessions.filter(({ state }) => state === 'done');
const mondayOf = (on: string): number => firstMonday + 7 * Math.floor((daysSince1970(on) - firstMonday) / 7);
const loadOf = ({ rating, minutes }: WrittenSession): number => rating * minutes;
const startOf = ({ on, line }: WrittenSession): number =>
  Date.parse(`${on}T${/ (\d\d:\d\d)[ -]/.exec(line)?.[1]}Z`) / 60_000;

/** Regions by routine, and the routine of each need by its kind and goal. */
const regionsByRoutine = new Map(
  [...sampleNotes.values()]
    .join('\n')
    .split('\n')
    .flatMap((line) => {
      const found = /^- #routine (\S+) .*regions:(\S+)/.exec(line);
      return found ? [[found[1] ?? '', (found[2] ?? '').split(',')] as const] : [];
    }),
);
function regionsOf({ line, kind }: WrittenSession): readonly string[] {
  // The one need of hoop has a routine, and takes the one session that names none.
  const routine = /routine:(\S+)/.exec(line)?.[1] ?? (kind === 'hoop' ? 'hoop-lines' : '');
  return regionsByRoutine.get(routine) ?? [];
}

describe('the load of the sample athlete, as the page has it', () => {
  const mondays = Array.from({ length: 12 }, (_, ago) => thisMonday - 7 * ago);
  const weekOf = (monday: number) => done.filter(({ on }) => mondayOf(on) === monday);
  const total = (monday: number): number => sum(weekOf(monday).map(loadOf));
  const daily = (monday: number): readonly number[] =>
    Array.from({ length: 7 }, (_, offset) =>
      sum(weekOf(monday).flatMap((one) => (one.on === dateOf(monday + offset) ? [loadOf(one)] : []))),
    );
  const monotony = (monday: number): number => {
    const loads = daily(monday);
    return mean(loads) / Math.sqrt(sum(loads.map((one) => (one - mean(loads)) ** 2)) / 6);
  };
  const before = (monday: number): number => mean([1, 2, 3].map((ago) => total(monday - 7 * ago)));
  const change = (monday: number): string => {
    const rounded = Math.round((100 * (total(monday) - before(monday))) / before(monday)) + 0;
    return `${rounded > 0 ? '+' : ''}${rounded}%`;
  };

  it('has a row a week: load, sessions, time, monotony, strain, change', () => {
    assert.deepEqual(
      cellsOf(page.load.tables[0]),
      mondays.map((monday) => [
        dayInWords(monday),
        numberInWords(total(monday)),
        String(weekOf(monday).length),
        timeInWords(sum(weekOf(monday).map(({ minutes }) => minutes))),
        ...(monday === thisMonday
          ? ['not over yet', 'not over yet', 'not over yet']
          : [
              numberInWords(monotony(monday), 2),
              numberInWords(total(monday) * monotony(monday)),
              change(monday),
            ]),
      ]),
    );
  });

  const shares = (monday: number, namesOf: (session: WrittenSession) => readonly string[]): string => {
    const loads = new Map<string, number>();
    for (const session of weekOf(monday))
      for (const name of namesOf(session)) loads.set(name, (loads.get(name) ?? 0) + loadOf(session));
    const last = (name: string): string => (name === 'no region' ? '~' : name);
    return [...loads]
      .sort(([one], [other]) => (last(one) < last(other) ? -1 : 1))
      .map(([name, load]) => `${name} ${numberInWords(load)}`)
      .join(', ');
  };

  it('has it by kind, and by region, where a session counts for each of its regions', () => {
    assert.deepEqual(
      cellsOf(page.load.tables[1]),
      mondays.map((monday) => [dayInWords(monday), shares(monday, ({ kind }) => [kind])]),
    );
    assert.deepEqual(
      cellsOf(page.load.tables[2]),
      mondays.map((monday) => [
        dayInWords(monday),
        shares(monday, (one) => (regionsOf(one).length > 0 ? regionsOf(one) : ['no region'])),
      ]),
    );
  });

  it('draws the same by kind, the kind of the greatest load first', () => {
    const inSight = done.filter(({ on }) => mondays.includes(mondayOf(on)));
    const ofKind = (all: readonly WrittenSession[], kind: string): number =>
      sum(all.filter((one) => one.kind === kind).map(loadOf));
    const kinds = [...new Set(inSight.map(({ kind }) => kind))].sort(
      (one, other) => ofKind(inSight, other) - ofKind(inSight, one),
    );
    assert.deepEqual(page.load.chart?.kinds, kinds);
    assert.deepEqual(
      page.load.chart?.weeks,
      [...mondays].reverse().map((monday) => ({
        monday,
        parts: kinds.map((kind) => ofKind(weekOf(monday), kind)),
        total: numberInWords(total(monday)),
        text: `Week of ${dayInWords(monday)}: load ${numberInWords(total(monday))}`,
      })),
    );
  });

  it('says of the last whole week, of what nobody marked and of the ratios just these numbers', () => {
    const last = thisMonday - 7;
    const days = Array.from({ length: 16 }, (_, index) => daily(firstMonday + 7 * index))
      .flat()
      .slice(0, daysSince1970(today) - firstMonday);
    const weighted = (over: number): number =>
      days.reduce((average, load) => (2 / (over + 1)) * load + (1 - 2 / (over + 1)) * average);
    const unmarked = sessions.filter(
      ({ state, on }) => state === 'open' && on < today && mondays.includes(mondayOf(on)),
    );
    assert.deepEqual(page.load.sentences, [
      `The last whole week, of ${dayInWords(last)}: load ${numberInWords(total(last))} in ${weekOf(last).length} sessions, ${timeInWords(sum(weekOf(last).map(({ minutes }) => minutes)))}.`,
      `Against the mean of the 3 weeks before, ${numberInWords(before(last))}: ${change(last)}.`,
      `Monotony ${numberInWords(monotony(last), 2)} (mean of the seven days over their sample standard deviation), strain ${numberInWords(total(last) * monotony(last))} (load x monotony).`,
      `Past sessions in these weeks that are neither ticked, skipped nor moved: ${unmarked.length}. They have no load, and count as not done.`,
      `Up to ${dayInWords(daysSince1970(today) - 1)}, a day of the last 7 had ${numberInWords(mean(days.slice(-7)) / mean(days.slice(-28, -7)), 2)} times the load of a day of the 21 before (28 days). With newer days weighing more: ${numberInWords(weighted(7) / weighted(28), 2)} times. These ratios describe a change of load, and nothing else.`,
    ]);
  });
});

describe('the kept sessions of the sample athlete, as the page has them', () => {
  const past = sessions
    .filter(({ on, state }) => on < today && state !== 'moved')
    .sort((one, other) => startOf(one) - startOf(other));
  const reasonOf = ({ line }: WrittenSession): string | undefined => /skipped:(\w+)/.exec(line)?.[1];
  const isExcused = (one: WrittenSession): boolean =>
    ['ill', 'injured', 'work', 'travel'].includes(reasonOf(one) ?? '');

  function cells(name: string, group: readonly WrittenSession[]): readonly string[] {
    const counted = group.filter((one) => !isExcused(one));
    const kept = counted.filter(({ state }) => state === 'done').length;
    const [lower, upper] = wilsonByHand(kept, counted.length);
    const reasons = group.flatMap((one) => reasonOf(one) ?? []);
    const count = (reason: string): number => reasons.filter((one) => one === reason).length;
    return [
      name,
      `${kept} of ${counted.length}`,
      percent(kept / counted.length),
      `${percent(lower)} to ${percent(upper)}`,
      String(group.length - counted.length),
      String(group.filter(({ state }) => state === 'open').length),
      [...new Set(reasons)]
        .sort((one, other) => count(other) - count(one) || (one < other ? -1 : 1))
        .map((reason) => `${reason} ${count(reason)}`)
        .join(', '),
    ];
  }

  /** A row for each name, in the order of the names given. */
  function rows(names: readonly string[], nameOf: (session: WrittenSession) => string) {
    return names
      .map((name) =>
        cells(
          name,
          past.filter((one) => nameOf(one) === name),
        ),
      )
      .filter(([, share]) => share !== '0 of 0');
  }

  const names = (nameOf: (session: WrittenSession) => string): readonly string[] =>
    [...new Set(past.map(nameOf))].sort();
  const weekName = ({ on }: WrittenSession): string => dayInWords(mondayOf(on));
  const weekdays = 'Monday Tuesday Wednesday Thursday Friday Saturday Sunday'.split(' ');
  const times = ['morning, before 12:00', 'afternoon, before 17:00', 'evening'];

  it('have a row for each week, month, kind, weekday and time of day', () => {
    const mondays = Array.from({ length: 16 }, (_, ago) => dayInWords(thisMonday - 7 * ago));
    const hour = (one: WrittenSession): number => (startOf(one) / 60) % 24;
    assert.deepEqual(page.adherence.tables.map(cellsOf), [
      rows(mondays, weekName),
      rows([...names(({ on }) => on.slice(0, 7))].reverse(), ({ on }) => on.slice(0, 7)),
      rows(
        names(({ kind }) => kind),
        ({ kind }) => kind,
      ),
      rows(weekdays, ({ on }) => weekdays[(daysSince1970(on) - firstMonday) % 7] ?? ''),
      rows(times, (one) => times[hour(one) < 12 ? 0 : hour(one) < 17 ? 1 : 2] ?? ''),
    ]);
  });

  it('are drawn with the same shares and intervals', () => {
    const drawn = page.adherence.chart?.weeks ?? [];
    assert.equal(drawn.length, 16);
    for (const { monday, share, lower, upper, text } of drawn) {
      const counted = past.filter((one) => mondayOf(one.on) === monday && !isExcused(one));
      const kept = counted.filter(({ state }) => state === 'done').length;
      const [least, most] = wilsonByHand(kept, counted.length);
      assert.equal(share, kept / counted.length);
      assert.ok(Math.abs(lower - least) < 1e-9 && Math.abs(upper - most) < 1e-9, text);
      assert.equal(text, `Week of ${dayInWords(monday)}: ${kept} of ${counted.length} done`);
    }
  });

  /** Mean sessions until the score of done -1 and missed +2 comes to a limit: the chain of its states, iterated. */
  function sessionsToAlarm(chance: number, limit: number): number {
    let wait = new Array<number>(limit).fill(0);
    for (let step = 0; step < 200_000; step += 1) {
      wait = wait.map(
        (_, score) =>
          1 + chance * (wait[Math.max(0, score - 1)] ?? 0) + (1 - chance) * (wait[score + 2] ?? 0),
      );
    }
    return wait[0] ?? Number.NaN;
  }

  it('say in sentences the whole, whether it drops, how often chance would say so, and the week of the block', () => {
    const counted = past.filter((one) => !isExcused(one));
    const kept = counted.filter(({ state }) => state === 'done').length;
    const [lower, upper] = wilsonByHand(kept, counted.length);
    // What nothing is marked at may still be ticked for a week.
    const settled = counted.filter(
      ({ state, on }) => state !== 'open' || daysSince1970(on) < daysSince1970(today) - 7,
    );
    const scores: number[] = [];
    for (const { state } of settled)
      scores.push(Math.max(0, (scores.at(-1) ?? 0) + (state === 'done' ? -1 : 2)));
    const usual = settled.slice(0, scores.lastIndexOf(0) + 1);
    const usualKept = usual.filter(({ state }) => state === 'done').length;
    assert.ok(sessionsToAlarm((usualKept + 0.5) / (usual.length + 1), 6) > 1000);
    const begun = Math.max(
      ...[...sampleNotes.values()].flatMap((text) =>
        [...text.matchAll(/^- #goal .*from:(\S+)/gm)].map(([, from]) => daysSince1970(from ?? '')),
      ),
    );
    assert.deepEqual(page.adherence.sentences, [
      `In the last 26 weeks: ${kept} of ${counted.length} planned sessions done, ${percent(kept / counted.length)} (95 %: ${percent(lower)} to ${percent(upper)}). Excused, for reasons from outside, and counted apart: ${past.length - counted.length}.`,
      `No drop shows beside your usual ${percent(usualKept / usual.length)} (${usual.length} sessions): the score stands at ${scores.at(-1)}, and 6 would tell of one. By chance alone that would be said less than once in 1000 sessions.`,
      `This is week ${(thisMonday - mondayOf(dateOf(begun))) / 7 + 1} of the block that began with your latest goal, on ${dayInWords(begun)}.`,
    ]);
  });
});

describe('the recovery of the sample athlete, as the page has it', () => {
  interface Pair {
    readonly first: WrittenSession;
    readonly second: WrittenSession;
    readonly hours: number;
    readonly reports: readonly string[];
    readonly sore: boolean;
  }
  const lines = linesUpTo(today);

  /** Hoop is like strength; recovery trains nothing. */
  const subjects: readonly (readonly [name: string, trains: (one: WrittenSession) => boolean])[] = [
    ...(['flexibility', 'strength', 'skill', 'hoop'] as const).map(
      (kind) =>
        [
          `${kind} (kind)`,
          (one: WrittenSession) => one.kind === kind || (kind === 'strength' && one.kind === 'hoop'),
        ] as const,
    ),
    ...[...new Set([...regionsByRoutine.values()].flat())].map(
      (region) => [`${region} (region)`, (one: WrittenSession) => regionsOf(one).includes(region)] as const,
    ),
  ];

  function pairsOf(name: string, trains: (one: WrittenSession) => boolean): readonly Pair[] {
    const pairs: Pair[] = [];
    let first: WrittenSession | undefined;
    const own = sessions
      .filter((one) => daysSince1970(one.on) < thisMonday && trains(one))
      .filter(({ state, line }) => state === 'done' || line.includes('skipped:sore'))
      .sort((one, other) => startOf(one) - startOf(other));
    for (const second of own) {
      const days = first ? daysSince1970(second.on) - daysSince1970(first.on) : 0;
      if (first && days > 0 && days < 14) {
        const loaded = name.endsWith('(region)') ? [name.split(' ')[0] ?? ''] : regionsOf(first);
        const reports = lines.flatMap(([on, line]) => {
          const [, region = '', rating = ''] = /^[-*]? ?#sore (\S+) (\d+)\/10/.exec(line) ?? [];
          return on === second.on && Number(rating) >= 3 && loaded.includes(region)
            ? [`${region} ${rating}/10`]
            : [];
        });
        const hours = (startOf(second) - startOf(first) - first.minutes) / 60;
        pairs.push({ first, second, hours, reports, sore: second.state === 'skipped' || reports.length > 0 });
      }
      if (second.state === 'done') first = second;
    }
    return pairs;
  }

  const sorenessInWords = ({ sore, second, reports }: Pair): string => {
    const skipped = second.state === 'skipped' ? ['skipped for being sore'] : [];
    return sore ? `still sore: ${[...skipped, ...reports].join(', ')}` : 'not sore';
  };
  const countInWords = (pairs: readonly Pair[]): string =>
    `${pairs.length} pairs of sessions, still sore in ${pairs.filter(({ sore }) => sore).length} of them`;

  const viewOf = (name: string): RecoveryView => {
    const found = page.recovery.subjects.find((one) => one.name === name);
    assert.ok(found, name);
    return found;
  };

  it('has every kind and region that is trained', () => {
    assert.deepEqual(
      page.recovery.subjects.map(({ name }) => name).sort(),
      subjects.map(([name]) => name).sort(),
    );
  });

  for (const [name, trains] of subjects) {
    it(`has the pairs of ${name} as rows, the newest first, and as points`, () => {
      const pairs = pairsOf(name, trains);
      const view = viewOf(name);
      assert.deepEqual(
        cellsOf(view.evidence),
        [...pairs]
          .reverse()
          .map((pair) => [
            dayInWords(daysSince1970(pair.second.on)),
            pair.second.kind,
            `${numberInWords(pair.hours)} h`,
            numberInWords(loadOf(pair.first)),
            sorenessInWords(pair),
          ]),
      );
      assert.deepEqual(
        view.chart?.points.map(({ hours, sore }) => ({ hours, sore })),
        pairs.map(({ hours, sore }) => ({ hours, sore })),
      );
    });
  }

  const kept: Readonly<Record<string, string>> = {
    'flexibility (kind)': '48 h are kept now, by your rule.',
    'strength (kind)': '48 h are kept now, by your rule.',
    'hamstrings (region)': '48 h are kept now, by your rule.',
  };

  it('says what is missing where no gap can be told', () => {
    for (const [name, trains] of subjects) {
      const pairs = pairsOf(name, trains);
      const sore = pairs.filter((pair) => pair.sore).length;
      const missing = [
        ...(pairs.length < 12 ? [`${pairs.length} of 12 pairs of sessions`] : []),
        ...(sore < 4 ? [`${sore} of 4 pairs that were still sore`] : []),
        ...(pairs.length - sore < 4 ? [`${pairs.length - sore} of 4 pairs that were not sore`] : []),
      ];
      if (missing.length === 0) continue;
      assert.deepEqual(
        viewOf(name).sentences,
        [
          `No gap can be told: not enough notes yet (${missing.join(', ')}). So far: ${countInWords(pairs)}.`,
          kept[name] ?? 'No gap is kept now.',
        ],
        name,
      );
    }
  });

  /** The inverse of a small symmetric matrix, by Gauss and Jordan. */
  function inverted(matrix: readonly (readonly number[])[]): number[][] {
    const size = matrix.length;
    const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
    for (let i = 0; i < size; i += 1) {
      const pivot = rows[i]?.[i] ?? Number.NaN;
      rows[i] = (rows[i] ?? []).map((value) => value / pivot);
      for (let k = 0; k < size; k += 1) {
        const factor = rows[k]?.[i] ?? 0;
        if (k !== i) rows[k] = (rows[k] ?? []).map((value, j) => value - factor * (rows[i]?.[j] ?? 0));
      }
    }
    return rows.map((row) => row.slice(size));
  }

  /** The highest point of a function, looked for without any derivative. */
  function summit(height: (place: readonly number[]) => number, size: number): readonly number[] {
    let best: readonly number[] = new Array<number>(size).fill(0);
    const moves = Array.from({ length: 3 ** size }, (_, code) =>
      Array.from({ length: size }, (_, axis) => (Math.floor(code / 3 ** axis) % 3) - 1),
    );
    for (let step = 4; step > 1e-9; ) {
      const better = moves
        .map((move) => best.map((value, axis) => value + step * (move[axis] ?? 0)))
        .find((place) => height(place) > height(best));
      if (better) best = better;
      else step /= 2;
    }
    return best;
  }

  for (const [name, withLoad] of [
    ['flexibility (kind)', true],
    ['hamstrings (region)', false],
  ] as const) {
    it(`has the gap of ${name}, its interval and its curve from the highest posterior${withLoad ? ', at the median load' : ''}`, () => {
      const trains = subjects.find(([own]) => own === name)?.[1] ?? assert.fail();
      const pairs = pairsOf(name, trains);
      const deviation = (values: readonly number[]): number =>
        Math.sqrt(sum(values.map((one) => (one - mean(values)) ** 2)) / (values.length - 1));
      const hours = pairs.map((pair) => pair.hours);
      const loads = pairs.map(({ first }) => loadOf(first));
      const middle = [...loads].sort((one, other) => one - other);
      const medianLoad = mean([
        middle[Math.ceil(middle.length / 2) - 1] ?? Number.NaN,
        middle[Math.floor(middle.length / 2)] ?? Number.NaN,
      ]);
      const unit = 2 * deviation(hours);
      // Eight of both outcomes are asked for before the load joins in.
      assert.equal(pairs.filter(({ sore }) => sore).length >= 8, withLoad);
      const rowOf = (gap: number, load: number): readonly number[] => [
        1,
        (gap - 48) / unit,
        ...(withLoad ? [(load - medianLoad) / (2 * deviation(loads))] : []),
      ];
      const rows = pairs.map((pair) => rowOf(pair.hours, loadOf(pair.first)));
      const oddsOf = (row: readonly number[], place: readonly number[]): number =>
        sum(row.map((value, axis) => value * (place[axis] ?? 0)));
      const centre = (axis: number): number => (axis === 0 ? Math.log(0.2 / 0.8) : 0);
      const place = summit(
        (tried) =>
          sum(
            rows.map((row, index) => {
              const odds = oddsOf(row, tried);
              return (pairs[index]?.sore ? odds : 0) - Math.log1p(Math.exp(odds));
            }),
          ) - sum(tried.map((value, axis) => Math.log1p(((value - centre(axis)) / 2.5) ** 2))),
        withLoad ? 3 : 2,
      );
      const information = place.map((_, i) =>
        place.map(
          (value, j) =>
            sum(
              rows.map((row) => {
                const p = 1 / (1 + Math.exp(-oddsOf(row, place)));
                return p * (1 - p) * (row[i] ?? 0) * (row[j] ?? 0);
              }),
            ) + (i === j ? 2 / (2.5 ** 2 + (value - centre(i)) ** 2) : 0),
        ),
      );
      const covariance = inverted(information);
      const spread = (row: readonly number[]): number =>
        Math.sqrt(
          sum(row.flatMap((one, i) => row.map((other, j) => one * other * (covariance[i]?.[j] ?? 0)))),
        );
      const [a = 0, b = 0] = place;
      const gap = 48 + (unit * (centre(0) - a)) / b;
      // How the gap moves with intercept and slope (delta method).
      const reach = z * spread([-unit / b, (-unit * (centre(0) - a)) / b ** 2, ...(withLoad ? [0] : [])]);
      const [lower, upper] = [Math.max(0, gap - reach), gap + reach];
      const view = viewOf(name);
      assert.deepEqual(view.sentences, [
        `The chance of still being sore falls to 20% after about ${numberInWords(gap)} h (95 %: ${numberInWords(lower)} h to ${numberInWords(upper)} h), from ${countInWords(pairs)}.`,
        ...(withLoad
          ? [`It holds after a session of load ${numberInWords(medianLoad)}, the median here.`]
          : []),
        kept[name],
      ]);
      // 48 h lie within the interval, so nothing is suggested.
      assert.ok(lower < 48 && 48 < upper);
      assert.equal(view.suggestion, undefined);
      const near = (one: number | undefined, other: number, about: string): void =>
        assert.ok(Math.abs((one ?? Number.NaN) - other) < 1e-4, `${about}: ${one} and ${other}`);
      const { chart } = view;
      near(chart?.learned?.at, gap, 'gap');
      near(chart?.learned?.lower, lower, 'lower');
      near(chart?.learned?.upper, upper, 'upper');
      assert.deepEqual([chart?.accepted.at, chart?.current?.at], [0.2, 48]);
      assert.equal(chart?.curve.length, 41);
      for (const [index, point] of (chart?.curve ?? []).entries()) {
        const at = Math.min(...hours) + ((Math.max(...hours) - Math.min(...hours)) * index) / 40;
        const row = rowOf(at, medianLoad);
        const chanceOf = (odds: number): number => 1 / (1 + Math.exp(-odds));
        near(point.hours, at, 'hours');
        near(point.chance, chanceOf(oddsOf(row, place)), `chance at ${at}`);
        near(point.lower, chanceOf(oddsOf(row, place) - z * spread(row)), `lower at ${at}`);
        near(point.upper, chanceOf(oddsOf(row, place) + z * spread(row)), `upper at ${at}`);
      }
    });
  }
});
