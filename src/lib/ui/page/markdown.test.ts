import { describe, expect, test } from 'vitest';
import type { LiveValue } from './live.ts';
import { renderProse, type ProseOptions } from './markdown.ts';

const value: LiveValue = { kind: 'value', text: '5.0\u00a0kW', of: 'P, Upgrade', state: 'value' };
const options: ProseOptions = {
  live: (inside) =>
    inside === 'P' ? value : inside === 'Q' ? { kind: 'unknown', sentence: 'no Q' } : null,
  pictureHref: (path) => `/beside/${path}`,
  sheetHref: (name) => `/worksheets/${name}`,
  headingShift: 0,
  title: 'The rig',
  anchor: (text) => `s-${text.toLowerCase().replaceAll(/\W+/g, '-')}`
};
const html = (text: string): string => renderProse(text, options).html;

describe('a sheet cannot write markup', () => {
  test.each([
    '<script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    'a <b onclick=alert(1)>b</b>',
    '<!-- --><iframe src="//x"></iframe>',
    '# <svg onload=alert(1)>',
    '| a |\n|---|\n| <script>x</script> |',
    '[<img src=x onerror=alert(1)>](#a)',
    '![<script>](x.png)',
    '$<script>alert(1)</script>$',
    '`<script>`',
    '    <script>'
  ])('%j comes out as text', (text) => {
    const made = html(text).replaceAll('&lt;', '').replaceAll('&quot;', '');
    expect(made).not.toMatch(/<(?:script|img src=x|iframe|b onclick|svg onload)/);
  });

  test.each([
    '[a](javascript:alert(1))',
    '[a](JaVaScRiPt:alert(1))',
    '[a](java&#10;script:alert(1))',
    '[a](&#106;avascript:alert(1))',
    '[a](vbscript:x)',
    '[a](data:text/html,<script>)',
    '[a](file:///etc/passwd)',
    '<javascript:alert(1)>',
    '[a](//evil.example/x)',
    '![a](https://evil.example/x.png)',
    '![a](//evil.example/x.png)',
    '![a](data:image/svg+xml,<svg/>)',
    '$\\href{javascript:alert(1)}{x}$',
    '$\\includegraphics{https://evil.example/x.png}$',
    '$\\htmlData{a=b}{x}$'
  ])('%j leads nowhere', (text) => {
    expect(html(text)).not.toMatch(/(?:href|src)="(?!#|\/beside\/|\/worksheets\/)/i);
    expect(html(text)).not.toMatch(/\sdata-a=/);
  });

  test('mathematics that asks for endless expansion ends, as text', () => {
    const bomb = '$\\def\\a{\\a\\a}\\a x$';
    expect(html(bomb)).toContain('tex-as-text');
  });
});

describe('links', () => {
  test('to web and mail addresses stay, without a referrer', () => {
    expect(html('[a](https://example.org/b)')).toContain('<a href="https://example.org/b" rel="noreferrer noopener">'); // prettier-ignore
    expect(html('[a](mailto:a@example.org)')).toContain('href="mailto:a@example.org"');
  });

  test('to another worksheet open it; to other files they are no links', () => {
    expect(html('[a](other.md#s-air)')).toContain('<a href="/worksheets/other#s-air">');
    expect(html('[a](other.csv)')).toContain('<a>a</a>');
  });

  test('a picture comes from beside the sheet, and only from there', () => {
    expect(html('![rig](pictures/rig.png)')).toContain(
      '<img src="/beside/pictures/rig.png" alt="rig"'
    );
    expect(html('![rig](../rig.png)')).toContain('/beside/../rig.png'); // the folder refuses it
  });
});

describe('live values', () => {
  test('stand in text, in emphasis, headings and tables, with what they are of', () => {
    for (const text of ['at {P} now', '**{P}**', '## Now {P}', '| a |\n|---|\n| {P} |', '- {P}'])
      expect(html(text)).toContain('title="P, Upgrade">5.0\u00a0kW</span>');
  });

  test.each(['`{P}`', '    {P}', '```\n{P}\n```', '$a_{P}$', '\\{P}'])('not in %j', (text) => {
    expect(html(text)).not.toContain('class="live');
  });

  test('an unknown name stays as written, and its line is told', () => {
    const made = renderProse('one\n\ntwo\nthree {Q} four', options);
    expect(made.html).toContain('{Q}');
    expect(made.notices).toEqual([{ line: 3, sentence: 'no Q', inside: 'Q' }]);
  });

  test('braces that are not of that form are plain text', () => {
    expect(html('a set {1, 2} and {x\ny}')).not.toContain('live');
  });
});

describe('mathematics', () => {
  test('is typeset with MathML beside it', () => {
    expect(html('the $v_{tip}$ of')).toContain('<math');
    expect(html('$$a = b$$')).toContain('display-mathematics');
  });

  test.each(['costs $5 and $6', '$ a$', '$a $', 'from $a$5 on'])('%j has none', (text) => {
    expect(html(text)).not.toContain('katex');
  });

  test('what cannot be typeset is shown as written', () => {
    expect(html('$\\frac{a$')).toContain('<code class="tex-as-text"');
  });
});

describe('headings', () => {
  test('keep one title on the page: the sheet’s own is left out, the rest move down', () => {
    const made = renderProse('# The rig\n\n## Air\n\n### Dry\n\n#### Deep', options);
    expect(made.html).not.toContain('<h1');
    expect(made.html).toContain('<h2 id="s-air">Air</h2>');
    expect(made.headings.map(({ text, level }) => `${level} ${text}`)).toEqual([
      '2 Air',
      '3 Dry',
      '4 Deep'
    ]);
  });

  test('move down by the shift asked for, not past the sixth level', () => {
    const made = renderProse('# Air\n\n###### Deep', { ...options, headingShift: 1 });
    expect(made.html).toContain('<h2 id="s-air"');
    expect(made.html).toContain('<h6 id="s-deep"');
  });
});
