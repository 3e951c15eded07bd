import { expect, test } from 'vitest';
import { isUnitFault, parseUnit, type Unit } from '#lib/units/index.ts';
import { typesetNumerals, typesetQuantity, typesetWithUnit } from './numbers.ts';

const unit = (text: string): Unit => {
  const found = parseUnit(text, null);
  if (isUnitFault(found)) throw new Error(text);
  return found;
};

test.each([
  ['5.00', '5.00'],
  ['-0.5', '\u22120.5'],
  ['1.897e-4', '1.897·10⁻⁴'],
  ['2e+15', '2·10¹⁵'],
  ['9999', '9999'],
  ['10000', '10\u202f000'],
  ['1234567.25', '1\u202f234\u202f567.25'],
  ['0.12345', '0.12345'],
  ['12 values, 13.6 to 48500', '12 values, 13.6 to 48\u202f500'],
  ['S355, m3, v_10000, 2024-05-17', 'S355, m3, v_10000, 2024-05-17'],
  ['−1.2·10⁻⁴', '−1.2·10⁻⁴'],
  ['yes', 'yes'],
  ['', '']
])('%s is set as %s', (text, set) => {
  expect(typesetNumerals(text)).toBe(set);
});

test('number and unit stay on one line, the unit in its own form', () => {
  expect(typesetQuantity('1.176', unit('kg/m^3'))).toBe('1.176\u00a0kg/m³');
  expect(typesetQuantity('0.3', unit('1'))).toBe('0.3');
  expect(typesetWithUnit('5.00 of 7.5 N m', unit('N m'))).toBe('5.00 of 7.5\u00a0N·m');
  expect(typesetWithUnit('39, needs 80', null)).toBe('39, needs 80');
});
