// Numbers as text. A row of values shares its decimals: as many as its largest value needs for the
// digits asked, more if the smallest would keep fewer than two. Power-of-ten form is for rows that are
// very small or very large throughout. No more than 12 significant digits are ever written, so the
// round-off of a conversion is not seen. Signs and spaces of the typeset style: ISO 80000-1, from memory.

export type NumberStyle = 'plain' | 'typeset' | 'tex';
export type Precision = { readonly decimals: number } | { readonly digits: number };

export const mostDigits = 12;

/** Below this a row, or a number by itself, is written with a power of ten. */
const smallest = 1e-3;
/** From here on a row is written with a power of ten. */
const largestInRow = 1e7;
/** From here on a number by itself is. */
const largestAlone = 1e5;
/** Against the row's largest value, anything smaller than this is what rounding left of a zero. */
const roundOff = 1e-14;
/** The smallest value may add this many decimals to the row; beyond that it is written by itself. */
const extraDecimals = 4;

/**
 * A row of values, for one unit.
 *
 * @param values  in the unit shown; null and NaN give '', infinite ones 'inf'
 * @param digits  significant digits of the row's largest value
 * @returns  one text a value, with the same decimals in all; trailing zeros that every value of the
 *           row really has are left out, so that 2 is '2' and not '2.000'
 */
export function formatRow(
  values: readonly (number | null)[],
  digits: number,
  style: NumberStyle = 'plain'
): string[] {
  const sizes = values.filter(isFiniteNumber).map(Math.abs);
  const largest = Math.max(0, ...sizes);
  const kept = values.map((value) =>
    isFiniteNumber(value) && Math.abs(value) < largest * roundOff ? 0 : value
  );
  if (largest === 0) return kept.map((value) => formatNumber(value, { decimals: 0 }, style));
  const wanted = boundedDigits(digits);
  const power = powerOfTen(largest, wanted);
  const isScaled =
    roundedTo(largest, wanted) < smallest || roundedTo(largest, wanted) >= largestInRow;
  const scaled = isScaled ? kept.map((value) => scaledBy(value, -power)) : kept;
  const decimals = rowDecimals(scaled, wanted);
  return scaled.map((value, index) => {
    const isLost = isFiniteNumber(value) && isLostAt(value, decimals);
    if (isLost) return powerForm(kept[index] ?? 0, 2, style);
    const text = formatNumber(value, { decimals }, style);
    return isScaled && isFiniteNumber(value) && value !== 0 ? text + powerText(power, style) : text;
  });
}

/**
 * One number to a number of significant digits, by itself. Whole digits are never replaced by zeros
 * ('76697' stays), trailing zeros behind the point go, and beyond 0.001 to 100 000 the power-of-ten
 * form is used: '1.278e5'.
 */
export function formatSignificant(
  value: number | null,
  digits: number,
  style: NumberStyle = 'plain'
): string {
  if (!isFiniteNumber(value) || value === 0) return formatNumber(value, { decimals: 0 }, style);
  const wanted = boundedDigits(digits);
  const size = roundedTo(Math.abs(value), wanted);
  if (size < smallest || size >= largestAlone) return powerForm(value, wanted, style);
  const decimals = Math.max(0, wanted - 1 - powerOfTen(Math.abs(value), wanted));
  const text = Math.abs(value).toFixed(decimals);
  return signed(value, decimals > 0 ? text.replace(/\.?0+$/, '') : text, style);
}

/** One number with fixed decimals, or to fixed significant digits, trailing zeros kept. */
export function formatNumber(
  value: number | null,
  precision: Precision,
  style: NumberStyle = 'plain'
): string {
  if (value === null || Number.isNaN(value)) return '';
  if (!Number.isFinite(value)) return signed(value, infinityText[style], style);
  const size = Math.abs(value);
  if ('digits' in precision) {
    const digits = boundedDigits(precision.digits);
    const rounded = size === 0 ? 0 : roundedTo(size, digits);
    if (rounded !== 0 && (rounded < smallest || rounded >= largestInRow)) {
      return powerForm(value, digits, style);
    }
    const power = size === 0 ? 0 : powerOfTen(size, digits);
    return signed(value, size.toFixed(Math.max(0, digits - 1 - power)), style);
  }
  if (size >= 1e21) return powerForm(value, mostDigits, style);
  return signed(value, size.toFixed(Math.min(100, Math.max(0, precision.decimals))), style);
}

/**
 * A value and its standard uncertainty: u to two digits, the value to the same decimals.
 *
 * Source   JCGM 100:2008, 7.2.6
 */
export function formatUncertain(
  value: number,
  uncertainty: number,
  style: NumberStyle = 'plain'
): { readonly value: string; readonly uncertainty: string } {
  const size = Math.abs(uncertainty);
  if (!Number.isFinite(value) || !Number.isFinite(size) || size === 0) {
    return {
      value: formatSignificant(value, mostDigits, style),
      uncertainty: formatSignificant(size, 2, style)
    };
  }
  const largest = Math.max(Math.abs(value), size);
  const power = powerOfTen(largest, mostDigits);
  const isScaled = largest < smallest || largest >= largestInRow;
  const shift = isScaled ? -power : 0;
  const most = mostDigits - 1 - (isScaled ? 0 : power);
  const decimals = Math.min(most, decimalsForTwo(scaledBy(size, shift)));
  const tail = isScaled ? powerText(power, style) : '';
  return {
    value: roundedText(scaledBy(value, shift), decimals, style) + tail,
    uncertainty: roundedText(scaledBy(size, shift), decimals, style) + tail
  };
}

/** Fixed decimals; fewer than none rounds to tens, hundreds and so on. */
function roundedText(value: number, decimals: number, style: NumberStyle): string {
  const step = 10 ** Math.max(0, -decimals);
  if (step === 1) return formatNumber(value, { decimals }, style);
  return formatNumber(Math.round(value / step) * step, { decimals: 0 }, style);
}

const infinityText: Readonly<Record<NumberStyle, string>> = {
  plain: 'inf',
  typeset: '∞',
  tex: '\\infty'
};

/**
 * Decimals of a row: what its largest value needs for its digits, more where another would show fewer
 * than two, less the zeros that all of them end in. A value too small for this is not counted.
 */
function rowDecimals(values: readonly (number | null)[], digits: number): number {
  const sizes = values.filter(isFiniteNumber).map(Math.abs).filter(isAboveZero);
  const largest = Math.max(...sizes);
  const power = powerOfTen(largest, digits);
  const first = Math.max(0, digits - 1 - power);
  const most = Math.max(0, Math.min(first + extraDecimals, mostDigits - 1 - power));
  const counted = sizes.filter((size) => decimalsForTwo(size) <= most);
  let decimals = Math.min(most, Math.max(first, ...counted.map(decimalsForTwo)));
  while (decimals > 0 && counted.every((size) => isRoundAt(size, decimals - 1, largest)))
    decimals--;
  return decimals;
}

function isAboveZero(size: number): boolean {
  return size > 0;
}

/** Decimals that show two significant digits of a value. */
function decimalsForTwo(size: number): number {
  return 1 - powerOfTen(size, 2);
}

/** Whether a value is, to 12 digits of the row's largest, the same with so few decimals. */
function isRoundAt(size: number, decimals: number, largest: number): boolean {
  return Math.abs(Number(size.toFixed(decimals)) - size) <= largest * 1e-12;
}

/** Whether fixed decimals would show fewer than two digits of a value that has more. */
function isLostAt(value: number, decimals: number): boolean {
  const size = Math.abs(value);
  return size > 0 && decimalsForTwo(size) > decimals && !isRoundAt(size, decimals, size);
}

function powerForm(value: number, digits: number, style: NumberStyle): string {
  const size = Math.abs(value);
  const [mantissa = '', power = '0'] = size.toExponential(digits - 1).split('e');
  return signed(value, mantissa, style) + powerText(Number(power), style);
}

function powerText(power: number, style: NumberStyle): string {
  if (style === 'plain') return `e${power}`;
  if (style === 'tex') return `\\times10^{${power}}`;
  const digits = [...String(Math.abs(power))].map((digit) => raisedDigits[Number(digit)] ?? '');
  return `\u202F×\u202F10${power < 0 ? '⁻' : ''}${digits.join('')}`;
}

const raisedDigits = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function signed(value: number, text: string, style: NumberStyle): string {
  const isMinus = value < 0 && /[1-9∞]|inf/.test(text);
  return (isMinus ? minusSign[style] : '') + grouped(text, style);
}

const minusSign: Readonly<Record<NumberStyle, string>> = {
  plain: '-',
  typeset: '\u2212',
  tex: '-'
};

/** Thin spaces between groups of three before the point, from five digits on. */
function grouped(text: string, style: NumberStyle): string {
  if (style === 'plain' || !/^\d{5}/.test(text)) return text;
  const [whole = '', decimals] = text.split('.');
  const groups = whole.replace(/\B(?=(?:\d{3})+$)/g, style === 'tex' ? '{\\,}' : '\u202F');
  return decimals === undefined ? groups : `${groups}.${decimals}`;
}

/** The power of ten of a number once it is rounded to so many digits: 9.9996 to 4 digits is 1. */
function powerOfTen(size: number, digits: number): number {
  return Number(size.toExponential(digits - 1).split('e')[1]);
}

function roundedTo(size: number, digits: number): number {
  return Number(size.toExponential(digits - 1));
}

function scaledBy<T extends number | null>(value: T, power: number): T | number {
  if (value === null || power === 0) return value;
  return Number(`${value}e${power}`) || scaledInSteps(value, power);
}

/** For a number whose own text has a power of ten, such as 1e-7. */
function scaledInSteps(value: number, power: number): number {
  return value === 0 ? 0 : power < 0 ? value / 10 ** -power : value * 10 ** power;
}

function boundedDigits(digits: number): number {
  return Math.min(mostDigits, Math.max(1, Math.round(digits)));
}

function isFiniteNumber(value: number | null): value is number {
  return value !== null && Number.isFinite(value);
}
