// Numbers and quantities as the page sets them: the engine's texts are plain ('-1.2e-5 kg/m^3'), the
// page's have a true minus, raised powers of ten, thin spaces from 10 000 up and typeset units.
// Signs and spaces as in ISO 80000-1 (from memory).

import { unitLabel, type Unit } from '#lib/units/index.ts';

const THIN = '\u202f';
const NO_BREAK = '\u00a0';
const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** A numeral that is a number by itself, not part of a name, a date or a unit. */
const numeral = /(?<![\p{L}\p{N}_.^])(-?)(\d+)(\.\d+)?(?:e([+-]?\d+))?(?![\p{L}\p{N}_])/gu;

/** Every numeral of a text as the page sets it; what is typeset already stays. */
export function typesetNumerals(text: string): string {
  return text.replace(
    numeral,
    (_, minus: string, whole: string, fraction: string | undefined, power: string | undefined) => {
      const grouped = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, THIN);
      const ten =
        power === undefined ? '' : `·10${power.startsWith('-') ? '⁻' : ''}${raise(power)}`;
      return `${minus === '' ? '' : '\u2212'}${grouped}${fraction ?? ''}${ten}`;
    }
  );
}

const raise = (power: string): string =>
  [...String(Math.abs(Number(power)))].map((digit) => raised[Number(digit)] ?? '').join('');

/** A number with its unit, on one line. */
export function typesetQuantity(number: string, unit: Unit | null): string {
  const label = unit === null ? '' : unitLabel(unit);
  return [typesetNumerals(number), label].filter(Boolean).join(NO_BREAK);
}

/** A text that ends in the unit's plain form ('5.00 of 7.5 N m'), set. */
export function typesetWithUnit(text: string, unit: Unit | null): string {
  if (unit === null || unit.text === '1') return typesetNumerals(text);
  const label = unitLabel(unit);
  for (const written of [unit.text, label]) {
    if (text.endsWith(` ${written}`))
      return typesetNumerals(text.slice(0, -written.length - 1)) + NO_BREAK + label;
  }
  return typesetNumerals(text);
}
