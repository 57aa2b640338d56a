import type { ViewNode } from './view-node';

/** Whether a row shows or carries something else than before, apart from its session and the rows below it. */
function showsAnother(before: ViewNode, after: ViewNode): boolean {
  const { children: rowsBefore, session: _before, ...shownBefore } = before;
  const { children: rowsAfter, session: _after, ...shownAfter } = after;
  return (
    rowsBefore.length > 0 !== rowsAfter.length > 0 ||
    JSON.stringify(shownBefore) !== JSON.stringify(shownAfter)
  );
}

/**
 * The rows that are to be shown again, each with all below it, when `before` has become `after`: as few and as deep
 * as can be. For a session that was read anew it is the row above, which hands the new session to the menus.
 * @returns ids of rows that are in both, or `undefined` when all is to be shown again from the top
 */
export function changedRows(
  before: readonly ViewNode[],
  after: readonly ViewNode[],
): readonly string[] | undefined {
  if (before.length !== after.length) return undefined;
  const changed: string[] = [];
  for (const [index, node] of after.entries()) {
    const old = before[index];
    if (!old || old.id !== node.id || old.session !== node.session) return undefined;
    if (showsAnother(old, node)) changed.push(node.id);
    else changed.push(...(changedRows(old.children, node.children) ?? [node.id]));
  }
  return changed;
}
