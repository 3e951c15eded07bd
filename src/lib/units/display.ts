// Which unit a value is shown in, from its dimension and what its formula tells: the unit asked for,
// else the author's own, else a named unit of the sheet's family, else coherent base units. Nothing
// here looks at the rest of the sheet, so a result never changes its unit because of another line.

import type { Dimension, Unit, UnitFamily } from './types.ts';
import { dropAngle, exponentOf, parseDimension, plain, withExponent } from './dimension.ts';
import { isUnitFault } from './lookup.ts';
import { parseUnit } from './parse.ts';
import { coherentUnitText } from './quantity-name.ts';
import { rationalText } from './rational.ts';
import { unitSpellings } from './table.ts';

export interface DisplayHints {
  readonly family: UnitFamily;
  /** The unit behind `to`. */
  readonly asked?: Unit | null;
  /** The unit of the first operand with the same dimension. */
  readonly author?: Unit | null;
  /** The unit of the first length operand; a power of a length follows it: mm gives mm^2. */
  readonly lengthUnit?: Unit | null;
  /** A factor is a force, so kg m^2 s^-2 is a torque. */
  readonly isTorque?: boolean;
  /** A temperature that is a point on a scale. */
  readonly isReading?: boolean;
  /** A rotating speed entered or shown in revolutions. */
  readonly rateInRev?: boolean;
  /** A bare square root, which counts radians: shown in 1/s and never in Hz by itself. */
  readonly isRoot?: boolean;
  /** The sheet's ISO 4217 code. */
  readonly money?: string | null;
}

type FamilyTable = ReadonlyMap<Dimension, string>;

const hertz = parseDimension('s^-1');
const rotatingSpeed = parseDimension('s^-1 rad');
const temperature = parseDimension('K');
const energy = parseDimension('kg m^2 s^-2');
const energyPerAngle = parseDimension('kg m^2 s^-2 rad^-1');

/** The families, as the page on dimensions lists them, with the plain compounds of their units. */
const families: Readonly<Record<UnitFamily, FamilyTable>> = {
  SI: familyTable([
    ['kg m^2 s^-2', 'J'],
    ['kg m^2 s^-2 rad^-1', 'N m'],
    ['s^-1', 'Hz']
  ]),
  US: familyTable([
    ['m', 'in'],
    ['m^2', 'in^2'],
    ['m^3', 'in^3'],
    ['m^4', 'in^4'],
    ['kg', 'lb'],
    ['kg m s^-2', 'lbf'],
    ['kg m^2 s^-2', 'lbf ft'],
    ['kg m^2 s^-2 rad^-1', 'lbf ft'],
    ['kg m^2 s^-3', 'hp'],
    ['kg m^-1 s^-2', 'psi'],
    ['s^-1', 'Hz'],
    ['m s^-1', 'ft/s'],
    ['m s^-2', 'ft/s^2'],
    ['m^3 s^-1', 'gpm'],
    ['kg s^-2', 'lbf/in'],
    ['kg m^-3', 'lb/ft^3'],
    ['kg m^-1', 'lb/ft'],
    ['kg m^2', 'lb ft^2'],
    ['kg s^-1', 'lb/s'],
    ['K', 'degR']
  ])
};

/** Dimensions that keep their angle: a plain angle, rates and times. Elsewhere 1 rad = 1. */
const keepsAngle: ReadonlySet<Dimension> = new Set(['1', 's^-1', 's^-2', 's'].map(parseDimension));

/** Engineering prefixes that a row may take, by power of ten. */
const engineering: readonly (readonly [number, string])[] = [
  [9, 'G'],
  [6, 'M'],
  [3, 'k'],
  [0, ''],
  [-3, 'm'],
  [-6, 'u']
];

/**
 * The unit to show a value of a dimension in.
 *
 * A reading without a unit of its own is shown in degC (SI) or degF (US), any other temperature in K
 * or degR.
 */
export function displayUnit(dimension: Dimension, hints: DisplayHints): Unit {
  const given = hints.asked ?? hints.author;
  if (given) return given;
  const money = hints.money ?? moneyWord(dimension);
  const shown = keepsAngle.has(dropAngle(dimension)) ? dimension : withoutAngle(dimension);
  return own(displayText(dropPlainAngle(shown), hints, money), money);
}

/**
 * The unit with the one engineering prefix (k, M, G, m, u or none) that puts a row's largest value
 * between 1 and 1000, as far as that unit takes prefixes. Only for a unit that nobody asked for.
 *
 * @param unit        shown as it is unless it is a single named unit to the first power
 * @param largestSi   the row's largest magnitude, coherent SI
 */
export function withPrefix(unit: Unit, largestSi: number): Unit {
  const [atom] = unit.atoms;
  if (!atom || unit.atoms.length > 1 || atom.symbol !== unit.text || unit.temperature) return unit;
  const spelling = unitSpellings.get(atom.symbol);
  if (!spelling || spelling.row.prefixes.length === 0 || spelling.row.dimension === 'rad') {
    return unit;
  }
  const symbol = spelling.row.symbols[0] ?? '';
  const bare = own(symbol, null);
  const magnitude = Math.abs(largestSi / bare.factor);
  if (!Number.isFinite(magnitude) || magnitude === 0) return unit;
  const isMass = symbol === 'g';
  const allowed = engineering.filter(
    ([power, prefix]) =>
      (power === 0 || spelling.row.prefixes.includes(prefix)) && !(isMass && power > 3)
  );
  const fitting = allowed.find(([power]) => magnitude >= 10 ** power * (1 - 1e-12));
  const [, prefix] = fitting ?? allowed[allowed.length - 1] ?? [0, ''];
  return own(prefix + symbol, null);
}

function displayText(dimension: Dimension, hints: DisplayHints, money: string | null): string {
  if (dimension === hertz && hints.isRoot) return '1/s';
  if (dimension === rotatingSpeed && hints.rateInRev) return 'rpm';
  if (dimension === temperature && hints.isReading) return hints.family === 'SI' ? 'degC' : 'degF';
  if (dimension === energy && hints.isTorque) return hints.family === 'SI' ? 'N m' : 'lbf ft';
  return (
    powerOfLength(dimension, hints.lengthUnit ?? null) ??
    families[hints.family].get(dimension) ??
    coherentUnitText(dimension, money)
  );
}

/** The author's length unit to the power that makes up the dimension, if it is a power of a length. */
function powerOfLength(dimension: Dimension, lengthUnit: Unit | null): string | null {
  const power = exponentOf(dimension, 'm');
  const [atom] = lengthUnit?.atoms ?? [];
  if (!lengthUnit || !atom || atom.symbol !== lengthUnit.text || power.num <= 0) return null;
  if (lengthUnit.dimension.key !== 'm' || withExponent(plain, 'm', power) !== dimension)
    return null;
  const text = rationalText(power);
  return text === '1' ? atom.symbol : `${atom.symbol}^${text}`;
}

/** An energy over an angle is a torque; elsewhere the angle goes. */
function withoutAngle(dimension: Dimension): Dimension {
  return dimension === energyPerAngle ? dimension : dropAngle(dimension);
}

/** A power of angle alone is an angle to the first power, over or under, or it is written out. */
function dropPlainAngle(dimension: Dimension): Dimension {
  const isAngleAlone = dropAngle(dimension) === plain;
  const exponent = exponentOf(dimension, 'rad');
  const isKept = Math.abs(exponent.num) === 1 && exponent.den === 1;
  return isAngleAlone && !isKept ? plain : dimension;
}

function moneyWord(dimension: Dimension): string | null {
  return exponentOf(dimension, 'money').num === 0 ? null : 'money';
}

function own(text: string, money: string | null): Unit {
  const unit = parseUnit(text, money);
  if (isUnitFault(unit)) throw new RangeError(`the display unit "${text}": ${unit.message}`);
  return unit;
}

function familyTable(rows: readonly (readonly [string, string])[]): FamilyTable {
  return new Map(rows.map(([key, text]) => [parseDimension(key), text]));
}
