import { describe, expect, it } from 'vitest';
import { exactValue, parseExact } from './exact.ts';
import { isUnitFault, lookupUnit } from './lookup.ts';
import { moneyCodes } from './money.ts';
import { nearestUnits } from './nearest.ts';
import { refusedUnits } from './refused.ts';
import { unitRows, unitSpellings } from './table.ts';

function factorOf(name: string): number | null {
  const match = lookupUnit(name, 'EUR');
  return match === null || isUnitFault(match) ? null : exactValue(match.exact);
}

describe('the unit table', () => {
  it('gives every row an exact factor, a definition and a source', () => {
    for (const row of unitRows) {
      expect(exactValue(parseExact(row.exact)), row.symbols.join()).toBeGreaterThan(0);
      expect(row.definition).not.toBe('');
      expect(row.source).not.toBe('');
    }
  });

  it('shares no name with the refused ones or with a money', () => {
    for (const name of [...refusedUnits.keys(), ...moneyCodes]) {
      expect(unitSpellings.has(name), name).toBe(false);
    }
  });

  it('has no split word or reserved word of the language as a name, but for the inch', () => {
    const words =
      'where between and with from to over until when within at in weight by outside of ' +
      'pi true false or not inf e tau g_n';
    const taken = words.split(' ').filter((word) => unitSpellings.has(word));
    expect(taken).toEqual(['in']);
  });

  it('offers only replacements that are units', () => {
    for (const [name, { replacement }] of refusedUnits) {
      for (const part of replacement?.split(/[ /^]/) ?? []) {
        expect(/^\d$/.test(part) || unitSpellings.has(part), name).toBe(true);
      }
    }
  });
});

describe('unit names', () => {
  it.each([
    ['inch', 'in'],
    ['minute', 'min'],
    ['hour', 'h'],
    ['hr', 'h'],
    ['d', 'day'],
    ['sec', 's'],
    ['mil', 'thou'],
    ['µm', 'um'],
    ['μm', 'um'],
    ['micron', 'um'],
    ['Ω', 'ohm'],
    ['kΩ', 'kohm'],
    ['°C', 'degC'],
    ['°F', 'degF'],
    ['°', 'deg'],
    ['Å', 'angstrom'],
    ['lbm', 'lb'],
    ['tonne', 't'],
    ['l', 'L'],
    ['litre', 'liter'],
    ['Btu', 'BTU'],
    ['PS', 'hp_metric'],
    ['turn', 'rev'],
    ['cycle', 'rev'],
    ['knot', 'kn'],
    ['percent', '%'],
    ['kpsi', 'ksi']
  ])('%s is another name of %s', (alias, name) => {
    expect(factorOf(alias)).not.toBeNull();
    expect(factorOf(alias)).toBe(factorOf(name));
  });

  it.each([
    ['kW', 1e3],
    ['MPa', 1e6],
    ['GPa', 1e9],
    ['uF', 1e-6],
    ['pF', 1e-12],
    ['mm', 1e-3],
    ['cP', 1e-3],
    ['kWh', 3.6e6],
    ['krpm', 104.71975511965978],
    ['daN', 10],
    ['hPa', 100]
  ])('%s carries its prefix', (name, factor) => {
    expect(factorOf(name)).toBe(factor);
  });

  it.each(['kin', 'mft', 'klb', 'kh', 'Ym', 'hT', 'dA', 'kEUR', 'kmin', 'kday', 'cPa', 'kdegC'])(
    '%s is not a unit: the prefix makes no sense there',
    (name) => {
      expect(lookupUnit(name, 'EUR')).toBeNull();
    }
  );

  it.each(
    ['ton psig barg kPag horsepower dB dBA AWG psia cal kt ftlb ozin month scfm'.split(' ')].flat()
  )('%s is refused with offers', (name) => {
    const fault = lookupUnit(name, null);
    expect(fault).toMatchObject({ code: 'units/refused', from: 0, to: name.length });
    expect(isUnitFault(fault) && fault.hint).toMatch(/^(Write|For)/);
  });

  it('case counts', () => {
    expect(lookupUnit('kw', null)).toBeNull();
    expect(factorOf('mW')).toBe(1e-3);
    expect(factorOf('MW')).toBe(1e6);
  });

  it('only the money of the sheet is a unit', () => {
    expect(lookupUnit('EUR', 'EUR')).toMatchObject({ symbol: 'EUR' });
    expect(lookupUnit('USD', 'EUR')).toMatchObject({
      code: 'units/two-moneys',
      message: 'The money of this sheet is EUR, not USD.',
      hint: 'Add an input for the rate (EUR for 1 USD), such as rate_USD, and multiply by it.'
    });
    expect(lookupUnit('USD', null)).toMatchObject({
      code: 'units/two-moneys',
      hint: 'Add "money: USD" to the front matter.'
    });
    expect(lookupUnit('€', 'EUR')).toMatchObject({ code: 'units/refused', replacement: 'EUR' });
  });
});

describe('the nearest names', () => {
  it.each([
    ['kw', 'kW'],
    ['RPM', 'rpm'],
    ['HZ', 'Hz'],
    ['Mpa', 'mPa, MPa'],
    ['Kg', 'kg'],
    ['newtno', 'newton'],
    ['metres', 'metre'],
    ['EURO', 'EUR'],
    ['inchs', 'inch, inches'],
    ['zzzz', '']
  ])('to %s are %s', (name, nearest) => {
    expect(nearestUnits(name, 'EUR').join(', ')).toBe(nearest);
  });
});
