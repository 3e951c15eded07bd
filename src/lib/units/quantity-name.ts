// What the trades call a dimension, and the coherent SI unit it is counted in, for messages such as
// "P_drag (power, W)". The names are common usage; the units are those of the SI Brochure, 9th ed.

import type { Dimension, Rational } from './types.ts';
import type { Base } from './types.ts';
import { dropAngle, exponentOf, parseDimension } from './dimension.ts';
import { negateRational, rationalText } from './rational.ts';

/** Dimension, its name in the trades, its coherent unit (null: written out in base units). */
const quantityRows: readonly (readonly [string, string | null, string | null])[] = [
  ['1', 'plain number', '1'],
  ['m', 'length', 'm'],
  ['m^2', 'area', 'm^2'],
  ['m^3', 'volume or section modulus', 'm^3'],
  ['m^4', 'second moment of area', 'm^4'],
  ['m^-1', 'curvature or per length', '1/m'],
  ['kg', 'mass', 'kg'],
  ['kg m', 'unbalance', 'kg m'],
  ['kg m^2', 'moment of inertia', 'kg m^2'],
  ['kg m^-1', 'mass per length', 'kg/m'],
  ['kg m^-2', 'mass per area', 'kg/m^2'],
  ['kg m^-3', 'density', 'kg/m^3'],
  ['kg s^-1', 'mass flow or damping', 'kg/s'],
  ['s', 'time', 's'],
  ['s^-1', 'rate', '1/s'],
  ['s^-2', 'rate per time', '1/s^2'],
  ['m s^-1', 'speed', 'm/s'],
  ['m s^-2', 'acceleration', 'm/s^2'],
  ['m^2 s^-1', 'kinematic viscosity or diffusivity', 'm^2/s'],
  ['m^2 s^-2', 'energy per mass', 'J/kg'],
  ['m^3 s^-1', 'volume flow', 'm^3/s'],
  ['kg m s^-1', 'momentum or impulse', 'N s'],
  ['kg m s^-2', 'force', 'N'],
  ['kg s^-2', 'stiffness or force per length', 'N/m'],
  ['kg s^-3', 'power per area', 'W/m^2'],
  ['kg m^-1 s^-2', 'pressure or stress', 'Pa'],
  ['kg m^-2 s^-2', 'force per volume', 'N/m^3'],
  ['kg m^-1 s^-1', 'dynamic viscosity', 'Pa s'],
  ['kg m^2 s^-2', 'torque or energy', 'N m'],
  ['kg m^2 s^-1', 'angular momentum', 'N m s'],
  ['kg m^2 s^-3', 'power', 'W'],
  ['kg m^3 s^-2', 'bending stiffness', 'N m^2'],
  ['m s^-3', 'jerk', 'm/s^3'],
  ['m^2 s^-3', 'power per mass', 'W/kg'],
  ['rad', 'plane angle', 'rad'],
  ['s^-1 rad', 'rotating speed', 'rad/s'],
  ['s^-2 rad', 'angular acceleration', 'rad/s^2'],
  ['s rad^-1', 'time per angle', 's/rad'],
  ['rad^-1', 'per angle', '1/rad'],
  ['m rad^-1', 'lead', 'm/rad'],
  ['m^3 rad^-1', 'volume per angle', 'm^3/rad'],
  ['kg m^2 s^-2 rad^-1', 'torsional stiffness', 'N m/rad'],
  ['kg m^2 s^-2 rad^-2', 'torsional stiffness', 'N m/rad^2'],
  ['kg m^2 s^-1 rad^-1', 'torsional damping', 'N m s/rad'],
  ['kg m^2 s^-3 A^-1 rad^-1', 'motor constant', 'V/rad'],
  ['kg m^2 s^-2 A^-1 rad^-1', 'motor constant', 'V s/rad'],
  ['A', 'electric current', 'A'],
  ['A s', 'electric charge', 'C'],
  ['m^-2 A', 'current density', 'A/m^2'],
  ['m^-1 A', 'magnetic field strength', 'A/m'],
  ['kg m^2 s^-3 A^-1', 'voltage', 'V'],
  ['kg m s^-3 A^-1', 'electric field strength', 'V/m'],
  ['kg m^2 s^-3 A^-2', 'electric resistance', 'ohm'],
  ['kg m^3 s^-3 A^-2', 'electric resistivity', 'ohm m'],
  ['kg^-1 m^-2 s^3 A^2', 'electric conductance', 'S'],
  ['kg^-1 m^-3 s^3 A^2', 'electric conductivity', 'S/m'],
  ['kg^-1 m^-2 s^4 A^2', 'capacitance', 'F'],
  ['kg m^2 s^-2 A^-2', 'inductance', 'H'],
  ['kg m^2 s^-2 A^-1', 'magnetic flux or torque constant', 'Wb'],
  ['kg s^-2 A^-1', 'magnetic flux density', 'T'],
  ['K', 'temperature', 'K'],
  ['K^-1', 'per temperature', '1/K'],
  ['s^-1 K', 'temperature rate', 'K/s'],
  ['m^-1 K', 'temperature gradient', 'K/m'],
  ['kg m^2 s^-2 K^-1', 'heat capacity', 'J/K'],
  ['m^2 s^-2 K^-1', 'specific heat capacity', 'J/(kg K)'],
  ['kg m s^-3 K^-1', 'thermal conductivity', 'W/(m K)'],
  ['kg s^-3 K^-1', 'heat transfer coefficient', 'W/(m^2 K)'],
  ['kg^-1 s^3 K', 'thermal insulance', 'm^2 K/W'],
  ['kg m^2 s^-3 K^-1', 'thermal conductance', 'W/K'],
  ['kg^-1 m^-2 s^3 K', 'thermal resistance', 'K/W'],
  ['mol', 'amount of substance', 'mol'],
  ['m^-3 mol', 'concentration', 'mol/m^3'],
  ['kg mol^-1', 'molar mass', 'kg/mol'],
  ['kg m^2 s^-2 mol^-1', 'molar energy', 'J/mol'],
  ['kg m^2 s^-2 K^-1 mol^-1', 'molar heat capacity', 'J/(mol K)'],
  ['cd', 'luminous intensity or flux', 'cd'],
  ['m^-2 cd', 'illuminance or luminance', 'lx'],
  ['money', 'money', null],
  ['kg^-1 money', 'price per mass', null],
  ['m^-1 money', 'price per length', null],
  ['m^-2 money', 'price per area', null],
  ['m^-3 money', 'price per volume', null],
  ['s^-1 money', 'cost rate', null],
  ['kg^-1 m^-2 s^2 money', 'price per energy', null]
];

interface QuantityRow {
  readonly name: string | null;
  readonly unit: string | null;
}

const quantities: ReadonlyMap<Dimension, QuantityRow> = new Map(
  quantityRows.map(([key, name, unit]) => [parseDimension(key), { name, unit }])
);

/** The writing order of base units in a coherent unit. */
const order: readonly Base[] = ['money', 'kg', 'm', 's', 'A', 'K', 'mol', 'cd', 'rad'];

/**
 * The trades' word for a dimension: 'power', 'torque or energy', 'rotating speed'. A dimension with
 * angle that has no name of its own takes the name it has at 1 rad = 1. Null if there is none.
 */
export function quantityName(dimension: Dimension): string | null {
  const row = quantities.get(dimension) ?? quantities.get(dropAngle(dimension));
  return row?.name ?? null;
}

/**
 * The coherent SI unit of a dimension: 'W', 'N m', 'rad/s', 'kg/(m s K^0.5)'.
 *
 * @param money  the sheet's ISO 4217 code, written 'money' if null
 */
export function coherentUnitText(dimension: Dimension, money: string | null = null): string {
  return quantities.get(dimension)?.unit ?? baseUnitText(dimension, money);
}

function baseUnitText(dimension: Dimension, money: string | null): string {
  const over: string[] = [];
  const under: string[] = [];
  for (const base of order) {
    const exponent = exponentOf(dimension, base);
    const symbol = base === 'money' ? (money ?? 'money') : base;
    if (exponent.num > 0) over.push(powerText(symbol, exponent));
    if (exponent.num < 0) under.push(powerText(symbol, negateRational(exponent)));
  }
  const above = over.length > 0 ? over.join(' ') : '1';
  if (under.length === 0) return above;
  return `${above}/${under.length === 1 ? under.join('') : `(${under.join(' ')})`}`;
}

function powerText(symbol: string, exponent: Rational): string {
  const text = rationalText(exponent);
  return text === '1' ? symbol : `${symbol}^${text}`;
}
