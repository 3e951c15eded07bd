// The words for a text that is no unit. Positions are set by whoever found the fault.

import type { UnitFault } from './types.ts';
import { moneyCodes, moneySigns } from './money.ts';
import { nearestUnits } from './nearest.ts';
import { refusedUnits } from './refused.ts';
import { unitSpellings } from './table.ts';

/** The same fault at another place. */
export function faultAt(fault: UnitFault, from: number, to: number): UnitFault {
  return { ...fault, from, to };
}

/**
 * Why a name is recognised and yet no unit of this sheet: it is refused with offers, a foreign money,
 * or a currency sign. Null for any other name, known or not.
 */
export function recognisedFault(name: string, money: string | null): UnitFault | null {
  const refusal = refusedUnits.get(name);
  if (refusal) {
    const { reason, hint, replacement } = refusal;
    return fault('units/refused', name, `${reason}.`, hint, replacement);
  }
  if (moneyCodes.has(name)) return moneyFault(name, money);
  const codes = moneySigns.get(name);
  if (codes) return signFault(name, codes, money);
  return null;
}

/** An unknown name, with the nearest names that are known. */
export function unknownFault(name: string, money: string | null): UnitFault {
  const nearest = powerOfUnit(name) ?? nearestUnits(name, money);
  const hint = nearest.length === 0 ? null : `Nearest: ${nearest.join(', ')}.`;
  const replacement = nearest.length === 1 ? (nearest[0] ?? null) : null;
  return fault('units/unknown', name, `Unit "${name}" is not known.`, hint, replacement);
}

/** `mm2` is mm^2 without its sign. */
function powerOfUnit(name: string): readonly string[] | null {
  const [, unit = '', power = ''] = /^(.+?)([23])$/u.exec(name) ?? [];
  return unitSpellings.has(unit) ? [`${unit}^${power}`] : null;
}

/** Something stands where a unit is expected. */
export function notUnitFault(text: string): UnitFault {
  const found = text === '' ? 'A unit is expected here.' : `"${text}" is not a unit.`;
  return fault('units/unknown', text, found, 'Write a unit such as N m, kg/m^3 or 1.', null);
}

export function exponentFault(written: string): UnitFault {
  const message = `"${written}": the exponent of a unit is a number such as 2, -1, 0.5 or (1/2).`;
  const hint = 'To raise the whole quantity to a power, put it in brackets first: (5 m)^2.';
  return fault('units/exponent', written, message, hint, null);
}

/** `J/kg K` has two readings; neither is taken in silence. */
export function twoReadingsFault(written: string, under: string, over: string): UnitFault {
  const message = `"${written}" can be read as ${under} and as ${over}.`;
  const hint = `Write ${under} if all that follows the stroke is below it, ${over} if not.`;
  return fault('units/refused', written, message, hint, under);
}

/** `5 in in mm`: the second `in` was meant as a word of conversion. */
export function inchAsWordFault(): UnitFault {
  const message = '"in" is the inch, it does not show a value in another unit.';
  return fault('units/refused', 'in', message, 'Write to: 5 in to mm.', 'to');
}

/** `20 deg C` would be degrees of angle times coulombs. */
export function degreeFault(written: string, scale: 'C' | 'F'): UnitFault {
  const message = `"${written}" would be degrees of angle times ${scale === 'C' ? 'coulombs' : 'farads'}.`;
  return fault(
    'units/refused',
    written,
    message,
    `For a temperature write deg${scale}.`,
    `deg${scale}`
  );
}

function moneyFault(code: string, money: string | null): UnitFault {
  if (money === null) {
    const message = `${code} is a money, and this sheet names none of its own.`;
    return fault(
      'units/two-moneys',
      code,
      message,
      `Add "money: ${code}" to the front matter.`,
      null
    );
  }
  const hint = `Add an input for the rate (${money} for 1 ${code}), such as rate_${code}, and multiply by it.`;
  return fault(
    'units/two-moneys',
    code,
    `The money of this sheet is ${money}, not ${code}.`,
    hint,
    null
  );
}

function signFault(sign: string, codes: readonly string[], money: string | null): UnitFault {
  const own = money !== null && codes.includes(money) ? money : null;
  const offers = own === null ? codes.join(', ') : own;
  const message = `"${sign}" is a sign that several moneys share; a money is written by its code.`;
  return fault('units/refused', sign, message, `Write the code behind the number: ${offers}.`, own);
}

function fault(
  code: UnitFault['code'],
  found: string,
  message: string,
  hint: string | null,
  replacement: string | null
): UnitFault {
  return { code, from: 0, to: found.length, message, hint, replacement };
}
