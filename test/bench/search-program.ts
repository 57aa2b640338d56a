import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The search program (ripgrep) of the editor server that the tests use; `undefined` before that is installed. */
export function searchProgram(): string | undefined {
  const packages = join('.vscode-test', 'server', 'node_modules', '@vscode');
  if (!existsSync(packages)) return undefined;
  return readdirSync(packages)
    .flatMap((name) => [join(packages, name, 'bin', 'rg'), join(packages, name, 'bin', 'rg.exe')])
    .find((file) => existsSync(file));
}
