// TeX to HTML with MathML beside it, by KaTeX, on the server. The TeX of formulas is ours, that of
// prose is the author's: neither may load, link or style anything (`trust: false`), and neither can
// grow without bound (`maxExpand`, `maxSize`).

import katex from 'katex';

export interface TexOptions {
  /** Display style, as a formula on its own line. */
  readonly display: boolean;
  /** Display style that may still break between terms; for formulas in a narrow column. */
  readonly breaks?: boolean;
}

const remembered = new Map<string, string>();
const rememberedMost = 5000;
const longest = 5000;
/** KaTeX sets a command that it does not know, or may not follow, in this colour. */
const REFUSED = '#c00bad';

const escape = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/**
 * HTML of a formula; TeX that cannot be typeset comes back as its text, marked so.
 *
 * @example renderTex('\\frac{v}{R}', { display: true })
 */
export function renderTex(tex: string, options: TexOptions): string {
  const key = `${options.display ? 'd' : ''}${options.breaks ? 'b' : ''}:${tex}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const html = typeset(tex, options);
  if (remembered.size >= rememberedMost) remembered.clear();
  remembered.set(key, html);
  return html;
}

function typeset(tex: string, { display, breaks = false }: TexOptions): string {
  if (tex.length > longest) return asText(tex);
  const html = katex.renderToString(display && breaks ? `\\displaystyle ${tex}` : tex, {
    displayMode: display && !breaks,
    output: 'htmlAndMathml',
    throwOnError: false,
    errorColor: REFUSED,
    strict: 'ignore',
    trust: false,
    maxSize: 20,
    maxExpand: 500
  });
  return html.includes('katex-error') || html.includes(REFUSED) ? asText(tex) : html;
}

/** Longest run of signs, in a formula and in its form with numbers, that fits a phone's width. */
const FITS = { form: 30, numbers: 44 };

/**
 * Whether a formula may be wider than a phone, and so has to scroll. Counted, not measured: the signs
 * of the longest part that KaTeX does not break, of a fraction those above and below together.
 */
export function isWide(tex: string, as: 'form' | 'numbers'): boolean {
  const html = renderTex(tex, { display: as === 'form', breaks: as === 'form' });
  const drawn = html.slice(html.indexOf('class="katex-html"'));
  return drawn
    .split('class="katex-base"')
    .some((part) => part.replace(/<[^>]*>|^[^<]*>/g, '').length > FITS[as]);
}

const asText = (tex: string): string =>
  `<code class="tex-as-text" title="This mathematics cannot be typeset; it is shown as written.">${escape(tex)}</code>`;
