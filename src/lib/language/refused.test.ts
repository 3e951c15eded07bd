import { describe, expect, it } from 'vitest';
import { covered, cured, read, treeOf } from './sketch.fixture.ts';

/** text, code, what is marked, text after the fix (null: none offered, '…' in front: not yet whole). */
type Row = readonly [string, string, string, string | null];

const missing: readonly Row[] = [
  ['2 R', 'syntax/missing-operator', '2 R', '2*R'],
  ['2 pi f', 'syntax/missing-operator', '2 pi f', '2 pi * f'],
  ['2 e', 'syntax/missing-operator', '2 e', '2*e'],
  ['2 e 3', 'syntax/missing-operator', '2 e', '2*e 3'],
  ['a b', 'syntax/missing-operator', 'a b', 'a*b'],
  ['a 2', 'syntax/missing-operator', 'a 2', 'a*2'],
  ['F kN', 'syntax/missing-operator', 'F kN', 'F*kN'],
  ['2 sin(x)', 'syntax/missing-operator', '2 sin(x)', '2*sin(x)'],
  ['(1+2)(3+4)', 'syntax/missing-operator', '(1+2)(3+4)', '(1+2)*(3+4)'],
  ['sqrt(4)(1+2)', 'syntax/missing-operator', 'sqrt(4)(1+2)', 'sqrt(4)*(1+2)'],
  ['2(3)(4)', 'syntax/missing-operator', '2(3)(4)', '2(3)*(4)'],
  ['(1+3) pi', 'syntax/missing-operator', '(1+3) pi', '(1+3)*pi'],
  ['5 m x', 'syntax/missing-operator', '5 m x', '5 m*x'],
  ['5 m (x)', 'syntax/missing-operator', '5 m (x)', '5 m*(x)'],
  ['2 pi 3', 'syntax/missing-operator', '2 pi 3', '2 pi * 3'],
  ['2 3', 'syntax/missing-operator', '2 3', null],
  ['1/2 pi', 'syntax/missing-operator', '2 pi', null],
  ['P/2 pi f', 'syntax/missing-operator', '2 pi', null],
  ['rho/2 v', 'syntax/missing-operator', '2 v', null],
  ['1/2(3+5)', 'syntax/missing-operator', '2(3+5)', null],
  ['a/-2 pi', 'syntax/missing-operator', '2 pi', null],
  ['x^2(3)', 'syntax/missing-operator', '2(3)', '…'],
  ['a not b', 'syntax/missing-operator', 'not', null]
];

const numbers: readonly Row[] = [
  ['1,5', 'syntax/number-form', '1,5', '1.5'],
  ['2*1,5 + 3', 'syntax/number-form', '1,5', '2*1.5 + 3'],
  ['(1,25 m)', 'syntax/number-form', '1,25', '(1.25 m)'],
  ['1,000', 'syntax/number-form', '1,000', null],
  ['0,125', 'syntax/number-form', '0,125', '0.125'],
  ['1,234,567', 'syntax/number-form', '1,234,567', '1234567'],
  ['1,234.5', 'syntax/number-form', '1,234.5', '1234.5'],
  ['1.234,5', 'syntax/number-form', '1.234,5', '1234.5'],
  ['1_000', 'syntax/number-form', '1_000', '1000'],
  ['1 000', 'syntax/number-form', '1 000', '1000'],
  ['12 500.5', 'syntax/number-form', '12 500.5', '12500.5'],
  ["1'000", 'syntax/number-form', "1'000", '1000'],
  ['1 1/2 in', 'syntax/number-form', '1 1/2 in', '1.5 in'],
  ['2 + 1 1/3 in', 'syntax/number-form', '1 1/3 in', '2 + 4/3 in'],
  ['2*1 1/3', 'syntax/number-form', '1 1/3', '2*(4/3)'],
  ['1½ in', 'syntax/number-form', '1½ in', '1.5 in'],
  ['½ + a', 'syntax/number-form', '½', '1/2 + a'],
  ['5 ft 3 in', 'syntax/number-form', '5 ft 3 in', '5 ft + 3 in'],
  ['2*5 ft 3 in', 'syntax/number-form', '5 ft 3 in', '2*(5 ft + 3 in)'],
  ['1 h 20 min 5 s', 'syntax/number-form', '1 h 20 min 5 s', '1 h + 20 min + 5 s'],
  ['0x1F', 'syntax/number-form', '0x1F', '31'],
  ['0b101', 'syntax/number-form', '0b101', '5'],
  ['1.2.3', 'syntax/number-form', '1.2.3', null],
  ['1e5.5', 'syntax/number-form', '1e5.5', null],
  ['1e999', 'syntax/number-form', '1e999', null],
  ['10^-6 m', 'syntax/number-form', '10^-6 m', '1e-6 m'],
  ['3*10^-6 m', 'syntax/number-form', '3*10^-6 m', '3e-6 m'],
  ['a*10^3 N/m', 'syntax/number-form', '10^3 N/m', 'a*1e3 N/m'],
  ['x^2 m', 'syntax/number-form', 'x^2 m', 'x^2 * 1 m']
];

const foreign: readonly Row[] = [
  ['5!', 'syntax/not-in-language', '!', null],
  ['a % b', 'syntax/not-in-language', '%', null],
  ['5 % 3', 'syntax/not-in-language', '5 % 3', 'mod(5, 3)'],
  ['(a + b)%', 'syntax/not-in-language', '%', null],
  ['a mod b', 'syntax/not-in-language', 'mod', null],
  ['x in mm', 'syntax/not-in-language', 'in', '…x to mm'],
  ['5 in in mm', 'units/refused', 'in', '…5 in to mm'],
  ['x to mm', 'syntax/not-in-language', 'to', null],
  ['max(x to mm, 3)', 'syntax/not-in-language', 'to', null],
  ['(x to mm to in)', 'syntax/not-in-language', 'to', null],
  ['"text"', 'syntax/not-in-language', '"text"', null],
  ["'text'", 'syntax/not-in-language', "'text'", null],
  ['[1, 2, 3]', 'syntax/not-in-language', '[', null],
  ['{a: 1}', 'syntax/not-in-language', '{', null],
  ['a[1]', 'syntax/not-in-language', '[', null],
  ['a = 3', 'syntax/not-in-language', '=', 'a == 3'],
  ['a := 3', 'syntax/not-in-language', ':=', 'a == 3'],
  ['a; b', 'syntax/not-in-language', ';', null],
  ['(a).b', 'syntax/not-in-language', '.', null],
  ['sqrt(x).y', 'syntax/not-in-language', '.', null],
  ['a ** b', 'syntax/not-in-language', '**', 'a ^ b'],
  ['a && b', 'syntax/not-in-language', '&&', 'a and b'],
  ['a || b', 'syntax/not-in-language', '||', 'a or b'],
  ['a <> b', 'syntax/not-in-language', '<>', 'a != b'],
  ['a => b', 'syntax/not-in-language', '=>', 'a >= b'],
  ['a – b', 'syntax/not-in-language', '–', 'a - b'],
  ['|a|', 'syntax/not-in-language', '|', null],
  ["x'", 'syntax/not-in-language', "'", null],
  ['6"', 'syntax/not-in-language', '"', null],
  ['x⁻¹', 'syntax/not-in-language', '⁻¹', 'x^-1'],
  ['x⁴', 'syntax/not-in-language', '⁴', 'x^4'],
  ['1..5', 'syntax/not-in-language', '..', null],
  ['3 ± 1', 'syntax/not-in-language', '±', null]
];

const order: readonly Row[] = [
  ['', 'syntax/unexpected', '', null],
  ['   ', 'syntax/unexpected', '   ', null],
  ['a +', 'syntax/unexpected', '+', null],
  ['* b', 'syntax/unexpected', '*', null],
  ['a * / b', 'syntax/unexpected', '* /', null],
  ['(a + )', 'syntax/unexpected', '+ )', null],
  ['()', 'syntax/unexpected', '()', null],
  ['a, b', 'syntax/unexpected', ',', null],
  ['min(a, )', 'syntax/unexpected', ')', null],
  ['min(, a)', 'syntax/unexpected', ',', null],
  ['a : b', 'syntax/unexpected', ':', null],
  ['1:10', 'syntax/unexpected', ':', null],
  ['a ? b', 'syntax/unexpected', '?', null],
  ['a ? b : c ? d', 'syntax/unexpected', '?', null],
  ['(a ? b) : c', 'syntax/unexpected', '?', null],
  ['(x to )', 'syntax/unexpected', 'to', null],
  ['5 m ²', 'syntax/unexpected', '5 m ²', null],
  ['a @ b', 'syntax/unexpected', '@', null],
  ['√x', 'syntax/unexpected', '√', null],
  ['5 $', 'units/refused', '$', null],
  ['a\u200bb', 'syntax/unexpected', '\u200b', '…ab'],
  ['(a + b', 'syntax/brackets', '(', '(a + b)'],
  ['sqrt((a + b)', 'syntax/brackets', '(', 'sqrt((a + b))'],
  ['a + b)', 'syntax/brackets', ')', 'a + b'],
  ['not a > b', 'syntax/brackets', 'not a > b', 'not (a > b)'],
  ['c and not a + 1 > b', 'syntax/brackets', 'not a + 1 > b', 'c and not (a + 1 > b)']
];

const calls: readonly Row[] = [
  ['R(1 + e)', 'names/not-a-function', 'R', 'R*(1 + e)'],
  ['R (1 + e)', 'names/not-a-function', 'R', 'R*(1 + e)'],
  ['ω(1 + e)', 'names/not-a-function', 'ω', 'ω*(1 + e)'],
  ['pi(3)', 'names/not-a-function', 'pi', 'pi*(3)'],
  ['log(x)', 'names/not-a-function', 'log', null],
  ['Sin(x)', 'names/not-a-function', 'Sin', 'sin(x)'],
  ['arctan(x)', 'names/not-a-function', 'arctan', 'atan(x)'],
  ['std(a)', 'names/not-a-function', 'std', 'sd(a)'],
  ['pow(a, b)', 'names/not-a-function', 'pow', null],
  ['if(a, b, c)', 'names/not-a-function', 'if', null],
  ['evaluate(a)', 'names/not-a-function', 'evaluate', '…'],
  ['constructor(a)', 'names/not-a-function', 'constructor', '…'],
  ['motor.f(a)', 'names/not-a-function', 'motor.f', '…'],
  ['sqrt()', 'names/arguments', 'sqrt()', null],
  ['1 + sqrt(a, b)', 'names/arguments', 'sqrt(a, b)', null],
  ['round(a, b, c)', 'names/arguments', 'round(a, b, c)', null],
  ['hypot(a)', 'names/arguments', 'hypot(a)', null],
  ['integrate(x^2, 2 x, 0, 1)', 'syntax/missing-operator', '2 x', '…'],
  ['integrate(x^2, (x), 0, 1)', 'names/arguments', '(x)', null]
];

const units: readonly Row[] = [
  ['5 kw', 'units/unknown', 'kw', '5 kW'],
  ['3 ton', 'units/refused', 'ton', null],
  ['a + 30 psig', 'units/refused', 'psig', 'a + 30 psi'],
  ['(x to kw)', 'units/unknown', 'kw', '(x to kW)'],
  ['(a to m + b)', 'units/unknown', '+ b', null]
];

describe.each([
  ['a missing operator', missing],
  ['a number in a form of another place', numbers],
  ['what other languages have', foreign],
  ['what stands in the wrong place', order],
  ['a call', calls],
  ['a unit', units]
])('%s', (_, rows) => {
  it.each(rows)('%j is refused as %s, marks %j, is cured to %j', (text, code, marks, cure) => {
    const { tree, problems } = read(text);
    const [found] = problems;
    expect(tree).toBeNull();
    expect(found).toBeDefined();
    if (!found) return;
    expect({ code: found.code, marks: covered(text, found.at) }).toEqual({ code, marks });
    const after = cured(text, found);
    if (cure === null || !cure.startsWith('…')) expect(after).toBe(cure);
    else if (cure.length > 1) expect(after).toBe(cure.slice(1));
    // What a fix gives is read, except where a second mistake or the end of the line remains.
    if (after !== null && cure !== null && !cure.startsWith('…') && cure !== '2*e 3') {
      expect(() => treeOf(after)).not.toThrow();
    }
  });
});

describe('words', () => {
  it.each([
    ['2 R', 'Between 2 and R an operator is missing.', 'For 2 times R write 2*R.'],
    ['R(1 + e)', 'R is not a function.', 'Is * missing? Write R*(1 + e).'],
    ['log(x)', 'log is read differently from book to book: ln or log10?', 'Write ln(…) for the natural logarithm, log10(…) for the one to base 10.'],
    ['10^-6 m', 'In 10^-6 m the number after ^ takes no unit.', 'Write 1e-6 m.'],
    ['1,5', '1,5 is written with a comma.', 'The decimal sign is a point: write 1.5.'],
    ['1,500', '1,500 can be read as 1.500 or as 1500.', 'Write 1.500 or 1500: a point before the decimals, nothing between groups of digits.'],
    ['5 ft 3 in', '5 ft 3 in is one quantity in two parts.', 'Write the sum: 5 ft + 3 in.'],
    ['1/2 pi', 'After a slash, 2 pi without an operator can be read in two ways.', 'Write 1/2*pi or 1/(2*pi).'],
    ['5 % 3', '"%" is always one hundredth, never the remainder of a division.', 'For the remainder write mod(5, 3).'],
    ['not a > b', '"not" takes only the name or bracket right after it.', 'Write not (a > b).'],
    ['x in mm', '"in" after x is the inch, not a conversion.', 'The word for a conversion is "to".'],
    ['a +', 'The expression ends after +, where a value is expected.', 'Write what comes after +, or take it away.'],
    ['atan2(y)', 'atan2 takes 2 arguments, and has 1 here.', 'Write atan2(y, x).'],
    ['F kN', 'Between F and kN an operator is missing; a unit stands only right after a number.', 'For a multiplication write F*kN; for the unit, write 1 kN and an operator before it.']
  ])('about %j', (text, message, hint) => {
    expect(read(text).problems[0]).toMatchObject({ message, hint });
  }); // prettier-ignore

  it('say found and expected only of what is there', () => {
    for (const rows of [missing, numbers, foreign, order, calls, units]) {
      for (const [text] of rows) {
        for (const found of read(text).problems) {
          expect(found.message).toMatch(/^\S.*[.?]$/u);
          expect(found.message).not.toMatch(/undefined|null|NaN|\bplease\b|\binvalid\b/iu);
          expect(found.severity).toBe('error');
        }
      }
    }
  });
});
