// Text and prose for LaTeX: escaping, signs that pdfLaTeX does not know by themselves, and a walk
// over markdown-it's tokens, so that prose keeps its headings, lists, emphasis, links and tables.

import MarkdownIt from 'markdown-it';
import type { Token } from 'markdown-it';
import { printable, printableLine } from './columns.ts';
import { mathematicsAt } from './mathematics.ts';

const specials: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '{': '\\{',
  '}': '\\}',
  $: '\\$',
  '&': '\\&',
  '#': '\\#',
  '^': '\\textasciicircum{}',
  _: '\\_',
  '~': '\\textasciitilde{}',
  '%': '\\%',
  '"': '\\textquotedbl{}',
  '<': '\\textless{}',
  '>': '\\textgreater{}',
  '|': '\\textbar{}',
  '[': '{[}',
  ']': '{]}'
};

const greek =
  'alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho - sigma tau upsilon phi chi psi omega'.split(
    ' '
  );

const signs = new Map<string, string>([
  ['\u2212', '$-$'],
  ['×', '$\\times$'],
  ['·', '$\\cdot$'],
  ['÷', '$\\div$'],
  ['±', '$\\pm$'],
  ['≤', '$\\leq$'],
  ['≥', '$\\geq$'],
  ['≠', '$\\neq$'],
  ['≈', '$\\approx$'],
  ['→', '$\\rightarrow$'],
  ['°', '\\textdegree{}'],
  ['²', '$^2$'],
  ['³', '$^3$'],
  ['µ', '$\\mu$'],
  ['Ω', '$\\Omega$'],
  ['√', '$\\surd$'],
  ['∞', '$\\infty$'],
  ['\u2009', '\\,'],
  ['⁻', '$^-$'],
  ...[...'⁰¹⁴⁵⁶⁷⁸⁹'].map((sign, index): [string, string] => [
    sign,
    `$^${'01456789'[index] ?? ''}$`
  ]),
  ['\u00a0', '~'],
  ['\u202f', '\\,'],
  ['…', '\\ldots{}'],
  ['✓', '$\\checkmark$'],
  ['◐', '$\\circ$'],
  ['●', '$\\bullet$'],
  ...greek.flatMap((name, index): [string, string][] =>
    name === '-' || name === 'omicron' ? [] : [[String.fromCodePoint(0x3b1 + index), `$\\${name}$`]]
  ),
  ...[...'ΓΔΘΛΞΠΣΦΨ'].map((sign, index): [string, string] => [
    sign,
    `$\\${['Gamma', 'Delta', 'Theta', 'Lambda', 'Xi', 'Pi', 'Sigma', 'Phi', 'Psi'][index] ?? ''}$`
  ])
]);

/** Text of one line that LaTeX prints as it stands. */
export function escapedLatex(text: string): string {
  let written = '';
  for (const sign of printableLine(text)) written += specials[sign] ?? signs.get(sign) ?? sign;
  return written;
}

/** Lines as they stand: each in typewriter, spaces kept; no environment that the text could end. */
export const verbatimLatex = (text: string): string =>
  `\\begin{quote}\\ttfamily\\footnotesize\n${printable(text)
    .trimEnd()
    .split('\n')
    .map((line) => {
      const indent = /^\s*/.exec(line)?.[0].length ?? 0;
      return `${'~'.repeat(indent)}${escapedLatex(line)}`;
    })
    .join('\\\\\n')}\n\\end{quote}`;

const markdown = new MarkdownIt({ html: false });
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

/** CommonMark as LaTeX. */
export const proseLatex = (text: string): string =>
  tokensLatex(markdown.parse(printable(text), {})).trim();

const headings: Readonly<Record<string, string>> = {
  h1: 'section*',
  h2: 'section',
  h3: 'subsection',
  h4: 'subsubsection',
  h5: 'paragraph',
  h6: 'paragraph'
};

const around: Readonly<Record<string, readonly [string, string]>> = {
  strong: ['\\textbf{', '}'],
  em: ['\\emph{', '}'],
  s: ['', ''],
  bullet_list: ['\\begin{itemize}\n', '\\end{itemize}\n\n'],
  ordered_list: ['\\begin{enumerate}\n', '\\end{enumerate}\n\n'],
  list_item: ['\\item ', '\n'],
  blockquote: ['\\begin{quote}\n', '\\end{quote}\n\n'],
  paragraph: ['', '\n\n']
};

function tokensLatex(tokens: readonly Token[]): string {
  let written = '';
  let cell = 0;
  for (const [index, token] of tokens.entries()) {
    const [, stem = '', end] = /^(.*?)(?:_(open|close))?$/.exec(token.type) ?? [];
    const pair = around[stem];
    if (pair) written += end === 'open' ? pair[0] : pair[1];
    else if (stem === 'heading')
      written += end === 'open' ? `\\${headings[token.tag] ?? 'paragraph'}{` : '}\n\n';
    else if (stem === 'link')
      written +=
        end === 'open' ? `\\href{${hrefLatex(String(token.attrGet('href') ?? ''))}}{` : '}';
    else if (stem === 'table')
      written +=
        end === 'open'
          ? `\\begin{longtable}{${'l'.repeat(columnsFrom(tokens, index))}}\n\\hline\n`
          : '\\hline\n\\end{longtable}\n\n';
    else if (stem === 'thead' && end === 'close') written += '\\hline\n';
    else if (stem === 'tr') {
      written += end === 'open' ? '' : ' \\\\\n';
      cell = 0;
    } else if ((stem === 'th' || stem === 'td') && end === 'open') {
      written += cell > 0 ? ' & ' : '';
      cell++;
    } else written += leafLatex(token);
  }
  return written;
}

function leafLatex(token: Token): string {
  switch (token.type) {
    case 'inline':
      return tokensLatex(token.children ?? []);
    case 'text':
      return spaced(token.content);
    case 'mathematics':
      return token.markup === '$$'
        ? `\\[${closedTex(token.content)}\\]`
        : `$${closedTex(token.content)}$`;
    case 'code_inline':
      return `\\texttt{${escapedLatex(token.content)}}`;
    case 'code_block':
    case 'fence':
      return `${verbatimLatex(token.content)}\n\n`;
    case 'softbreak':
      return '\n';
    case 'hardbreak':
      return '\\\\\n';
    case 'hr':
      return '\\medskip\\hrule\\medskip\n\n';
    case 'image':
      // A picture beside the sheet is named, not included: its format may be none that LaTeX reads.
      return `\\emph{${escapedLatex(token.content)}} (${escapedLatex(String(token.attrGet('src') ?? ''))})`;
    case 'html_block':
    case 'html_inline':
      return spaced(token.content);
    default:
      return '';
  }
}

/** Escaped, with the spaces at its ends kept. */
function spaced(text: string): string {
  const lead = /^\s/.test(text) ? ' ' : '';
  const tail = /\S\s+$/.test(text) ? ' ' : '';
  return lead + escapedLatex(text) + tail;
}

const columnsFrom = (tokens: readonly Token[], start: number): number => {
  const stop = tokens.findIndex((token, index) => index > start && token.type === 'tr_close');
  return tokens.slice(start, stop).filter(({ type }) => type === 'th_open').length;
};

const hrefLatex = (address: string): string =>
  address.replace(
    /[\\{}#%~^&$_]/g,
    (sign) =>
      `\\${sign === '\\' ? 'textbackslash{}' : sign === '~' || sign === '^' ? `${sign}{}` : sign}`
  );

/** Commands that read or write files, define or re-read commands, or leave the formula. */
const beyondTypesetting =
  /\\(?:[a-z@]*input|include|write|[a-z]*read|open|immediate|special|pdf|font|output|every|(?:lc|uc|cat)code|[a-z]*def|let|csname|expandafter|scantokens|usepackage|[a-z]*command|[a-z]*environment|loop|directlua|verb|shell|end\s*\{document|begin\s*\{(?:document|filecontents|verbatim))|\^\^/i;

/** The author's TeX, unless its brackets do not close or it reaches beyond typesetting. */
function closedTex(tex: string): string {
  let depth = 0;
  for (const [sign] of tex.matchAll(/\\.|[{}]/gs)) {
    depth += sign === '{' ? 1 : sign === '}' ? -1 : 0;
    if (depth < 0) break;
  }
  return depth === 0 && !beyondTypesetting.test(tex)
    ? tex
    : `\\text{${escapedLatex(tex).replaceAll('$', '')}}`;
}
