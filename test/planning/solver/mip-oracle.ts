/**
 * Asks HiGHS for the optimum of a planning problem, level by level: each figure of the objective is
 * minimised in turn while the figures before it are held at their optimum.
 */
import loadHighs, { type Highs, type Model } from 'highs';
import type { PlanningProblem } from '../../../src/planning/solver/problem';
import { type Formulation, type MipFigure, MipModel, type MipRow } from './mip-model';

/** How to ask. */
export interface OracleOptions {
  readonly formulation: Formulation;
  /**
   * Neighbouring figures are minimised together, weighted so that the earlier still decides, as long as
   * the weights stay below this; 1 asks for each figure alone.
   */
  readonly together: number;
  /** Time limit for each run of HiGHS; none when absent. */
  readonly secondsPerLevel?: number;
  /**
   * Values that a checked plan really reaches. Where such a value is 0 nothing can be less, and HiGHS is
   * only told to keep it.
   */
  readonly reached?: readonly number[];
}

let highs: Promise<Highs> | undefined;

/** HiGHS, loaded once. */
export function loadOracle(): Promise<Highs> {
  highs ??= loadHighs();
  return highs;
}

/** The optimal value of each figure in turn. */
export function optimum(
  highs: Highs,
  problem: PlanningProblem,
  options: OracleOptions,
): readonly number[] | 'infeasible' | 'out of time' {
  const mip = new MipModel(problem, options.formulation);
  const model = highs.createModel();
  try {
    load(highs, model, mip, mip.rows);
    if (options.secondsPerLevel !== undefined) model.options.set({ time_limit: options.secondsPerLevel });
    const values: number[] = [];
    for (const group of groupFigures(mip.figures, options.together)) {
      const known = group.map((_, index) => options.reached?.[values.length + index]);
      const found = known.every((value) => value === 0)
        ? group.map(() => 0)
        : minimise(highs, model, mip, group);
      if (typeof found === 'string') return found;
      group.forEach((figure, index) => {
        keepAtMost(highs, model, figure, found[index] ?? 0);
      });
      values.push(...found);
    }
    return values;
  } finally {
    model.dispose();
  }
}

/** Whether all needed sessions, minima and rest days can stand. */
export function canAllStand(highs: Highs, problem: PlanningProblem): boolean {
  const mip = new MipModel(problem, 'pairs');
  const model = highs.createModel();
  try {
    load(highs, model, mip, [...mip.rows, ...mip.strictRows]);
    return run(highs, model) === 'optimal';
  } finally {
    model.dispose();
  }
}

function groupFigures(figures: readonly MipFigure[], together: number): MipFigure[][] {
  const groups: MipFigure[][] = [];
  let weight = Infinity;
  for (const figure of figures) {
    weight *= figure.largest + 1;
    const last = groups.at(-1);
    if (last !== undefined && weight <= together) last.push(figure);
    else {
      groups.push([figure]);
      weight = figure.largest + 1;
    }
  }
  return groups;
}

/** Minimises a group of figures, the first before the second. @returns their values. */
function minimise(
  highs: Highs,
  model: Model,
  mip: MipModel,
  group: readonly MipFigure[],
): number[] | 'infeasible' | 'out of time' {
  const costs = new Float64Array(mip.lower.length);
  let unit = 1;
  for (const figure of [...group].reverse()) {
    for (const { column, factor } of figure.sum.terms) costs[column] = (costs[column] ?? 0) + unit * factor;
    unit *= figure.largest + 1;
  }
  costs.forEach((cost, column) => {
    model.changeColCost(column, cost);
  });
  const end = run(highs, model);
  if (end !== 'optimal') return end;
  const solution = model.getSolution().colValue;
  return group.map(({ sum }) => {
    const value = sum.terms.reduce(
      (total, { column, factor }) => total + factor * (solution[column] ?? 0),
      sum.constant,
    );
    // Rounding a little less than nothing gives -0.
    return Math.round(value) + 0;
  });
}

function keepAtMost(highs: Highs, model: Model, figure: MipFigure, value: number): void {
  const factors = new Map<number, number>();
  for (const { column, factor } of figure.sum.terms) {
    factors.set(column, (factors.get(column) ?? 0) + factor);
  }
  if (factors.size === 0) return;
  model.addRow(-highs.infinity, value - figure.sum.constant, {
    indices: [...factors.keys()],
    values: [...factors.values()],
  });
}

function run(highs: Highs, model: Model): 'optimal' | 'infeasible' | 'out of time' {
  model.zeroAllClocks();
  model.run();
  const status = model.getModelStatus();
  const { optimal, infeasible, timeLimit } = highs.constants.modelStatus;
  if (status === optimal) return 'optimal';
  if (status === infeasible) return 'infeasible';
  if (status === timeLimit) return 'out of time';
  throw new Error(`HiGHS ended with status ${status}.`);
}

function load(highs: Highs, model: Model, mip: MipModel, rows: readonly MipRow[]): void {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of rows) {
    const factors = new Map<number, number>();
    for (const { column, factor } of row.terms) factors.set(column, (factors.get(column) ?? 0) + factor);
    indices.push(...factors.keys());
    values.push(...factors.values());
    starts.push(indices.length);
  }
  model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.5 });
  const bound = (value: number) => (Number.isFinite(value) ? value : Math.sign(value) * highs.infinity);
  model.passModel({
    numCols: mip.lower.length,
    numRows: rows.length,
    colCost: mip.lower.map(() => 0),
    colLower: mip.lower,
    colUpper: mip.upper,
    rowLower: rows.map((row) => bound(row.low)),
    rowUpper: rows.map((row) => bound(row.high)),
    matrix: { format: 'csr', numRows: rows.length, numCols: mip.lower.length, starts, indices, values },
    integrality: Int32Array.from(mip.integer, (integer) => (integer ? 1 : 0)),
  });
}
