import { createRequire } from 'node:module';

/** The parser of patterns; a CommonJS package whose names are not known before it runs. */
export const { generate, parse, traverse } = createRequire(import.meta.url)(
  'regexp-tree',
) as typeof import('regexp-tree');
