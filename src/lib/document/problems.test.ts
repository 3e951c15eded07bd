// Each problem of a line, a block or a file: its whole text, its place, its cure. `found` is always
// what stands at the place.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { everyKind, sheetOf, completeInfo, textAt, told } from './reading.fixture.ts';
import { readWorksheet } from './read.ts';
import type { Problem } from '#lib/problem/index.ts';
import type { BlockKind } from './types.ts';

function expectPlaces(text: string, problems: readonly Problem[]): void {
  for (const { at, found, message } of problems) {
    const line = text.split(/\r\n|\r|\n/)[at.line - 1];
    expect(line, message).toBeDefined();
    expect(at.from).toBeGreaterThanOrEqual(1);
    expect(at.to).toBeGreaterThanOrEqual(at.from);
    expect(at.to).toBeLessThanOrEqual((line ?? '').length + 1);
    if (found !== null && at.to > at.from && !message.startsWith('This row has')) {
      expect(textAt(text, at), message).toBe(found.split('\n', 1)[0]);
    }
  }
}

function tells(kind: BlockKind, cases: readonly (readonly [string, ...string[]])[]): void {
  test.each(
    cases.map(([lines, ...expected]) => [lines.replaceAll('\n', '⏎'), lines, expected] as const)
  )(`${kind}: %s`, (_, lines, expected) => {
    const text = sheetOf(completeInfo[kind], ...lines.split('\n'));
    const { problems } = readWorksheet(text);
    expect(problems.map(told)).toEqual(expected);
    expectPlaces(text, problems);
  });
}

const inputs =
  'name = value [± tolerance] [within low .. high] · name = ? unit · correlated a, b 0.9';
const name =
  'is not a name: a name is letters, digits and _, and does not begin with a digit. Join words by _, as in T_shaft.';
const formOfInput = 'The form is name = value [± tolerance] [within low .. high].';

describe('problems of lines', () => {
  tells('inputs', [
    ['v 80 m/s', `2:1-9 line/not-understood: v 80 m/s is none of the lines that an inputs block knows. It knows: ${inputs}.`],
    ['= 3', `2:1-4 line/not-understood: = 3 is none of the lines that an inputs block knows. It knows: ${inputs}.`],
    ['tip speed = 3 m/s', `2:1-10 line/not-understood: tip speed ${name}`],
    ['2v = 3 m/s', `2:1-3 line/not-understood: 2v ${name}`],
    ['a.b = 3', `2:1-4 line/not-understood: a.b ${name}`],
    ['f(x) = 3', `2:1-5 line/not-understood: f(x) ${name}`],
    ['sqrt = 3', '2:1-5 line/reserved-name: sqrt is a function and cannot be defined. Use another name, such as sqrt_1.'],
    ['  π = 3', '2:3-4 line/reserved-name: π is predefined and cannot be defined. Use another name, such as π_1.'],
    ['g_n = 9.81 m/s^2', '2:1-4 line/reserved-name: g_n is predefined (9.80665 m/s^2, standard gravity) and cannot be defined. Use another name, such as g_n_1.'],
    ['weight = 3 N', '2:1-7 line/reserved-name: weight is a word of the worksheet and cannot be defined. Use another name, such as weight_1.'],
    ['a =  # nothing yet', `2:4-4 line/not-understood: a: a value is missing. ${formOfInput}`],
    ['a = 3 ±', `2:8-8 line/not-understood: a: the amount after ± is missing. ${formOfInput}`],
    ['a = 3 ± sd', '2:9-9 line/not-understood: a: the amount after ± is missing. The form is ± amount [sd].'],
    ['a = 3 ± 1 ± 2', '2:11-12 line/not-understood: a: ± stands here a second time. Keep one of the two.'],
    ['a = 3 to m ± 1 to ft', '2:19-21 line/not-understood: a: to stands here a second time. Keep one of the two.'],
    ['a = 3 within 4', `2:15-15 line/not-understood: a: a range low .. high is missing. ${formOfInput}`],
    ['a = 3 within 1 .. 4 within 2 .. 3', '2:21-27 line/not-understood: a: within stands here a second time. Keep one of the two.'],
    ['a = 3 ± 1 sd k=2', '2:11-13 line/not-understood: A tolerance is either k=2 or sd, not both. Keep one of the two.'],
    ['a = 3 ± 1 k=0', '2:11-14 line/not-understood: A coverage factor is greater than 0, and k=0 is not.'],
    ['a = 3 ± 1 dof 0', '2:11-16 line/not-understood: A number of degrees of freedom is greater than 0, and dof 0 is not.'],
    ['a = 3 +/- 1', '2:7-10 line/not-understood: +/- is a sum and a sign, not a tolerance. Write ± for a tolerance. [7-10: ±]'],
    ['a = 3 +- 1', '2:7-9 line/not-understood: +- is a sum and a sign, not a tolerance. Write ± for a tolerance. [7-9: ±]'],
    ['correlated a 0.9', `2:1-17 line/not-understood: correlated a 0.9 is none of the lines that an inputs block knows. It knows: ${inputs}.`],
    ['correlated a, b 0.9\n  at x: 0.8', '3:3-8 line/not-understood: A correlation cannot be revised at a stage. Revise the inputs and formulas it is made of.'],
    ['a = 1\n  at x: 2 ±', `3:12-12 line/not-understood: a: the amount after ± is missing. ${formOfInput}`]
  ]); // prettier-ignore

  tells('calc', [
    ['P drag = 3', `2:1-7 line/not-understood: P drag ${name}`],
    ['= 3', '2:1-4 line/not-understood: = 3 is none of the lines that a calc block knows. It knows: name = expression [to unit] · f(x, y) = expression [to unit] · expression [to unit].'],
    ['f() = 3', '2:3-3 line/not-understood: f: a parameter is missing. The form is f(x, y) = expression.'],
    ['f(x, 2) = 3', `2:6-7 line/not-understood: 2 ${name}`],
    ['f(x, x) = 3', '2:6-7 line/duplicate-name: f: x stands here a second time. Keep one of the two.'],
    ['sin(x) = 3', '2:1-4 line/reserved-name: sin is a function and cannot be defined. Use another name, such as sin_1.'],
    ['mod = 3', '2:1-4 line/reserved-name: mod is a function and cannot be defined. Use another name, such as mod_1.']
  ]); // prettier-ignore

  const forms = 'The forms are: demand <= capacity · actual >= required · low <= x <= high · x outside a .. b · a == b ± t.';
  tells('limits', [
    ['a <= b', '2:1-7 line/not-understood: a <= b has no label. Write a label and a colon first: tip speed: a <= b.'],
    [': a <= b', '2:1-9 line/not-understood: : a <= b has no label. Write a label and a colon first: tip speed: : a <= b.'],
    ['tip speed', '2:1-10 line/not-understood: tip speed is none of the lines that a limits block knows. It knows: label [tags]: demand <= capacity · label: actual >= required · label: low <= x <= high · label: x outside a .. b · label: a == b ± t.'],
    ['tip speed: v', `2:12-13 line/no-comparison: tip speed: nothing is compared. ${forms}`],
    ['tip speed:', `2:11-11 line/no-comparison: tip speed: nothing is compared. ${forms}`],
    ['x: a < b', '2:6-7 line/no-comparison: x: < leaves out equality; a limit holds at equality, within one part in a thousand million. Write <=. [6-7: <=]'],
    ['x: a > b', '2:6-7 line/no-comparison: x: > leaves out equality; a limit holds at equality, within one part in a thousand million. Write >=. [6-7: >=]'],
    ['x: a = b', '2:6-7 line/no-comparison: x: = defines a name, and here two sides are compared. Write ==. [6-7: ==]'],
    ['x: a != b', '2:6-8 line/no-comparison: x: "not equal" is not a limit. To keep clear of a range write x outside a .. b.'],
    ['x: a <= b >= c', '2:4-15 line/no-comparison: x: these comparisons do not make one range. Write low <= x <= high, or make two limits of them.'],
    ['x: a <= b <= c <= d', '2:4-20 line/no-comparison: x: these comparisons do not make one range. Write low <= x <= high, or make two limits of them.'],
    ['x: a <=', '2:8-8 line/no-comparison: x: one side of the comparison is missing. The form is demand <= capacity.'],
    ['x: none <= b', '2:4-8 line/no-comparison: x: "none" is a capacity without bound, and cannot be what is judged. Write the quantity that is to be judged.'],
    ['x: a outside b', '2:14-15 line/no-comparison: x: a range a .. b is missing. The form is x outside a .. b.'],
    ['x [saftey]: a <= b', '2:4-10 line/not-understood: [saftey] is not a tag of a limit. The tags are [safety], [screen], [level], [close at 80 %], [close within 5 K], [worst of run, jam].'],
    ['x: a <= b\n  at up: c', `3:10-11 line/no-comparison: x: nothing is compared. ${forms}`]
  ]); // prettier-ignore

  const solve = 'The form is name = unknown where left == right [between low and high].';
  tells('solve', [
    ['R = 3', '2:1-6 line/not-understood: R = 3 is none of the lines that a solve block knows. It knows: name = unknown where left == right [between low and high] · every root · unknown x from 1 · a == b.'],
    ['R_1 = R where P = 4', '2:17-18 line/not-understood: R_1: = defines a name, and here two sides are compared. Write ==. [17-18: ==]'],
    ['R_1 = R where P', `2:16-16 line/not-understood: R_1: == and a right side is missing. ${solve}`],
    ['R_1 = R where P == 4 between 1', `2:31-31 line/not-understood: R_1: a range low and high is missing. ${solve}`],
    ['R_1 = R where P ==', '2:19-19 line/not-understood: R_1: the right side is missing. The form is left == right.'],
    ['R_1 = where P == 4', `2:6-6 line/not-understood: R_1: the name to solve for is missing. ${solve}`],
    ['R_1 = R where P == 4\n  at x: 3', '3:3-8 line/not-understood: A line of solve cannot be revised at a stage. Revise the inputs and formulas it is made of.'],
    ['unknown x from', '2:15-15 line/not-understood: x: a value to start from is missing. The form is unknown x from 1.']
  ]); // prettier-ignore

  const choose = 'condition, as in P_rated >= P_need · column is "text" · name = expression [to unit] · least column [weight 3] · most column [weight 3] · take "ROW"';
  tells('choose', [
    ['lest mass', `2:1-10 line/not-understood: lest mass is none of the lines that a choose block knows. It knows: ${choose}.`],
    ['take M1', `2:1-8 line/not-understood: take M1 is none of the lines that a choose block knows. It knows: ${choose}.`],
    ['take "M1', '2:6-9 line/not-understood: The row or word: its text in double quotes is missing. The form is take "ROW".'],
    ['kind is three', '2:9-14 line/not-understood: The row or word: its text in double quotes is missing. The form is take "ROW".'],
    ['least', '2:6-6 line/not-understood: least: a column is missing. The form is least column [weight 3].'],
    ['least mass weight', '2:18-18 line/not-understood: mass: the weight is missing. The form is least column [weight 3].']
  ]); // prettier-ignore

  tells('parts', [
    ['pin: F', '2:6-7 line/not-understood: F is none of the lines that a parts block knows. It knows: label [tags]: carries expression · rating name = value · rating ? · mass …, cost …, time …, from words.'],
    ['pin: carries', '2:13-13 line/not-understood: pin: what it carries is missing. The form is label: carries expression.'],
    ['pin\n  rating F = 3, rating ?', '3:17-23 line/not-understood: The part: rating stands here a second time. Keep one of the two.'],
    ['pin\n  rating F', '3:11-11 line/not-understood: The rating: a name and a value is missing. The form is rating name = value.']
  ]); // prettier-ignore

  tells('holds', [
    ['[x] guard shut', '2:1-15 line/not-understood: This hold is ticked, and does not say by whom and when. End the line with — NAME, DATE.'],
    ['guard shut', '2:1-11 line/not-understood: guard shut is none of the lines that a holds block knows. It knows: [ ] text · [x] text — NAME, DATE.']
  ]); // prettier-ignore

  tells('event', [
    ['14 March: it slipped', '2:1-21 line/not-understood: 14 March: it slipped is none of the lines that an event block knows. It knows: DATE: text · part LABEL gave way at name = value.']
  ]); // prettier-ignore

  tells('ask', [
    ['What is the speed?', '1:4-7 line/not-understood: This ask block needs a line with the answer. Write answer expression ± band.'],
    ['answer v', '2:9-9 line/not-understood: answer: ± and the band that is still right is missing. The form is answer expression ± band.']
  ]); // prettier-ignore

  tells('remark', [
    ['looks thin', '1:4-10 line/not-understood: This remark block needs its author. Write by: NAME, DATE.'],
    ['by: me', '2:7-7 line/not-understood: by: a name and a date (2026-03-14) is missing. The form is by: NAME, DATE.']
  ]); // prettier-ignore

  const misfit = (kind: BlockKind, forms: string): void => {
    tells(kind, [['zzz', `2:1-4 line/not-understood: zzz is none of the lines that a ${kind} block knows. It knows: ${forms}.`]]);
  };
  misfit('cases', 'NAME: name = expression, …');
  misfit('course', "x' = expression from start · until condition · at most duration · when condition: name = expression, … · then title");
  misfit('sweep', 'y1, y2 over x from low to high [in N steps] [log x] [linear y] · mark name');
  misfit('ladder', 'over name [from low to high]');
  misfit('drivers', 'of name, …');
  misfit('fit', 'left == right [with input = column, …] · unknown p from value · uncertainty column · weigh by column · predict name at input = value, …');
  misfit('plan', 'steps name = value, … · expect name, … [from FIT] · stop above … · stop below …');
}); // prettier-ignore

describe('problems of a line’s place', () => {
  tells('inputs', [
    ['    a = 1\n  b = 2\n    c = 3', '3:3-8 line/indent: This line is indented less than the first line of its block. Give every line that begins something the same indentation.'],
    ['# heading\n  a = 1\n  at x: 2', '4:3-10 line/indent: This revision at x is not indented, so it revises nothing. Indent it by two spaces under the line it revises. [3-3:   ]'],
    ['a = 1\n# heading\n  + 2', '4:3-6 line/indent: This indented line goes on with nothing: above it stands a heading. Take the indentation away, or move the line up under what it goes on with.'],
    ['at x: 2', '2:1-8 line/revision-without-base: This revision at x stands under no line that it could revise. Write it indented, right under the line it revises.'],
    ['a = 1\n# heading\n  at x: 2', '4:3-10 line/revision-without-base: This revision at x stands under no line that it could revise. Write it indented, right under the line it revises.'],
    ['a = 1\nat x: 2 # why', '3:1-8 line/indent: This revision at x is not indented, so it revises nothing. Indent it by two spaces under the line it revises. [1-1:   ]'],
    [`a = 1 ${'+ 1 '.repeat(500)}\nb = 2`, '2:1-2007 file/too-long: This line has 2006 characters, more than the 2000 that are read. Go on with it on an indented line below, or split the formula with names for its parts.']
  ]); // prettier-ignore
});

describe('problems of blocks', () => {
  test.each([
    ['table', '1:4-9 line/not-understood: This table block needs a name. Write table NAME [from PATH].'],
    ['table 2nd', `1:10-13 line/not-understood: 2nd ${name}`],
    ['table T form x', '1:12-18 line/not-understood: form x after table cannot be read. The form is table NAME [from PATH].'],
    ['readings run1', '1:13-17 line/not-understood: This readings block needs a name and a stage. Write readings NAME at STAGE.'],
    ['fit F on run1', '1:10-17 line/not-understood: on run1 after fit cannot be read. The form is fit NAME to READINGS.'],
    ['choose', '1:4-10 line/not-understood: This choose block needs a name and the table it chooses from. Write choose NAME from TABLE.'],
    ['event sketch', '1:10-16 line/not-understood: sketch after event cannot be read. The form is event at STAGE.'],
    ['course', '1:4-10 line/not-understood: This course block needs a name. Write course NAME.'],
    ['plan run 2', '1:13-14 line/not-understood: 2 after plan cannot be read. The form is plan NAME.'],
    ['plan sum', '1:9-12 line/reserved-name: sum is a function and cannot be defined. Use another name, such as sum_1.'],
    ['caution', '1:4-11 line/not-understood: This caution block needs its signal word (danger, warning or caution). Write caution danger, warning or caution.'],
    ['caution beware', '1:12-18 line/not-understood: beware after caution cannot be read. The form is caution danger, warning or caution.'],
    ['table T from ../t.csv', '1:17-25 file/table-outside: The path ../t.csv leads out of the sheet\'s folder. Put the file beside the sheet, or in a folder below it, and write the path from there.'],
    ['input', '1:4-9 file/kind-near: input is not a kind of block, so this is shown as a plain listing. Nearest: inputs. [4-9: inputs]'],
    ['  claculations', null],
    ['Calc', '1:4-8 file/kind-near: Calc is not a kind of block, so this is shown as a plain listing. Nearest: calc. [4-8: calc]'],
    ['clac', '1:4-8 file/kind-near: clac is not a kind of block, so this is shown as a plain listing. Nearest: calc. [4-8: calc]'],
    ['plain', null], ['python', null], ['js', null], ['asm', null], ['', null]
  ])('%s', (info, expected) => {
    const rows = info.startsWith('table') || info.startsWith('readings') ? ['a'] : [];
    const text = sheetOf(info, ...(info.includes('from ..') ? [] : rows));
    const { problems } = readWorksheet(text);
    expect(problems.map(told)).toEqual(expected === null ? [] : [expected]);
    expectPlaces(text, problems);
  }); // prettier-ignore

  test('a kind that is only near is a note, and its block a listing', () => {
    const { problems, items } = readWorksheet(sheetOf('input', 'a = 1'));
    expect(problems[0]?.severity).toBe('note');
    expect(items[0]).toMatchObject({
      block: 'listing',
      word: 'input',
      prose: 'a = 1\n',
      entries: []
    });
  });

  test.each([
    ['```inputs\na = 1\n\nprose', '1:4-10 file/block-not-closed: The inputs block that begins here is not closed; 1 line of it is read. Write ``` on a line of its own where it ends.'],
    ['~~~~calc\na = 1\nb = 1', '1:5-9 file/block-not-closed: The calc block that begins here is not closed; 2 lines of it are read. Write ~~~~ on a line of its own where it ends.'],
    ['```\na = 1', '1:1-4 file/block-not-closed: The listing that begins here is not closed; 1 line of it is read. Write ``` on a line of its own where it ends.'],
    ['```inputs', '1:4-10 file/block-not-closed: The inputs block that begins here is not closed; 0 lines of it are read. Write ``` on a line of its own where it ends.']
  ])('%j', (text, expected) => {
    const { problems } = readWorksheet(text);
    expect(problems.map(told)).toEqual([expected]);
    expectPlaces(text, problems);
  }); // prettier-ignore

  test('rows under a table that comes from a file are told', () => {
    const text = sheetOf('table T from t.csv', '', '  a, b');
    expect(readWorksheet(text).problems.map(told)).toEqual([
      '3:3-7 line/not-understood: T takes its rows from t.csv; this line in the block is not read. Take the line away, or take "from t.csv" away.'
    ]);
  });

  test('a system of equations needs a name, single solves do not', () => {
    const told1 = readWorksheet(
      sheetOf('solve two unknowns', 'x == 4', 'unknown x from 1')
    ).problems.map(told);
    expect(told1).toEqual([
      '1:4-9 line/not-understood: This solve block needs a name for its system of equations. Write solve NAME.'
    ]);
    expect(readWorksheet(sheetOf('solve title', 'a = b where b == 3')).problems).toEqual([]);
  });
});

describe('every problem', () => {
  const pieces = [
    'a', 'v_tip', '=', ' = ', '==', '<=', '<', '±', ' ± 3', ' to kW', ' within 1 .. 2', ' where ', ' between ',
    ' and ', ': ', '[safety]', '[x', '(', ')', '"', ' # c', '\t', '  ', 'at up: ', 'rating ', 'mass 1 kg', ',', '..',
    'every root', 'unknown x from', 'take "A"', 'least ', '?', 'ω', '𝛼', "x' = v from", 'over v from 1 to', '[x] ', '|', ';'
  ]; // prettier-ignore
  const line = fc
    .array(fc.constantFrom(...pieces), { maxLength: 7 })
    .map((parts) => parts.join(''));
  const block = fc
    .tuple(fc.constantFrom(...everyKind), fc.array(line, { maxLength: 6 }), fc.boolean())
    .map(([kind, lines, complete]) => sheetOf(complete ? completeInfo[kind] : kind, ...lines));
  const end = fc.constantFrom('\n', '\r\n', '\r');

  test('stands at the text that it names, on any line of any entry', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 3 }), end, (blocks, lineEnd) => {
        const text = blocks.join('prose\n').replaceAll('\n', lineEnd);
        expectPlaces(text, readWorksheet(text).problems);
      }),
      { seed: 21, numRuns: 1500 }
    );
  });
});
