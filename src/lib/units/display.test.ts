import { describe, expect, it } from 'vitest';
import type { DisplayHints } from './display.ts';
import type { Unit } from './types.ts';
import { parseDimension } from './dimension.ts';
import { displayUnit, withPrefix } from './display.ts';
import { takesSpace, unitLabel, unitTex } from './label.ts';
import { isUnitFault } from './lookup.ts';
import { parseUnit } from './parse.ts';

function unitOf(text: string): Unit {
  const unit = parseUnit(text, 'EUR');
  if (isUnitFault(unit)) throw new Error(`${text}: ${unit.message}`);
  return unit;
}

type Hints = Omit<DisplayHints, 'family'>;

describe('the unit a value is shown in', () => {
  it.each<[string, Hints, string, string]>([
    ['kg m^2 s^-2', {}, 'J', 'lbf ft'],
    ['kg m^2 s^-2', { isTorque: true }, 'N m', 'lbf ft'],
    ['kg m^2 s^-2 rad^-1', {}, 'N m', 'lbf ft'],
    ['kg m^2 s^-3', {}, 'W', 'hp'],
    ['kg m^2 s^-3 rad', {}, 'W', 'hp'],
    ['kg m s^-2', {}, 'N', 'lbf'],
    ['kg m^-1 s^-2', {}, 'Pa', 'psi'],
    ['m', {}, 'm', 'in'],
    ['m s^-1', {}, 'm/s', 'ft/s'],
    ['m^3 s^-1', {}, 'm^3/s', 'gpm'],
    ['s^-1', {}, 'Hz', 'Hz'],
    ['s^-1', { isRoot: true }, '1/s', '1/s'],
    ['s^-1 rad', {}, 'rad/s', 'rad/s'],
    ['s^-1 rad', { rateInRev: true }, 'rpm', 'rpm'],
    ['K', {}, 'K', 'degR'],
    ['K', { isReading: true }, 'degC', 'degF'],
    ['kg m^2 s^-3 A^-2', {}, 'ohm', 'ohm'],
    ['s rad^-1', {}, 's/rad', 's/rad'],
    ['m rad^-1', {}, 'm', 'in'],
    ['rad', {}, 'rad', 'rad'],
    ['kg^2 m', {}, 'kg^2 m', 'kg^2 m'],
    ['kg^-1 money', { money: 'EUR' }, 'EUR/kg', 'EUR/kg'],
    ['1', {}, '1', '1']
  ])('%s with %o is %s, in a US sheet %s', (key, hints, si, us) => {
    const dimension = parseDimension(key);
    expect(displayUnit(dimension, { family: 'SI', ...hints }).text).toBe(si);
    expect(displayUnit(dimension, { family: 'US', ...hints }).text).toBe(us);
  });

  it('a power of a length follows the first length', () => {
    const hints: DisplayHints = { family: 'SI', lengthUnit: unitOf('mm') };
    expect(displayUnit(parseDimension('m^2'), hints).text).toBe('mm^2');
    expect(displayUnit(parseDimension('m^4'), hints).text).toBe('mm^4');
    expect(displayUnit(parseDimension('kg m^-3'), hints).text).toBe('kg/m^3');
  });

  it('what is asked for comes before the author’s unit, and that before the family', () => {
    const [asked, author] = [unitOf('hp'), unitOf('kW')];
    const power = parseDimension('kg m^2 s^-3');
    expect(displayUnit(power, { family: 'SI', asked, author })).toBe(asked);
    expect(displayUnit(power, { family: 'US', author })).toBe(author);
  });
});

describe('the prefix of a row', () => {
  it.each([
    ['W', 3195, 'kW'],
    ['W', 999.9, 'W'],
    ['W', 1000, 'kW'],
    ['W', 0.02, 'mW'],
    ['Pa', 2.07e11, 'GPa'],
    ['m', 0.005, 'mm'],
    ['kg', 0.05, 'g'],
    ['kg', 2000, 'kg'],
    ['s', 5000, 's'],
    ['s', 1e-9, 'us'],
    ['N m', 5000, 'N m'],
    ['psi', 1e9, 'psi'],
    ['lbf', 1e9, 'lbf'],
    ['rad', 1e-4, 'rad'],
    ['degC', 300, 'degC'],
    ['1', 1e6, '1'],
    ['W', 0, 'W'],
    ['W', Infinity, 'W'],
    ['W', -3195, 'kW']
  ])('%s with a largest value of %s is %s', (text, largest, expected) => {
    expect(withPrefix(unitOf(text), largest).text).toBe(expected);
  });
});

describe('a unit in print', () => {
  it.each([
    ['N m', 'N·m', '\\mathrm{N}{\\cdot}\\mathrm{m}'],
    ['kg/m^3', 'kg/m³', '\\mathrm{kg}/\\mathrm{m}^{3}'],
    ['kg/(m s K^0.5)', 'kg/(m·s·K^0.5)', null],
    ['s^-1', 's⁻¹', '\\mathrm{s}^{-1}'],
    ['m^(1/3)', 'm^(1/3)', '\\mathrm{m}^{1/3}'],
    ['um', 'µm', '\\mu \\mathrm{m}'],
    ['kohm', 'kΩ', '\\mathrm{k}\\Omega'],
    ['degC', '°C', '{{}^{\\circ}\\mathrm{C}}'],
    ['deg', '°', '{{}^{\\circ}}'],
    ['%', '%', '\\%'],
    ['cal_th', 'cal_th', '\\mathrm{cal}_{\\mathrm{th}}'],
    ['inH2O', 'inH₂O', '\\mathrm{inH_{2}O}'],
    ['EUR/kg', 'EUR/kg', '\\mathrm{EUR}/\\mathrm{kg}'],
    ['1/(1000 rpm)', '1/(1000·rpm)', '1/(1000{\\cdot}\\mathrm{rpm})'],
    ['1', '', '']
  ])('%s is %s', (text, label, tex) => {
    expect(unitLabel(unitOf(text))).toBe(label);
    if (tex !== null) expect(unitTex(unitOf(text))).toBe(tex);
  });

  it('stands behind a space, but for degrees of angle and for no unit', () => {
    expect(['m', '%', 'degC', 'deg', '1'].map((text) => takesSpace(unitOf(text)))).toEqual([
      true,
      true,
      true,
      false,
      false
    ]);
  });
});
