// The sheet's prose as HTML text: CommonMark with tables by markdown-it, `$…$` and `$$…$$` by KaTeX
// as MathML, which browsers draw without any style or font of ours. Raw HTML in a sheet is shown as
// text, and links lead only where a page may lead.

import katex from 'katex';
import MarkdownIt from 'markdown-it';
import { mathematicsAt } from './mathematics.ts';

const markdown = new MarkdownIt({ html: false, linkify: false, typographer: false });
/** Only a path beside the sheet, the web and mail; nothing that runs or carries a document. */
markdown.validateLink = (address) => {
  const scheme = /^\s*([a-z][a-z0-9+.-]*):/i.exec(address)?.[1]?.toLowerCase();
  return scheme === undefined || scheme === 'https' || scheme === 'http' || scheme === 'mailto';
};

markdown.inline.ruler.after('escape', 'mathematics', (state, silent) => {
  const found = state.src[state.pos] === '$' ? mathematicsAt(state.src, state.pos) : null;
  if (!found) return false;
  if (!silent) {
    const token = state.push('mathematics', 'math', 0);
    token.content = found.tex;
    token.markup = found.display ? '$$' : '$';
  }
  state.pos = found.end;
  return true;
});
markdown.renderer.rules.mathematics = (tokens, index) => {
  const token = tokens[index];
  return token ? mathHtml(token.content, token.markup === '$$') : '';
};

/** CommonMark as HTML. */
export const proseHtml = (text: string): string => markdown.render(text);

/** TeX as MathML; TeX that cannot be read is shown as it stands. */
export function mathHtml(tex: string, display: boolean): string {
  return katex.renderToString(tex, {
    output: 'mathml',
    displayMode: display,
    throwOnError: false,
    strict: 'ignore',
    trust: false,
    maxExpand: 200,
    maxSize: 20
  });
}
