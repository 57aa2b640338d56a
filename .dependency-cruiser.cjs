/**
 * The layer rule. Arrows run one way:
 * pages and editor -> planning -> training -> journal -> notation.
 * Only the editor folder and the two entries may import `vscode`.
 */
const below = {
  notation: ['journal', 'training', 'planning', 'editor', 'pages'],
  journal: ['training', 'planning', 'editor', 'pages'],
  training: ['planning', 'editor', 'pages'],
  planning: ['editor', 'pages'],
  pages: ['editor', 'journal', 'notation/markdown'],
};

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...Object.entries(below).map(([layer, above]) => ({
      name: `${layer}-imports-upwards`,
      comment: `src/${layer} must not know ${above.join(', ')}.`,
      severity: 'error',
      from: { path: `^src/${layer}/` },
      to: { path: `^src/(${above.join('|')})` },
    })),
    {
      name: 'vscode-only-at-the-edge',
      comment: 'Only src/editor and the two entries may import the editor API.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(editor/|extension[.])' },
      to: { path: '^vscode$' },
    },
    {
      name: 'no-node-below-the-edge',
      comment: 'The core runs in a browser worker: Node built-ins only in the Node entry, the disk source and the command line.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/(extension[.]ts|command-line[.]ts|command-line/|journal/sources/disk-note-source[.]ts)' },
      to: { dependencyTypes: ['core'] },
    },
    { name: 'no-cycles', severity: 'error', from: { path: '^src/' }, to: { circular: true } },
    { name: 'not-resolvable', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '^vscode$' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default'] },
  },
};
