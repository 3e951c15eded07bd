import { describe, expect, test } from 'vitest';
import { rig, sheetOf } from './results.fixture.ts';
import { escapedHtml } from './html.ts';
import { escapedLatex, proseLatex } from './latex-text.ts';
import { escaped, sheetMarkdown } from './markdown.ts';
import { sheetHtml, sheetLatex } from './pages.ts';
import { proseHtml } from './prose-html.ts';
import { sheetText } from './text.ts';

const text = `---
title: A rig
stages:
  sketch: First sketch
  upgrade: Bigger motor
---

# Power

At the shaft {P_shaft}; it costs 5 $ & more, $x_1 < 2$.

\`\`\`inputs Arms
R = 0.75 m        # from the axis to the tip; measured
  at upgrade: 0.80 m   # longer arms; maker
\`\`\`

\`\`\`calc
# at the shaft
P_shaft = R*2/3   # what <it> takes; derived
\`\`\`

\`\`\`limits
belt & pulley [safety]: P_shaft <= 1.5 m   # maker
\`\`\`

\`\`\`caution danger
Stay behind the guard.
\`\`\`

\`\`\`python
print("<b>")
\`\`\`
`;
const sheet = sheetOf(text);
/** What a hostile sheet could try in every place where its words are shown. */
const hostile = sheetOf(`---
title: <script>alert(1)</script>
---

<img src=x onerror=alert(1)> [x](javascript:alert(1)) ![p](data:text/html,x) \\input{/etc/passwd} $\\href{javascript:x}{y} \\input{z}$

\`\`\`inputs </style><script>alert(2)</script>
R = 0.75 m   # </td><script>alert(3)</script> | \\write18{rm} ; measured
\`\`\`

\`\`\`limits
<b onclick="x">|\`\\end{document} & %: R <= 1 m
\`\`\`

\`\`\`\`remark
by: me
\`\`\`\`

~~~text
</pre><script>alert(4)</script>
\`\`\`\` \\end{quote}
~~~
`);

describe('as text', () => {
  test('a sheet shows each row with a column a stage, its formula and where it comes from', () => {
    expect(sheetText(sheet)).toContain(`Inputs: Arms
              sketch  upgrade
  R             1.00     1.00  m
      = 0.75 m              # from the axis to the tip; measured
      from upgrade: 0.80 m  # longer arms; maker
`);
    expect(sheetText(sheet)).toContain('At the shaft 1.00\u00a0m; it costs 5 $ & more, $x_1 < 2$.');
    expect(sheetText(sheet)).toContain('Danger\n  Stay behind the guard.\n');
  });

  test('a problem stands where it belongs, one outside every block first', () => {
    expect(sheetText(rig)).toContain('line 4: T_shaft is a torque');
  });
});

describe('as Markdown', () => {
  const markdown = sheetMarkdown(sheet);

  test('a block is a table with names and formulas as code', () => {
    expect(markdown).toContain('| `R`  | 1.00         | 1.00         | m    | `0.75 m`');
    expect(markdown).toContain('| from upgrade: `0.80 m` |');
    expect(markdown).toContain('> Stay behind the guard.');
  });

  test('every row of a table has as many cells as its head', () => {
    for (const table of markdown.match(/(?:^\|.*\n)+/gm) ?? []) {
      const counts = table
        .trim()
        .split('\n')
        .map((line) => line.replace(/\\\|/g, '').split('|').length);
      expect(new Set(counts).size).toBe(1);
    }
  });

  test.each([
    ['a*b_c', 'a\\*b_c'],
    ['_a_', '\\_a\\_'],
    ['[x](y)', '\\[x\\](y)'],
    ['a|b', 'a\\|b'],
    ['<b>', '\\<b\\>'],
    ['1. x', '1\\. x'],
    ['0.75', '0.75'],
    ['- x', '\\- x'],
    ['-3', '-3'],
    ['two\nlines', 'two lines']
  ])('%j is written %j', (from, to) => {
    expect(escaped(from)).toBe(to);
  });

  test('a listing cannot end its own fence', () => {
    expect(sheetMarkdown(hostile)).toContain('`````\n</pre>');
  });
});

describe('as HTML', () => {
  test('a sheet is one page without scripts or anything from elsewhere', async () => {
    const page = await sheetHtml(sheet);
    expect(page).toMatch(/^<!doctype html>/);
    expect(page).toContain("default-src 'none'");
    expect(page).toContain('<title>A rig</title>');
    expect(page).toContain('what &#60;it&#62; takes; derived');
    expect(page).toContain('belt &#38; pulley [safety]');
    expect(page).toMatch(/<math[ >]/);
    expect(page).not.toMatch(/<script|<link|<iframe|\ssrc=|@import|url\(/i);
  });

  test('nothing that a sheet says becomes markup that runs', async () => {
    const page = await sheetHtml(hostile);
    expect(page).not.toMatch(
      /<script|<img[^>]+onerror|<b onclick|(?:href|src)="(?:javascript|data)/i
    );
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    expect(page.match(/<\/body>/g)).toHaveLength(1);
  });

  test('prose keeps its links to the web and beside the sheet, and no others', () => {
    expect(proseHtml('[a](https://x.org/a) [b](b.md)')).toContain(
      '<a href="https://x.org/a">a</a>'
    );
    expect(proseHtml('[b](b.md)')).toContain('<a href="b.md">b</a>');
    for (const scheme of ['javascript:x', 'vbscript:x', 'file:///x', 'data:image/svg+xml,x'])
      expect(proseHtml(`[b](${scheme})`)).not.toContain('<a');
    expect(escapedHtml('"\'<&>')).toBe('&#34;&#39;&#60;&#38;&#62;');
  });
});

describe('as LaTeX', () => {
  test('a sheet is one article with its formulas', async () => {
    const article = await sheetLatex(sheet);
    expect(article).toContain('\\begin{document}');
    expect(article).toContain('\\section*{Power}');
    expect(article).toContain('belt \\& pulley {[}safety{]}');
    expect(article).toMatch(/\$R = 0\.75\\,\\mathrm\{m\}\$ \\newline/);
    expect(article).toContain('5 \\$ \\& more, $x_1 < 2$');
  });

  // Counted by TeX's own rules: an escaped bracket is no bracket.
  test.each([
    ['the sheet', sheet],
    ['the hostile sheet', hostile]
  ])('the brackets and environments of %s close', async (_name, results) => {
    const article = await sheetLatex(results);
    const brackets = article.replace(/\\[^a-zA-Z]/g, '');
    expect(brackets.split('{').length).toBe(brackets.split('}').length);
    const environments: string[] = [];
    for (const [, end, name = ''] of article.matchAll(/\\(begin|end)\{(\w+)\}/g)) {
      if (end === 'begin') environments.push(name);
      else expect(environments.pop()).toBe(name);
    }
    expect(environments).toEqual([]);
  });

  test('no command of a sheet reaches LaTeX but those of its mathematics', async () => {
    const article = await sheetLatex(hostile);
    expect(article).not.toMatch(/\\input\{|\\write18|\\href\{javascript/);
    expect(article.match(/\\end\{document\}/g)).toHaveLength(1);
  });

  test.each([
    ['100 % of $5 & #1_a^b~', '100 \\% of \\$5 \\& \\#1\\_a\\textasciicircum{}b\\textasciitilde{}'],
    ['a\\b{c}', 'a\\textbackslash{}b\\{c\\}'],
    ['Ω ≤ µ² −1', '$\\Omega$ $\\leq$ $\\mu$$^2$ $-$1']
  ])('%j is written %j', (from, to) => {
    expect(escapedLatex(from)).toBe(to);
  });

  test('prose keeps lists, tables, code and links', () => {
    expect(proseLatex('- *a*\n- **b**')).toBe(
      '\\begin{itemize}\n\\item \\emph{a}\n\n\n\\item \\textbf{b}\n\n\n\\end{itemize}'
    );
    expect(proseLatex('| a | b |\n|---|---|\n| 1 | 2 |')).toBe(
      '\\begin{longtable}{ll}\n\\hline\na & b \\\\\n\\hline\n1 & 2 \\\\\n\\hline\n\\end{longtable}'
    );
    expect(proseLatex('`x_1` [p](https://a.org/x_y%20)')).toBe(
      '\\texttt{x\\_1} \\href{https://a.org/x\\_y\\%20}{p}'
    );
  });
});
