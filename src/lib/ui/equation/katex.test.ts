import { describe, expect, test } from 'vitest';
import { renderTex } from './katex.ts';

describe('formulas', () => {
  test('carry MathML and its TeX for readers and copying', () => {
    const html = renderTex('\\frac{v}{R}', { display: true });
    expect(html).toContain('<mfrac>');
    expect(html).toContain('<annotation encoding="application/x-tex">\\frac{v}{R}</annotation>');
  });

  test('in display style may still break between terms where asked', () => {
    expect(renderTex('a + b', { display: true, breaks: true })).not.toContain('katex-display');
    expect(renderTex('a + b', { display: true })).toContain('katex-display');
  });
});

describe('refused, and shown as text', () => {
  test.each([
    ['unbalanced', '\\frac{a'],
    ['unknown command', '\\nosuchcommand{a'],
    ['endless expansion', '\\def\\a{\\a b}\\a'],
    ['more than 5000 signs', 'a'.repeat(5001)]
  ])('%s', (_, tex) => {
    expect(renderTex(tex, { display: false })).toContain('tex-as-text');
  });

  test('the text is escaped', () => {
    expect(renderTex('\\frac{<script>', { display: false })).toContain('&lt;script&gt;');
  });
});

describe('nothing is loaded, linked or given attributes', () => {
  test.each([
    '\\href{javascript:x}{a}',
    '\\url{javascript:x}',
    '\\includegraphics{//x/y.png}',
    '\\htmlClass{x}{a}',
    '\\htmlStyle{position:fixed}{a}',
    '\\htmlData{a=b}{x}'
  ])('%s is shown as text', (tex) => {
    const html = renderTex(tex, { display: false });
    expect(html).toMatch(/^<code class="tex-as-text"[^<]*>[^<]*<\/code>$/);
  });
});

test('a size is bounded, so that a formula cannot cover the page', () => {
  const html = renderTex('\\rule{9999em}{9999em}', { display: false });
  expect(html.replace(/<annotation.*<\/annotation>/, '')).not.toContain('9999em');
});
