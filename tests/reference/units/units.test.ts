// Published conversions, readings and factors through the unit table. See SOURCE.md.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Unit } from '#lib/units/index.ts';
import {
  factorBetween,
  fromSI,
  isUnitFault,
  lookupUnit,
  parseUnit,
  sameDimension,
  toSI
} from '#lib/units/index.ts';

interface Conversion {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly factor: number;
  readonly exact: boolean;
}

interface Reading {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly value: number;
  readonly result: number;
}

interface Reference {
  readonly unit_names: Readonly<Record<string, { si_factor_text: string; pi_power: number }>>;
  readonly cases: readonly Conversion[];
  readonly temperature_scales: readonly Reading[];
}

const here = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const reference = JSON.parse(here('./units.json')) as Reference;
const checked = rowsOf(here('./units-checked.csv'));
const gnu = rowsOf(here('./gnu-units.csv'));

/** Labels of units-checked.csv that are no unit names, and what they are called here. */
const labels: Readonly<Record<string, string>> = {
  'kn (knot)': 'kn',
  'short ton': 'ton_short',
  'long ton': 'ton_long',
  'tonf(short)': 'tonf_short',
  'at (technical)': 'at_technical',
  'cal (th)': 'cal_th',
  'Btu (IT)': 'BTU_IT',
  'hp (550 ft*lbf/s)': 'hp',
  'PS (metric hp)': 'PS',
  'hp electric': 'hp_electric',
  'hp boiler': 'hp_boiler',
  'ton refrig.': 'TR',
  'gal (US liq)': 'gal',
  'gal (imp)': 'gal_imp',
  'acre (intl ft)': 'acre',
  'P (poise)': 'P',
  'lb*ft^2 (WR2)': 'lb*ft^2',
  'delta degF': 'degF',
  'G (gauss)': 'G',
  'year (365.25 d)': 'year',
  'year (SP811 365 d)': 'year_365'
};

function unitOf(text: string): Unit {
  const unit = parseUnit(text, null);
  if (isUnitFault(unit)) throw new Error(`${text}: ${unit.message}`);
  return unit;
}

function relative(value: number, expected: number): number {
  return Math.abs(value / expected - 1);
}

describe('units.json', () => {
  it.each(Object.keys(reference.unit_names))('%s is a unit name', (name) => {
    const match = lookupUnit(name, null);
    expect(match !== null && !isUnitFault(match)).toBe(true);
  });

  it.each(Object.entries(reference.unit_names))(
    '%s has the factor of its definition, as a fraction',
    (name, { si_factor_text, pi_power }) => {
      const match = lookupUnit(name, null);
      if (match === null || isUnitFault(match)) throw new Error(name);
      const { num, den, pi, rest } = match.exact;
      expect(`${num}/${den}`).toBe(si_factor_text);
      expect([pi, rest]).toEqual([pi_power, 1]);
    }
  );

  it.each(reference.cases.map((row) => [row.id, row.from, row.to, row] as const))(
    '%s: 1 %s in %s',
    (_id, from, to, row) => {
      const [above, below] = [unitOf(from), unitOf(to)];
      expect(sameDimension(above.dimension, below.dimension)).toBe(true);
      // Exact relations are divided as fractions and rounded once; the others are held to 1e-9.
      const tolerance = row.exact ? 1e-15 : 1e-9;
      expect(relative(factorBetween(above, below), row.factor)).toBeLessThanOrEqual(tolerance);
      // By way of SI there are three roundings, each of half an ulp.
      const byWayOfSI = fromSI(toSI(1, above), below);
      if (above.temperature === null) {
        expect(relative(byWayOfSI, row.factor)).toBeLessThanOrEqual(Math.max(tolerance, 5e-16));
      }
    }
  );

  it.each(reference.temperature_scales.map((row) => [row.value, row.from, row.to, row] as const))(
    '%s %s as a reading in %s',
    (value, from, to, row) => {
      expect(Math.abs(fromSI(toSI(value, unitOf(from)), unitOf(to)) - row.result)).toBeLessThan(
        1e-12
      );
    }
  );
});

describe('units-checked.csv', () => {
  it('has the rows that SOURCE.md counts', () => {
    expect(checked.length).toBe(97);
  });

  it.each(checked)('%s has its factor and dimension', (name = '', factor, dimension = '') => {
    const unit = unitOf(labels[name] ?? name);
    // The file has 15 significant digits.
    expect(relative(unit.factor, Number(factor))).toBeLessThan(1e-14);
    expect(unit.dimension).toBe(unitOf(dimension).dimension);
  });

  it.each(checked.filter((row) => row[5] !== ''))(
    '%s: its other name is accepted, or refused with offers',
    (name = '', factor, _dimension, _sp811, _expression, other = '') => {
      const match = lookupUnit(other, null);
      if (other === 'ton') {
        expect(match).toMatchObject({ code: 'units/refused' });
        return;
      }
      expect(relative(unitOf(other).factor, Number(factor)), name).toBeLessThan(1e-14);
    }
  );
});

describe('gnu-units.csv', () => {
  it.each(gnu)('%s is what GNU units makes of %s', (name = '', _expression, factor, base = '') => {
    const unit = unitOf(name);
    // GNU units rounds at each step; 1e-9 for the two that rest on the magnetic constant.
    const tolerance = ['oersted', 'gilbert'].includes(name) ? 1e-9 : 2e-15;
    expect(relative(unit.factor, Number(factor))).toBeLessThan(tolerance);
    const [over = '', under] = base.split('/').map((part) => part.trim());
    const text = `${over === '' ? '1' : over}${under ? `/(${under})` : ''}`;
    expect(unit.dimension).toBe(unitOf(text).dimension);
  });
});

function rowsOf(text: string): string[][] {
  const [, ...lines] = text.trim().split('\n');
  return lines.map((line) => line.split(',').map((cell) => cell.replace(/^"|"$/g, '')));
}
