// How tightly each kind of node binds, from the loosest: what decides where brackets are needed when
// a tree is written out, as text or as TeX.

import type { Expression } from './tree.ts';

export const binding = {
  any: 0,
  conditional: 1,
  or: 2,
  and: 3,
  relation: 4,
  sum: 5,
  product: 6,
  sideBySide: 7,
  sign: 8,
  power: 9,
  value: 10
} as const;

export function bindingOf(node: Expression): number {
  switch (node.kind) {
    case 'conditional':
      return binding.conditional;
    case 'logic':
      return node.op === 'or' ? binding.or : binding.and;
    case 'relation':
      return binding.relation;
    case 'binary':
      if (node.op === '^') return binding.power;
      if (node.op === '+' || node.op === '-') return binding.sum;
      return node.implicit ? binding.sideBySide : binding.product;
    case 'sign':
    case 'not':
      return binding.sign;
    default:
      return binding.value;
  }
}
