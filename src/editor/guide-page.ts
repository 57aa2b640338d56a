/**
 * The page of the guide that is meant, or its first page: a name comes from outside, and nothing else of the extension's
 * folder is opened for it.
 */
export function guidePageName(page: unknown): string {
  const isPage = typeof page === 'string' && /^(?:findings\/)?[A-Za-z0-9-]+\.md$/.test(page);
  return isPage ? page : 'README.md';
}
