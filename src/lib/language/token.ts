// The tokens of an expression, in text order. A quantity, whatever its length, is one token; every
// token knows its place in the text, and the parser keeps step with them, so that places survive.

import type { Unit } from '#lib/units/index.ts';

/**
 * 'call' is the opening bracket after a name, '(' any other; 'power' is ² or ³; 'to' is a whole
 * conversion `to unit` before a closing bracket.
 */
export type TokenKind =
  | 'number' | 'quantity' | 'name' | 'operator' | 'power' | '(' | 'call' | ')' | ',' | '?' | ':' | 'to'; // prettier-ignore

export interface Token {
  readonly kind: TokenKind;
  readonly from: number;
  readonly to: number;
  /** Name in canonical form, operator in ASCII, number or magnitude as written. */
  readonly text: string;
  /** Of a number, a magnitude, and the exponent of a power; else 0. */
  readonly value: number;
  /** Of a quantity and of a conversion. */
  readonly unit: Unit | null;
}

export const limits = {
  /** Characters on one line. */
  line: 2000,
  /** Brackets, and choices inside the first value of a choice. */
  depth: 50,
  /** Names, numbers and operators of one expression. */
  nodes: 500
} as const;
