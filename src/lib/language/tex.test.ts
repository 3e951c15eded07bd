import fc from 'fast-check';
import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { parseUnit, isUnitFault, type Unit } from '#lib/units/index.ts';
import { languageFunctions, texOf, texOfDefinition, texOfName, texWithNumbers, type ShownValue } from './index.ts'; // prettier-ignore
import { texOfDisplayed, texOfNumber } from './tex-number.ts';
import { treeOf } from './sketch.fixture.ts';

/** Throws on anything that KaTeX would only warn about. */
function typeset(tex: string): string {
  return katex.renderToString(tex, { throwOnError: true, strict: 'error', trust: false });
}

function unit(text: string): Unit {
  const found = parseUnit(text, 'EUR');
  if (isUnitFault(found)) throw new Error(found.message);
  return found;
}

describe('a name', () => {
  it.each([
    ['R', 'R'],
    ['omega', '\\omega'],
    ['Omega', '\\Omega'],
    ['phi', '\\varphi'],
    ['epsilon_max', '\\varepsilon_{\\mathrm{max}}'],
    ['P_drag', 'P_{\\mathrm{drag}}'],
    ['omega_max', '\\omega_{\\mathrm{max}}'],
    ['k_t', 'k_{t}'],
    ['sigma_alpha', '\\sigma_{\\alpha}'],
    ['T1', 'T_{1}'],
    ['theta1', '\\theta_{1}'],
    ['T_1', 'T_{1}'],
    ['d_arm_max', 'd_{\\mathrm{arm},\\mathrm{max}}'],
    ['T1_in', 'T_{1,\\mathrm{in}}'],
    ['ratio', '\\mathrm{ratio}'],
    ['PF_in', '\\mathrm{PF}_{\\mathrm{in}}'],
    ['Delta_T', '\\Delta T'],
    ['Delta_T_air', '\\Delta T_{\\mathrm{air}}'],
    ['g_n', 'g_{n}'],
    ['motor.P_rated', '\\mathrm{motor}\\mathord{.}P_{\\mathrm{rated}}'],
    ['run1.end.x', '\\mathrm{run1}\\mathord{.}\\mathrm{end}\\mathord{.}x'],
    ['größe', '\\text{größe}'],
    ['_', '\\_'],
    ['x_', 'x'],
    ['א', '\\text{(U+05D0)}']
  ])('%s is %s', (name, tex) => {
    expect(texOfName(name)).toBe(tex);
    typeset(tex);
  });

  it('of any letters of the world can be typeset', () => {
    for (let code = 0x80; code < 0x20000; code++) {
      const letter = String.fromCodePoint(code).normalize('NFC');
      // Han and Hangul are alike from end to end: every 50th will do.
      const isDense = (code > 0x3400 && code < 0xd7a4) || code > 0x10000;
      if (!/^\p{L}$/u.test(letter) || (isDense && code % 50 > 0)) continue;
      typeset(`${texOfName(letter)} + ${texOfName(`a_x${letter}`)}`);
    }
  });

  it('brings no command in, whatever it holds', () => {
    const name = fc.string({ unit: 'binary', maxLength: 20 });
    fc.assert(
      fc.property(name, (text) => {
        for (const tex of [texOfName(text), texOfDisplayed(text), texOfNumber(text)]) {
          const commands = tex.match(/\\[a-zA-Z]+/g) ?? [];
          const own = /^\\(?:mathrm|text|mathord|Delta|infty|times|var\w+|[A-Za-z]?[a-z]+)$/;
          for (const command of commands) expect(command).toMatch(own);
          expect(tex).not.toMatch(/[$#&~%]|\\(?:href|url|html|def|input|include)/);
        }
      }),
      { seed: 3, numRuns: 2000 }
    );
    expect(texOfName('\\href{x}')).toBe('\\text{(U+005C)href(U+007B)x(U+007D)}');
  });
});

describe('a number', () => {
  it.each([
    ['2', '2'],
    ['.5', '0.5'],
    ['5.', '5'],
    ['1.40', '1.40'],
    ['1e-6', '10^{-6}'],
    ['2.5E+3', '2.5\\times10^{3}'],
    ['9999', '9999'],
    ['96485.3', '96{\\,}485.3']
  ])('written %s is %s', (text, tex) => {
    expect(texOfNumber(text)).toBe(tex);
  });

  it.each([
    ['-1.2e-5', '-1.2\\times10^{-5}'],
    ['−12\u202f500.5', '-12{\\,}500.5'],
    ['1.2\u202f×\u202f10⁻⁵', '1.2\\times10^{-5}'],
    ['1.2\\times10^{-5}', '1.2\\times10^{-5}'],
    ['12{\\,}500', '12{\\,}500'],
    ['inf', '\\infty'],
    ['−∞', '-\\infty']
  ])('displayed as %s is %s', (text, tex) => {
    expect(texOfDisplayed(text)).toBe(tex);
  });
});

describe('a formula', () => {
  it.each([
    ['sqrt(k/m)/(2*pi)', '\\frac{\\sqrt{\\frac{k}{m}}}{2\\,\\pi }'],
    ['2*rho*C_d*omega^3*R^4/8', '\\frac{2\\,\\rho\\,C_{d}\\,\\omega^{3}\\,R^{4}}{8}'],
    ['(a + b)/(c*d)', '\\frac{a + b}{c\\,d}'],
    ['a/b/c', '\\frac{a}{b\\,c}'],
    ['a/(b/c)', '\\frac{a}{\\frac{b}{c}}'],
    ['-a/b + c', '-\\frac{a}{b} + c'],
    ['c + -a/b', 'c + \\left(-\\frac{a}{b}\\right)'],
    ['c - (a - b)', 'c - (a - b)'],
    ['(a/b)^2', '\\left(\\frac{a}{b}\\right)^{2}'],
    ['2*(a/b)', '2 \\cdot \\frac{a}{b}'],
    ['x*3', 'x \\cdot 3'],
    ['3*x', '3\\,x'],
    ['x*2^3', 'x \\cdot 2^{3}'],
    ['a*-b', 'a\\,(-b)'],
    ['3--2', '3 - (-2)'],
    ['-x²', '-x^{2}'],
    ['(-x)²', '(-x)^{2}'],
    ['x²^2', '(x^{2})^{2}'],
    ['x^(1/2)', '\\sqrt{x}'],
    ['x^(1/3)', '\\sqrt[3]{x}'],
    ['x^(3/2)', 'x^{3 / 2}'],
    ['x^-n', 'x^{-n}'],
    ['cbrt(x)', '\\sqrt[3]{x}'],
    ['abs(a - b)', '\\left\\lvert a - b\\right\\rvert '],
    ['sin(x)^2', '\\sin^{2}(x)'],
    ['ln(x)^2', '(\\ln(x))^{2}'],
    ['sin(a/b)', '\\sin\\!\\left(\\frac{a}{b}\\right)'],
    ['log10(x)', '\\log_{10}(x)'],
    ['asin(x)', '\\arcsin(x)'],
    ['hypot(a, b)', '\\operatorname{hypot}(a, b)'],
    ['min(a, b)', '\\operatorname{min}(a, b)'],
    ['f(x, y)', 'f(x, y)'],
    ['drag(v)', '\\mathrm{drag}(v)'],
    ['9.81 m/s^2', '9.81\\,\\mathrm{m}/\\mathrm{s}^{2}'],
    ['5 m * x', '5\\,\\mathrm{m} \\cdot x'],
    ['3/4 in', '\\tfrac{3}{4}\\,\\mathrm{in}'],
    ['5 %', '5\\,\\%'],
    ['2048/rev', '2048/\\mathrm{rev}'],
    ['1e-6*x', '10^{-6}\\,x'],
    ['a <= b < c', 'a \\le b < c'],
    ['a == b or not (c != d)', 'a = b\\text{ or }\\text{not }(c \\ne d)'],
    ['(sqrt(k/m) to rad/s)', '\\sqrt{\\frac{k}{m}}'],
    [
      'x > 1 ? a : b',
      '\\begin{cases} a & \\text{if } x > 1 \\\\ b & \\text{otherwise} \\end{cases}'
    ],
    ['integrate(x^2, x, 0, inf)', '\\int_{0}^{\\infty } x^{2}\\,\\mathrm{d}x'],
    ['2*integrate(x + 1, x, 0, a/b)', '2\\,\\left(\\int_{0}^{a / b} (x + 1)\\,\\mathrm{d}x\\right)']
  ])('%s', (text, tex) => {
    expect(texOf(treeOf(text, ['f', 'drag']))).toBe(tex);
    typeset(tex);
  });

  it('has its name before it, with the parameters of a function', () => {
    expect(texOfDefinition('P_shaft', treeOf('a + b'))).toBe('P_{\\mathrm{shaft}} = a + b');
    expect(texOfDefinition('f', treeOf('x*y'), ['x', 'y'])).toBe('f(x, y) = x\\,y');
  });

  it('is typeset for every function of the language', () => {
    for (const { name, least, shape } of languageFunctions) {
      const args =
        shape === 'integral' ? 'x^2, x, 0, 1' : Array.from({ length: least }, () => 'a/b');
      const tree = treeOf(`c*${name}(${String(args)})^2`);
      typeset(texOf(tree));
      typeset(texWithNumbers(tree, () => ({ number: '-2', unit: null })));
    }
  });
});

describe('a formula with numbers', () => {
  const values: Readonly<Record<string, ShownValue>> = {
    rho: { number: '1.204', unit: unit('kg/m^3') },
    v: { number: '80', unit: unit('m/s') },
    k: { number: '−3', unit: null },
    n: { number: '2', unit: null },
    e: { number: '1.2e-5', unit: null },
    T: { number: '20', unit: unit('degC') },
    theta: { number: '30', unit: unit('deg') }
  };

  it.each([
    [
      'rho*v^2/2',
      '1.204\\,\\mathrm{kg}/\\mathrm{m}^{3} \\cdot (80\\,\\mathrm{m}/\\mathrm{s})^{2} / 2'
    ],
    ['n*k', '2 \\cdot (-3)'],
    ['n - k', '2 - (-3)'],
    ['k + n', '-3 + 2'],
    ['-k', '-(-3)'],
    ['k^n', '(-3)^{2}'],
    ['e^n', '(1.2\\times10^{-5})^{2}'],
    ['n/v', '2 / (80\\,\\mathrm{m}/\\mathrm{s})'],
    ['v/n', '(80\\,\\mathrm{m}/\\mathrm{s}) / 2'],
    ['n/k', '2 / (-3)'],
    ['n/2*x', '(2 / 2) \\cdot x'],
    ['sqrt(n*x)', '\\sqrt{2 \\cdot x}'],
    ['2 pi*n', '2 \\cdot \\pi  \\cdot 2'],
    ['sin(theta)', '\\sin(30{{}^{\\circ}})'],
    ['(T to K)', '20\\,{{}^{\\circ}\\mathrm{C}}'],
    ['integrate(n*x, x, 0, n)', '\\int_{0}^{2} 2 \\cdot x\\,\\mathrm{d}x'],
    ['n > 1 ? v : x', '80\\,\\mathrm{m}/\\mathrm{s}\\text{ if }2 > 1\\text{, otherwise }x']
  ])('%s', (text, tex) => {
    expect(texWithNumbers(treeOf(text), (name) => values[name] ?? null)).toBe(tex);
    typeset(tex);
  });
});
