import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Unit } from './types.ts';
import { factorBetween, fromSI, toSI } from './convert.ts';
import { dropAngle } from './dimension.ts';
import { isUnitFault } from './lookup.ts';
import { parseUnit } from './parse.ts';
import { coherentUnitText, quantityName } from './quantity-name.ts';
import { unitSpellings } from './table.ts';

function unitOf(text: string): Unit {
  const unit = parseUnit(text, 'EUR');
  if (isUnitFault(unit)) throw new Error(`${text}: ${unit.message}`);
  return unit;
}

const names = fc.constantFrom(...unitSpellings.keys());
const factors = fc
  .array(fc.tuple(names, fc.constantFrom('', '^2', '^-1', '^0.5', '^(1/3)')), {
    minLength: 1,
    maxLength: 4
  })
  .map((parts) => parts.map(([name, power]) => name + power));
const texts = fc
  .tuple(factors, fc.option(factors))
  .map(([over, under]) => over.join('*') + (under ? `/(${under.join(' ')})` : ''));

describe('a unit expression', () => {
  it.each([
    ['N m', 'N m'],
    ['N*m', 'N m'],
    [' N · m ', 'N m'],
    ['kg / m^3', 'kg/m^3'],
    ['BTU/(h*ft^2*degF)', 'BTU/(h ft^2 degF)'],
    ['J/kg/K', 'J/(kg K)'],
    ['lbf*ft/(1000*rpm)', 'lbf ft/(1000 rpm)'],
    ['1/rev', '1/rev'],
    ['(m/s)^2', 'm^2/s^2'],
    ['m/(s/kg)', 'm kg/s'],
    ['kg/m*s', 'kg s/m'],
    ['s⁻¹', 's^-1'],
    ['°C', 'degC'],
    ['mΩ', 'mohm'],
    ['%', '%'],
    ['%/K', '%/K'],
    ['1', '1'],
    ['min^-1', 'min^-1'],
    ['EUR/h', 'EUR/h']
  ])('%s has the uniform text %s', (text, uniform) => {
    expect(unitOf(text).text).toBe(uniform);
  });

  it.each([
    ['kw', 'units/unknown', 'kw', 'kW'],
    ['N kw', 'units/unknown', 'kw', 'kW'],
    ['N-m', 'units/unknown', '-m', null],
    ['N*', 'units/unknown', '', null],
    ['', 'units/unknown', '', null],
    ['(N m', 'units/unknown', '(N m', null],
    ['N m)', 'units/unknown', ')', null],
    ['0', 'units/unknown', '0', null],
    ['1e400 m', 'units/unknown', '1e400 m', null],
    ['m to km', 'units/unknown', 'to', null],
    ['J/kg K', 'units/refused', 'J/kg K', 'J/(kg K)'],
    ['N/barg', 'units/refused', 'barg', 'bar'],
    ['USD/h', 'units/two-moneys', 'USD', null],
    ['m^x', 'units/exponent', 'm^x', null],
    ['(m^20)^20', 'units/exponent', '(m^20)^20', null]
  ])('"%s" is a fault, %s at "%s"', (text, code, at, replacement) => {
    const fault = parseUnit(text, 'EUR');
    if (!isUnitFault(fault)) throw new Error(`${text} was read as ${fault.text}`);
    expect([fault.code, text.slice(fault.from, fault.to)]).toEqual([code, at]);
    if (code !== 'units/unknown' || replacement) expect(fault.replacement).toBe(replacement);
  });

  it('says what is not known and what is nearest', () => {
    expect(parseUnit('kw', null)).toMatchObject({
      message: 'Unit "kw" is not known.',
      hint: 'Nearest: kW.'
    });
  });

  it('is the same object for the same text, and does not mix up the moneys', () => {
    expect(parseUnit('N m', null)).toBe(parseUnit('N*m', 'EUR'));
    expect(isUnitFault(parseUnit('EUR:kg', null))).toBe(true);
    expect(isUnitFault(parseUnit('kg', 'EUR'))).toBe(false);
    expect(isUnitFault(parseUnit('EUR', null))).toBe(true);
  });

  it('its uniform text is read as the same unit', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const unit = parseUnit(text, null);
        if (isUnitFault(unit)) return;
        const again = unitOf(unit.text);
        expect(again.text).toBe(unit.text);
        expect([again.factor, again.dimension]).toEqual([unit.factor, unit.dimension]);
      }),
      { seed: 20250304 }
    );
  });

  it('marks turns, hertz and temperatures', () => {
    const marks = (text: string): unknown[] => {
      const { hasRev, hasHz, temperature } = unitOf(text);
      return [hasRev, hasHz, temperature];
    };
    expect(marks('rev/min')).toEqual([true, false, null]);
    expect(marks('krpm')).toEqual([true, false, null]);
    expect(marks('kHz')).toEqual([false, true, null]);
    expect(marks('rad/s')).toEqual([false, false, null]);
    expect(marks('degC')).toEqual([false, false, 'reading']);
    expect(marks('K')).toEqual([false, false, 'kelvin']);
    expect(marks('W/degC')).toEqual([false, false, null]);
    expect(marks('1/K')).toEqual([false, false, null]);
    expect(unitOf('degC').offset).toBe(273.15);
    expect(unitOf('W/degC').offset).toBe(0);
  });

  it('lists its units with their powers', () => {
    const { atoms } = unitOf('kg/(m s^2)');
    expect(atoms.map(({ symbol, exponent }) => [symbol, exponent.num])).toEqual([
      ['kg', 1],
      ['m', -1],
      ['s', -2]
    ]);
  });
});

describe('conversion', () => {
  it('there and back is 1', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const unit = parseUnit(text, null);
        if (isUnitFault(unit)) return;
        const coherent = unitOf(coherentUnitText(unit.dimension));
        expect(coherent.factor).toBe(1);
        expect(coherent.dimension).toBe(unit.dimension);
        const there = factorBetween(unit, coherent);
        const back = factorBetween(coherent, unit);
        // A root of a unit is kept as a double; two roundings on each way.
        expect(Math.abs(there * back - 1)).toBeLessThan(2e-15);
      }),
      { seed: 20250305 }
    );
  });

  it.each([
    ['in', 'ft', 36, 3],
    ['mm', 'cm', 5.5, 0.55],
    ['rpm', 'rad/s', 1800, 188.49555921538757],
    ['rev', 'deg', 1, 360]
  ])('exact relations come out clean: %s to %s', (from, to, value, expected) => {
    expect(value * factorBetween(unitOf(from), unitOf(to))).toBeCloseTo(expected, 13);
  });

  it('a reading is shifted, an interval is not', () => {
    expect(toSI(20, unitOf('degC'))).toBe(293.15);
    expect(toSI(68, unitOf('degF'))).toBeCloseTo(293.15, 12);
    expect(fromSI(273.15, unitOf('degC'))).toBe(0);
    expect(fromSI(toSI(32, unitOf('degF')), unitOf('degC'))).toBe(0);
    expect(toSI(5, unitOf('degC/min'))).toBeCloseTo(5 / 60, 15);
  });

  it('refuses units of another kind, and lets plane angle pass', () => {
    expect(() => factorBetween(unitOf('m'), unitOf('s'))).toThrow('factorBetween(m, s)');
    expect(factorBetween(unitOf('rad/s'), unitOf('1/s'))).toBe(1);
  });

  it('works for a copy of a unit, as a worker sends it', () => {
    const copy = { ...unitOf('hp'), dimension: unitOf('hp').dimension };
    expect(factorBetween(copy, unitOf('W'))).toBe(unitOf('hp').factor);
  });
});

describe('the name of a quantity', () => {
  it.each([
    ['W', 'power', 'W'],
    ['lbf ft', 'torque or energy', 'N m'],
    ['mph', 'speed', 'm/s'],
    ['rpm', 'rotating speed', 'rad/s'],
    ['MPa', 'pressure or stress', 'Pa'],
    ['kg/m^3', 'density', 'kg/m^3'],
    ['EUR', 'money', 'money'],
    ['%', 'plain number', '1'],
    ['kg^2/m', null, 'kg^2/m']
  ])('of %s is %s, %s', (text, name, unit) => {
    const { dimension } = unitOf(text);
    expect([quantityName(dimension), coherentUnitText(dimension)]).toEqual([name, unit]);
  });

  it('falls back on the name at 1 rad = 1', () => {
    const { dimension } = unitOf('N m rad/s');
    expect(quantityName(dimension)).toBe('power');
    expect(dropAngle(dimension).key).toBe('kg m^2 s^-3');
  });
});
