import { describe, expect, it, test } from 'vitest';
import { functionNames, joinCuts, cutOf, reservationOf } from '#lib/text/index.ts';
import { childrenOf, isFunctionName, languageFunctions, namesIn, nodeSpan, ownCallsIn, parseExpression, parseUnitCut, visit } from './index.ts'; // prettier-ignore
import { read, sketch, treeOf } from './sketch.fixture.ts';

describe('what belongs together', () => {
  // Precedence as the syntax page of mathjs 15 documents it; departures are the language's own rules.
  it.each([
    ['2+3*4', '(2+(3*4))'],
    ['20-6-4', '((20-6)-4)'],
    ['100/10*10', '((100/10)*10)'],
    ['18/3^2', '(18/(3^2))'],
    ['-2^2', '(-(2^2))'],
    ['(-2)^2', '([(-2)]^2)'],
    ['2^3^2', '(2^(3^2))'],
    ['2^-1', '(2^(-1))'],
    ['2^-3^2', '(2^(-(3^2)))'],
    ['3--2', '(3-(-2))'],
    ['4*-3^2', '(4*(-(3^2)))'],
    ['10/-4', '(10/(-4))'],
    ['a < b == c', '(a<b==c)'],
    ['a <= b and c > d or e', '(((a<=b) and (c>d)) or e)'],
    ['not a and b', '((not a) and b)'],
    ['not (a > b)', '(not [(a>b)])'],
    ['a ? b : c ? d : e', '(a ? b : (c ? d : e))'],
    ['a ? b ? c : d : e', '(a ? (b ? c : d) : e)'],
    ['a > 1 ? -b : b + 1', '((a>1) ? (-b) : (b+1))'],
    ['min(a ? b : c, d)', 'min((a ? b : c),d)'],
    ['atan2(y, x) * 2', '(atan2(y,x)*2)'],
    ['sin (x)', 'sin(x)'],
    ['max()', null],
    ['2 pi', '(2~pi)'],
    ['2 pi^2', '(2~(pi^2))'],
    ['(2 pi)^2', '([(2~pi)]^2)'],
    ['3 pi/4', '((3~pi)/4)'],
    ['-2 pi', '((-2)~pi)'],
    ['2(3 + 4)', '(2~[(3+4)])'],
    ['a*2 pi', '(a*(2~pi))'],
    ['2π', '(2~pi)'],
    ['x²', '(x^2)'],
    ['-x²', '(-(x^2))'],
    ['x²^3', '((x^2)^3)'],
    ['2^x³', '(2^(x^3))'],
    ['(a + b)²/c³', '(([(a+b)]^2)/(c^3))'],
    ['ω² × R ÷ 2 − 3·k', '((((omega^2)*R)/2)-(3*k))'],
    ['ω_tip ≤ omega ≥ Ω', '(omega_tip<=omega>=Omega)'],
    ['a ≠ b', '(a!=b)'],
    ['motor.P_rated / run1.end.x', '(motor.P_rated/run1.end.x)'],
    ['true or false', '(true or false)'],
    ['e + tau + i', '((e+tau)+i)'],
    ['__proto__ + constructor', '(__proto__+constructor)'],
    ['integrate(x^2, x, 0, inf)', 'integrate((x^2),x,0,inf)'],
    ['.5 + 5. + 1E3', '((.5+5.)+1E3)'],
    ['a -\n  b', '(a-b)']
  ])('%j is %s', (text, expected) => {
    expect(read(text).tree && sketch(treeOf(text))).toBe(expected);
  });
});

describe('a number with a unit is one quantity, whatever names exist', () => {
  it.each([
    ['9.81 m/s^2', '<9.81 m/s^2>'],
    ['9.81 m/s^2 * m', '(<9.81 m/s^2>*m)'],
    ['9.81 m/s^2*m', '(<9.81 m/s^2>*m)'],
    ['20 kg/m^3', '<20 kg/m^3>'],
    ['v / 5 m/s', '(v/<5 m/s>)'],
    ['a / 20 kg/m^3', '(a/<20 kg/m^3>)'],
    ['20 kg / 4 kg', '(<20 kg>/<4 kg>)'],
    ['5 kN/A', '<5 kN/A>'],
    ['5 kN / A', '(<5 kN>/A)'],
    ['5 W h', '<5 W h>'],
    ['10 km/h', '<10 km/h>'],
    ['1/2 kW', '<1/2 kW>'],
    ['3/4 in', '<3/4 in>'],
    ['1 / 2 kW', '(1/<2 kW>)'],
    ['6.5/4 in', '(6.5/<4 in>)'],
    ['x^3/4 in', '((x^3)/<4 in>)'],
    ['5kW', '<5 kW>'],
    ['3 N·m + 2 N m', '(<3 N m>+<2 N m>)'],
    ['287 J/(kg K)*T', '(<287 J/(kg K)>*T)'],
    ['2048/rev * n', '(<2048 1/rev>*n)'],
    ['2048/n', '(2048/n)'],
    ['1/w', '(1/w)'],
    ['50 s^-1', '<50 s^-1>'],
    ['60 min^-1', '<60 min^-1>'],
    ['3 m/min', '<3 m/min>'],
    ['min(3 min, 4 s)', 'min(<3 min>,<4 s>)'],
    ['5 m * min(a, b)', '(<5 m>*min(a,b))'],
    ['20 °C', '<20 degC>'],
    ['-20 degC', '(-<20 degC>)'],
    ['30°', '<30 deg>'],
    ['5 % + 3%', '(<5 %>+<3 %>)'],
    ['P*5% + 3 W', '((P*<5 %>)+<3 W>)'],
    ['24 EUR', '<24 EUR>'],
    ['1e6 rev * 8/n', '((<1e6 rev>*8)/n)'],
    ['10 kg m²', '<10 kg m^2>'],
    ['(x to rad/s) * 2', '([x to rad/s]*2)'],
    ['(q to W/(m^2 K))', '[q to W/(m^2 K)]'],
    ['(sqrt(k/m) to rad/s)', '[sqrt((k/m)) to rad/s]'],
    ['x < 5 and y > 3', '((x<5) and (y>3))'],
    ['x > 5 ? 1 : 2', '((x>5) ? 1 : 2)']
  ])('%j is %s', (text, expected) => {
    expect(sketch(treeOf(text))).toBe(expected);
  });

  it('gives the magnitude of a tight fraction', () => {
    expect(treeOf('3/4 in')).toMatchObject({ magnitude: 0.75, magnitudeText: '3/4' });
  });
});

describe('places', () => {
  const text = 'a2 + min(b , 9.81 m/s^2 * (c to mm)) ^ -x²';

  it('of every node are the text it was read from', () => {
    const seen: string[] = [];
    visit(treeOf(text), (node) => seen.push(text.slice(node.from, node.to)));
    expect(seen).toEqual([
      text,
      'a2',
      'min(b , 9.81 m/s^2 * (c to mm)) ^ -x²',
      'min(b , 9.81 m/s^2 * (c to mm))',
      'b',
      '9.81 m/s^2 * (c to mm)',
      '9.81 m/s^2',
      '(c to mm)',
      'c',
      '-x²',
      'x²',
      'x',
      '²'
    ]);
  });

  it('of parts lie within their node, in order and apart', () => {
    visit(treeOf(text), (node) => {
      let end = node.from;
      for (const child of childrenOf(node)) {
        expect(child.from).toBeGreaterThanOrEqual(end);
        end = child.to;
      }
      expect(end).toBeLessThanOrEqual(node.to);
    });
  });

  it('hold on every line of a long entry', () => {
    const cut = joinCuts([cutOf('a +', 0, 12), cutOf('b * c d', 1, 5), cutOf('+ e', 2, 5)]);
    const [found] = parseExpression(cut, { money: null }).problems;
    expect(found?.at).toEqual({ line: 1, from: 9, to: 12 });
    expect(found?.fix?.at).toEqual({ line: 1, from: 10, to: 11 });
    const good = joinCuts([cutOf('a +', 0, 12), cutOf('b * c', 1, 5)]);
    const { tree } = parseExpression(good, { money: null });
    expect(tree?.kind === 'binary' && nodeSpan(good, tree.right)).toEqual({
      line: 1,
      from: 5,
      to: 10
    });
  });

  it('of a fix that would cross a line end are not offered', () => {
    const cut = joinCuts([cutOf('a', 0, 1), cutOf('b', 1, 5)]);
    const [found] = parseExpression(cut, { money: null }).problems;
    expect(found?.code).toBe('syntax/missing-operator');
    expect(found?.fix).toBeNull();
  });
});

describe('names', () => {
  it('read by an expression leave out constants and the variable of an integral', () => {
    const tree = treeOf('a + integrate(b*x + pi, x, x, c) + a + motor.P', []);
    expect(namesIn(tree)).toEqual(['a', 'b', 'x', 'c', 'motor.P']);
    expect(namesIn(treeOf('integrate(b*x, x, 0, inf)'))).toEqual(['b']);
  });

  it('of own functions are listed apart from those of the language', () => {
    expect(ownCallsIn(treeOf('f(x) + sqrt(g(f(y)))', ['f', 'g']))).toEqual(['f', 'g']);
  });

  it('of functions are the same here and where lines are read, with log kept free', () => {
    expect([...languageFunctions.map(({ name }) => name), 'log'].sort()).toEqual(
      [...functionNames].sort()
    );
    for (const { name } of languageFunctions) expect(reservationOf(name)).toBe('function');
    expect(isFunctionName('log')).toBe(false);
    expect(isFunctionName('constructor')).toBe(false);
  });
});

test('the unit behind a conversion is read with its place', () => {
  expect(parseUnitCut(cutOf(' kg/m^3 '), null).unit?.text).toBe('kg/m^3');
  const { unit, problems } = parseUnitCut(cutOf(' kw', 0, 5), null);
  expect(unit).toBeNull();
  expect(problems[0]).toMatchObject({ code: 'units/unknown', at: { line: 0, from: 6, to: 8 } });
  expect(problems[0]?.fix?.replacement).toBe('kW');
  expect(parseUnitCut(cutOf('  '), null).problems[0]?.code).toBe('syntax/unexpected');
});
