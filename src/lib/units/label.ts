// A unit in print: as text for the page and as TeX for a formula. Both are made from the unit's
// uniform text, so that a unit which came from a worker or a file prints the same.
// Upright symbols, a dot between factors, one stroke: SI Brochure, 9th ed., 5.2 and 5.4.7.

import type { Unit } from './types.ts';
import { unitSpellings } from './table.ts';

interface Forms {
  readonly dot: string;
  readonly power: (exponent: string) => string;
  readonly name: (symbol: string) => string;
}

const tokenPattern =
  /[A-Za-z_][A-Za-z0-9_]*|%|\^(?:-?[\d.]+|\([^)]*\))|[\d.]+(?:e[+-]?\d+)?|[ /()]/gi;

/** 'N·m', 'kg/m³', 'µm', '°C', '%'; '' for a plain number. */
export function unitLabel(unit: Unit): string {
  return unit.text === '1' ? '' : written(unit.text, textForms);
}

/** '\mathrm{N}{\cdot}\mathrm{m}', '\mathrm{kg}/\mathrm{m}^{3}'; '' for a plain number. */
export function unitTex(unit: Unit): string {
  return unit.text === '1' ? '' : written(unit.text, texForms);
}

/** Whether a thin space is usual between number and unit: for all but degrees of angle. */
export function takesSpace(unit: Unit): boolean {
  return unit.text !== 'deg' && unit.text !== '1';
}

function written(text: string, forms: Forms): string {
  return [...text.matchAll(tokenPattern)]
    .map(([token]) => {
      if (token === ' ') return forms.dot;
      if (token.startsWith('^')) return forms.power(token.slice(1).replace(/[()]/g, ''));
      if (/^[A-Za-z_%]/.test(token)) return forms.name(token);
      return token;
    })
    .join('');
}

const raised = new Map(
  [...'-0123456789'].map((sign, index) => [sign, '⁻⁰¹²³⁴⁵⁶⁷⁸⁹'[index] ?? sign])
);

const signs: ReadonlyMap<string, string> = new Map([
  ['degC', '°C'],
  ['degF', '°F'],
  ['degR', '°R'],
  ['deg', '°']
]);

const textForms: Forms = {
  dot: '·',
  power: (exponent) =>
    /^-?\d+$/.test(exponent)
      ? [...exponent].map((sign) => raised.get(sign) ?? sign).join('')
      : `^${exponent.includes('/') ? `(${exponent})` : exponent}`,
  name: (symbol) => {
    const sign = signs.get(symbol);
    if (sign) return sign;
    const { micro, rest } = split(symbol);
    const ohms = /ohm$/.test(rest) ? rest.replace(/ohm$/, 'Ω') : rest;
    return (micro ? 'µ' : '') + ohms.replace('H2O', 'H₂O');
  }
};

const texForms: Forms = {
  dot: '{\\cdot}',
  power: (exponent) => `^{${exponent}}`,
  name: (symbol) => {
    const sign = signs.get(symbol);
    if (sign) return `{{}^{\\circ}${sign.length > 1 ? `\\mathrm{${sign.slice(1)}}` : ''}}`;
    if (symbol === '%') return '\\%';
    const { micro, rest } = split(symbol);
    const ohms = /^(.*)ohm$/.exec(rest);
    if (ohms) return (micro ? '\\mu ' : '') + upright(ohms[1] ?? '') + '\\Omega';
    return (micro ? '\\mu ' : '') + upright(rest);
  }
};

function upright(symbol: string): string {
  if (symbol === '') return '';
  const [base = '', ...parts] = symbol.split('_');
  const below = parts.length > 0 ? `_{\\mathrm{${parts.join(',')}}}` : '';
  return `\\mathrm{${base.replace('H2O', 'H_{2}O')}}${below}`;
}

/** Takes the prefix micro off a symbol; KaTeX has no upright mu, so TeX shows it in italics. */
function split(symbol: string): { readonly micro: boolean; readonly rest: string } {
  const isMicro = unitSpellings.get(symbol)?.prefix === 'u' || symbol === 'uin';
  return { micro: isMicro, rest: isMicro ? symbol.slice(1) : symbol };
}
