import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { PageInBrowser } from './page-in-browser';

const axe = readFileSync(
  createRequire(join(process.cwd(), 'package.json')).resolve('axe-core/axe.min.js'),
  'utf8',
);

/** Rules of WCAG 2.1 A and AA and best practices that the page breaks, with the elements in question. */
export async function accessibilityFaults(open: PageInBrowser): Promise<readonly string[]> {
  await open.page.evaluate(axe);
  return open.page.evaluate(async () => {
    const { axe: runner } = window as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const { violations } = await runner.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`);
  });
}
