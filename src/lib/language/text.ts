// A tree as text of the language. What was read from text comes back as an equal tree; a tree that was
// built otherwise gets the brackets it needs.

import { binding, bindingOf } from './precedence.ts';
import type { BinaryNode, Expression } from './tree.ts';

/** Source text of a tree. */
export function textOf(node: Expression): string {
  switch (node.kind) {
    case 'number':
      return node.text;
    case 'quantity':
      // A magnitude takes a stroke at once: 2048/rev.
      return node.unit.text.startsWith('1/')
        ? node.magnitudeText + node.unit.text.slice(1)
        : `${node.magnitudeText} ${node.unit.text}`;
    case 'name':
      return node.name;
    case 'sign':
      return node.op + within(node.operand, binding.sign);
    case 'not':
      return `not ${within(node.operand, binding.sign)}`;
    case 'binary':
      return binaryText(node);
    case 'relation': {
      const [first, ...rest] = node.operands.map((operand) => within(operand, binding.sum));
      return (first ?? '') + rest.map((text, i) => ` ${node.operators[i] ?? ''} ${text}`).join('');
    }
    case 'logic': {
      const own = bindingOf(node);
      return `${within(node.left, own)} ${node.op} ${within(node.right, own + 1)}`;
    }
    case 'conditional':
      return `${within(node.test, binding.or)} ? ${textOf(node.yes)} : ${textOf(node.no)}`;
    case 'call':
      return `${node.callee}(${node.args.map(textOf).join(', ')})`;
    case 'group':
      return node.unit ? `(${textOf(node.inner)} to ${node.unit.text})` : `(${textOf(node.inner)})`;
  }
}

function within(node: Expression, least: number): string {
  const text = textOf(node);
  return bindingOf(node) < least ? `(${text})` : text;
}

function binaryText(node: BinaryNode): string {
  const { op, left, right } = node;
  switch (op) {
    case '+':
    case '-':
      return `${within(left, binding.sum)} ${op} ${within(right, binding.product)}`;
    case '/':
      return `${within(left, binding.product)} / ${divisorText(right)}`;
    case '*':
      if (node.implicit && multipliesUnsaid(node)) {
        return `${textOf(left)} ${within(right, binding.power)}`;
      }
      return `${within(left, binding.product)} * ${within(right, binding.sideBySide)}`;
    case '^':
      return powerText(left, right);
  }
}

/** After a stroke nothing is multiplied without a sign. */
function divisorText(node: Expression): string {
  return within(node, binding.sign);
}

/** Whether `left right` reads as a product without a sign: 2 pi, -2 (a + b). */
function multipliesUnsaid({ left, right }: BinaryNode): boolean {
  const factor = left.kind === 'sign' ? left.operand : left;
  let base = right;
  while (base.kind === 'binary' && base.op === '^') base = base.left;
  return (
    factor.kind === 'number' &&
    (base.kind === 'group' || (base.kind === 'name' && base.name === 'pi'))
  );
}

function powerText(left: Expression, right: Expression): string {
  const exponent = beginsWithQuantity(right) ? `(${textOf(right)})` : within(right, binding.sign);
  if (left.kind === 'quantity') return `(${textOf(left)})^${exponent}`;
  if (left.kind !== 'binary' || left.op !== '^')
    return `${within(left, binding.value)}^${exponent}`;
  // A power of a power without brackets was written with a raised sign: x²^3.
  const raised = left.right.kind === 'number' ? raisedSigns.get(left.right.text) : undefined;
  if (raised === undefined || left.left.kind === 'quantity') return `(${textOf(left)})^${exponent}`;
  return `${within(left.left, binding.value)}${raised}^${exponent}`;
}

const raisedSigns: ReadonlyMap<string, string> = new Map([
  ['2', '²'],
  ['3', '³']
]);

/** A number right of `^` takes no unit, so a quantity there needs brackets. */
function beginsWithQuantity(node: Expression): boolean {
  if (node.kind === 'quantity') return true;
  if (node.kind === 'sign') return beginsWithQuantity(node.operand);
  return node.kind === 'binary' && node.op === '^' && beginsWithQuantity(node.left);
}
