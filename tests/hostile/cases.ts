// Texts that mean harm, or that nobody meant. Each is made by code, so that the test holds no megabytes.

const block = (kind: string, lines: readonly string[]): string =>
  ['```' + kind, lines.join('\n'), '```', ''].join('\n');
const times = <T>(count: number, make: (i: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));
const calc = (...lines: readonly string[]): string => block('calc', lines);
const stages = (lines: readonly string[], body: string): string =>
  `---\nstages:\n${lines.map((line) => `  ${line}\n`).join('')}---\n${body}`;

/** What the engine must say: a code that is among the problems, or null where it computes. */
export interface HostileCase {
  readonly title: string;
  readonly says: string | null;
  readonly text: () => string;
}

const of = (title: string, says: string | null, text: () => string): HostileCase => ({
  title,
  says,
  text
});

const borrowed = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf', 'prototype'];

export const hostileCases: readonly HostileCase[] = [
  of('900 brackets in each other', 'syntax/too-deep', () => calc(`x = ${'('.repeat(900)}1${')'.repeat(900)}`)),
  of('1900 signs', 'syntax/too-deep', () => calc(`x = ${'-'.repeat(1900)}1`)),
  of('a tower of 900 powers', 'syntax/too-deep', () => calc(`x = ${'2^'.repeat(900)}1`)),
  of('250 conditions in each other', 'syntax/too-deep', () => calc(`x = ${'true?1:'.repeat(250)}2`)),
  of('a line of 1 MB', 'file/too-long', () => calc(`x = ${'1 + '.repeat(262_144)}1`)),
  of('1 MB of brackets', 'file/too-long', () => calc(`x = ${'('.repeat(1 << 20)}`)),
  of('1 MB of prose on one line', null, () => '{$`'.repeat(350_000)),
  of('1 MB of fences', null, () => '```\n'.repeat(250_000)),
  of('20,000 lines of one entry', 'syntax/too-deep', () => calc('x = 1', ...times(20_000, () => '  + 1'))),
  of('ten thousand names in a circle', 'names/circle', () => calc(...times(10_000, (i) => `x${i} = x${(i + 1) % 10_000}`))),
  of('ten thousand names in a chain', null, () => calc('x0 = 1', ...times(10_000, (i) => `x${i + 1} = x${i} + 1`))),
  of('ten thousand unknown names', 'names/unknown', () => calc(...times(10_000, (i) => `x${i} = y${i}`))),
  of('ten thousand times one name', 'line/duplicate-name', () => calc(...times(10_000, () => 'x = 1'))),
  of('300 names that all use each other', 'names/circle', () =>
    calc(...times(300, (i) => `x${i} = ${times(150, (j) => `x${(i + j) % 300}`).join('+')}`))),
  of('functions that double 40 times', 'sheet/budget', () =>
    calc('f0(x) = x + 1', ...times(40, (i) => `f${i + 1}(x) = f${i}(x) + f${i}(x)`), 'y = f40(1)')),
  of('functions of functions, 40 times', 'sheet/budget', () =>
    calc('f0(x) = x*x', ...times(40, (i) => `f${i + 1}(x) = f${i}(f${i}(x))`), 'y = f40(1.0)')),
  of('the same in an integral', 'sheet/budget', () =>
    calc('f0(x) = x + 1', ...times(40, (i) => `f${i + 1}(x) = f${i}(x) + f${i}(x)`), 'y = integrate(f40(t), t, 0, 1)')),
  of('functions calling each other 10,000 deep', 'syntax/too-deep', () =>
    calc('f0(x) = x', ...times(10_000, (i) => `f${i + 1}(x) = f${i}(x)`), 'y = f10000(1)')),
  of('a function that calls itself', 'names/circle', () => calc('f(x) = f(x - 1)', 'y = f(3)')),
  of('a dimension squared 60 times', 'units/exponent', () => calc('x0 = 2 m', ...times(60, (i) => `x${i + 1} = x${i}*x${i}`))),
  of('huge exponents', 'units/exponent', () =>
    calc('a = 1e999', `b = 1e${'9'.repeat(1500)}`, 'c = (2 m)^1000000', 'd = 1 m^999999999', `e = 1 m^(1/1${'0'.repeat(20)})`)),
  of('names of the machine as names', null, () =>
    borrowed.map((n) => block('inputs', [`${n} = 3 m`]) + calc(`${n}_2 = 2*${n}`) + block('limits', [`${n}: ${n} <= 4 m`])).join('')),
  of('names of the machine as columns', null, () =>
    block('table t', [borrowed.join(', '), borrowed.map((_, i) => i).join(', ')]) + calc(...borrowed.map((n, i) => `x${i} = sum(t.${n})`))),
  of('names of the machine as functions', 'names/not-a-function', () =>
    calc(...[...borrowed, 'eval', 'import', 'require', 'Function'].map((n, i) => `x${i} = ${n}(1)`))),
  of('names of the machine as stages', 'file/front-matter', () =>
    stages(['constructor: a', 'valueof: {title: b, after: constructor}', '__proto__: c'], block('inputs', ['a = 1', '  at constructor: 2', '  at valueof: 3']))),
  of('front matter that multiplies itself', 'file/front-matter', () =>
    `---\na: &a [${'x,'.repeat(9)}x]\n${[...'bcdefg'].map((n, i) => `${n}: &${n} [${times(9, () => `*${'abcdef'[i]}`).join(',')}]`).join('\n')}\ntitle: *g\n---\n`),
  of('front matter 20,000 brackets deep', 'file/front-matter', () => `---\ntitle: ${'['.repeat(20_000)}\n---\n`),
  of('50 MB on one line', 'file/too-long', () => 'x'.repeat(50_000_000)),
  of('50 MB of lines', 'file/too-long', () => 'x = 1\n'.repeat(8_400_000)),
  of('NUL characters', 'syntax/unexpected', () => `\0${'\n'}${calc('x = 1\0 + 2', '\0', 'y = 2')}`),
  of('bait for patterns: spaces', 'line/not-understood', () =>
    block('inputs', times(600, (i) => `x${i}${' '.repeat(1900)}=`)) + block('limits', times(300, (i) => `a${i} ${'['.repeat(900)}: 1 <= 2`))),
  of('bait for patterns: units and comments', 'units/exponent', () =>
    calc(`x = 1 ${'m '.repeat(900)}`, `y = 1 ${'m/'.repeat(900)}`, ...times(300, (i) => `z${i} = 1 ${'# '.repeat(900)}`))),
  of('2,000 revisions of an input', null, () =>
    stages(times(2001, (i) => `s${i}: S`), block('inputs', ['a = 1', ...times(2000, (i) => `  at s${i + 1}: ${i}`)]) + calc('b = a + 1'))),
  of('2,000 revisions of a formula', null, () =>
    stages(times(2001, (i) => `s${i}: S`), block('inputs', ['a = 1']) + calc('b = a', ...times(2000, (i) => `  at s${i + 1}: a + ${i}`)))),
  of('5,000 stages', null, () => stages(times(5000, (i) => `s${i}: S`), block('inputs', ['a = 1 ± 1 %']) + calc('b = a + 1'))),
  of('300 stages in a circle', 'file/stage-circle', () =>
    stages(times(300, (i) => `s${i}: { title: S, after: s${(i + 1) % 300} }`), block('inputs', ['a = 1']))),
  of('a table of 100,000 rows', null, () =>
    block('table t', ['x, y [m]', ...times(100_000, (i) => `${i}, ${2 * i}`)]) +
    calc('a = sum(t.x)', 'b = mean(t.y)', 'c = interp_spline(5.5, t.x, t.y)')),
  of('an integral of 100,000 rows', 'sheet/budget', () =>
    block('table t', ['x, y [m]', ...times(100_000, (i) => `${i}, ${2 * i}`)]) + calc('c = interp(t.x, t.x, t.y)')),
  of('an integral of an integral of an integral', null, () =>
    calc('x = integrate(integrate(integrate(a*b*c, a, 0, 1), b, 0, 1), c, 0, 1)')),
  of('five integrals in each other', 'sheet/budget', () =>
    calc('x = integrate(integrate(integrate(integrate(integrate(sqrt(a*b*c*d*e), a, 0, 1), b, 0, 1), c, 0, 1), d, 0, 1), e, 0, 1)')),
  of('a solve inside a solve inside a solve', null, () =>
    block('inputs', ['a = 1 within 0 .. 9', 'b = 1 within 0 .. 9', 'c = 1 within 0 .. 9']) +
    calc('f = s1 + c', 'g = s2 + a') +
    block('solve', ['s1 = b where b^2 == a + c', 's2 = c where f == 3', 's3 = a where g == 4'])),
  of('six solves in each other', 'solve/budget', () =>
    block('inputs', times(6, (i) => `a${i} = 1 within 0 .. 9`)) +
    block('solve', ['s0 = a0 where a0^2 == 2 + a1/9', ...times(5, (i) => `s${i + 1} = a${i + 1} where a${i + 1}^2 + s${i} == 4 + a${(i + 2) % 6}/9`)]))
]; // prettier-ignore
