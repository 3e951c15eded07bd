// The printed forms that need a Markdown reader or a typesetter, loaded when they are asked for: a
// check in version control starts without them.

import type { Results } from '#lib/sheet/index.ts';

/** The sheet as one HTML page that stands alone. */
export async function sheetHtml(results: Results): Promise<string> {
  return (await import('./html.ts')).htmlPage(results);
}

/** The sheet as a LaTeX article. */
export async function sheetLatex(results: Results): Promise<string> {
  return (await import('./latex.ts')).latexArticle(results);
}
