// Numbers as TeX: as they were written, with a power of ten raised and thin spaces between groups of
// three digits from 10 000 on. Anything that is not a number comes out as harmless text.

import { upright } from './tex-name.ts';

/** TeX of a number as written in an expression: '10^{-6}' for 1e-6, '2.5\times10^{3}' for 2.5e3. */
export function texOfNumber(written: string): string {
  const [, whole = '', decimals = '', power] =
    /^(\d*)\.?(\d*)(?:e([+-]?\d+))?$/iu.exec(written) ?? [];
  if (whole === '' && decimals === '') return upright(written.replace(/[^\w]/gu, ''));
  const mantissa = grouped(whole === '' ? '0' : whole) + (decimals === '' ? '' : `.${decimals}`);
  if (power === undefined) return mantissa;
  const ten = `10^{${Number(power)}}`;
  return mantissa === '1' ? ten : `${mantissa}\\times${ten}`;
}

/**
 * TeX of a number as a display gives it: plain ('-1.2e-5'), typeset ('−12 500', '1.2 × 10⁻⁵') or TeX.
 */
export function texOfDisplayed(text: string): string {
  const plain = text
    .replace(/[\u2212−]/gu, '-')
    .replace(/[\s\u202f\u2009]|\{\\,\}|\\,/gu, '')
    .replace(
      /(?:×|\\times)10(?:\^\{(-?\d+)\}|([⁻⁰¹²³⁴-⁹]+))/u,
      (_, raised: string, signs: string) =>
        raised ? `e${raised}` : `e${[...signs].map((sign) => plainDigits.get(sign)).join('')}`
    );
  const [, minus = '', size = ''] = /^(-?)(.*)$/su.exec(plain) ?? [];
  if (size === 'inf' || size === '∞' || size === '\\infty') return `${minus}\\infty`;
  return minus + texOfNumber(size);
}

const plainDigits: ReadonlyMap<string, string> = new Map(
  [...'⁻⁰¹²³⁴⁵⁶⁷⁸⁹'].map((sign, index) => [sign, '-0123456789'[index] ?? ''])
);

function grouped(whole: string): string {
  return whole.length < 5 ? whole : whole.replace(/\B(?=(?:\d{3})+$)/g, '{\\,}');
}
