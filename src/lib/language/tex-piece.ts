// A part of a formula as TeX, with what its neighbours must know to join it rightly: how tightly it
// binds, whether it begins with a digit or a sign, whether it ends in a unit. Also the style a formula
// is printed in, and brackets that grow only where something tall stands in them.

import type { Unit } from '#lib/units/index.ts';
import { binding } from './precedence.ts';

export interface Piece {
  readonly tex: string;
  /** As in `binding`; an integral stands between sum and product. */
  readonly binds: number;
  readonly begins: 'number' | 'sign' | 'fraction' | 'other';
  readonly endsInUnit: boolean;
}

/** What is put in the place of a name: a number as displayed, and its unit. */
export interface ShownValue {
  readonly number: string;
  readonly unit: Unit | null;
}

export interface TexStyle {
  /** Division by a stroke instead of a fraction; brackets do not grow, so that a line can break. */
  readonly slash: boolean;
  /** A dot in every product: all factors are numbers. */
  readonly dots: boolean;
  readonly valueOf: ((name: string) => ShownValue | null) | null;
}

export function piece(
  tex: string,
  binds: number = binding.value,
  begins: Piece['begins'] = 'other',
  endsInUnit = false
): Piece {
  return { tex, binds, begins, endsInUnit };
}

/** The piece's TeX, in brackets if it binds less than asked or begins with a sign where none may be. */
export function atLeast(part: Piece, least: number, style: TexStyle, signAllowed = true): string {
  const fits = part.binds >= least && (signAllowed || part.begins !== 'sign');
  return fits ? part.tex : bracketed(part.tex, style);
}

export function bracketed(tex: string, style: TexStyle): string {
  return isTall(tex) && !style.slash ? `\\left(${tex}\\right)` : `(${tex})`;
}

/** Brackets right after the name of a function, without the space that growing ones would bring. */
export function argumentBrackets(tex: string, style: TexStyle): string {
  return isTall(tex) && !style.slash ? `\\!\\left(${tex}\\right)` : `(${tex})`;
}

function isTall(tex: string): boolean {
  return /\\(?:frac|begin|int|sqrt|left)/.test(tex);
}
