// Runs inside the editor's web worker extension host, where there is no Node: one file with all tests in it.
import 'mocha/mocha';
import { reportRun, secondTries } from './report';

/** Runs every test of the folder `web`; throws when one of them does not hold, or when there is none. */
export async function run(): Promise<void> {
  // `mocha` is the global that mocha's browser build leaves behind.
  mocha.setup({ ui: 'bdd', timeout: 30_000, retries: secondTries, reporter: 'base' });
  await import('all-web-tests');
  const { passed, failed } = await reportRun('web host tests', mocha.run());
  if (failed > 0) throw new Error(`${failed} of the tests in the web extension host failed.`);
  if (passed === 0) throw new Error('No test ran in the web extension host.');
}
