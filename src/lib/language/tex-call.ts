// Calls as TeX: roots, bars and integrals in their own forms, the usual functions upright, everything
// else by name with its arguments in brackets.
// Names of inverse functions as in ISO 80000-2 (arcsin, arsinh), from memory.

import { argumentBrackets, bracketed, piece, type Piece, type TexStyle } from './tex-piece.ts';
import { texOfName } from './tex-name.ts';
import { binding } from './precedence.ts';
import type { CallNode, Expression } from './tree.ts';
import { integrationVariable } from './walk.ts';

/** Prints an expression from its top: outer brackets left out. */
export type Inside = (node: Expression, style: TexStyle) => string;

const commands: ReadonlyMap<string, string> = new Map([
  ['exp', '\\exp'],
  ['ln', '\\ln'],
  ['log10', '\\log_{10}'],
  ['log2', '\\log_{2}'],
  ['sin', '\\sin'],
  ['cos', '\\cos'],
  ['tan', '\\tan'],
  ['asin', '\\arcsin'],
  ['acos', '\\arccos'],
  ['atan', '\\arctan'],
  ['sinh', '\\sinh'],
  ['cosh', '\\cosh'],
  ['tanh', '\\tanh'],
  ['asinh', '\\operatorname{arsinh}'],
  ['acosh', '\\operatorname{arcosh}'],
  ['atanh', '\\operatorname{artanh}'],
  ['sign', '\\operatorname{sgn}'],
  ['interp_hold', '\\operatorname{interp}_{\\mathrm{hold}}'],
  ['interp_spline', '\\operatorname{interp}_{\\mathrm{spline}}'],
  ...[
    'atan2', 'min', 'max', 'hypot', 'round', 'mod', 'clamp', 'sum', 'mean', 'sd', 'count', 'first',
    'last', 'interp'
  ].map((name) => [name, `\\operatorname{${name}}`] as const)
]); // prettier-ignore

const raisable: ReadonlySet<string> = new Set(['sin', 'cos', 'tan', 'sinh', 'cosh', 'tanh']);

export function callPiece(node: CallNode, style: TexStyle, inside: Inside): Piece {
  const [first] = node.args;
  if (first && node.args.length === 1) {
    const fenced = fencedTex(node.callee, inside(first, style), style);
    if (fenced !== null) return piece(fenced);
  }
  const variable = integrationVariable(node);
  if (variable !== null) return integralPiece(node, variable, style, inside);
  const args = node.args.map((arg) => inside(arg, style)).join(', ');
  const name = commands.get(node.callee) ?? texOfName(node.callee);
  return piece(name + argumentBrackets(args, style), binding.power);
}

/** sin^2(x), for the functions where this is usual and a whole power above zero; else null. */
export function raisedCall(
  base: Expression,
  exponent: Expression,
  style: TexStyle,
  inside: Inside
): Piece | null {
  if (base.kind !== 'call' || !raisable.has(base.callee)) return null;
  if (exponent.kind !== 'number' || !/^[1-9]\d*$/.test(exponent.text)) return null;
  const args = base.args.map((arg) => inside(arg, style)).join(', ');
  const name = commands.get(base.callee) ?? '';
  return piece(`${name}^{${exponent.text}}${argumentBrackets(args, style)}`, binding.power);
}

/** Functions drawn round their argument. */
function fencedTex(name: string, tex: string, style: TexStyle): string | null {
  const [left, right] = style.slash ? ['', ''] : ['\\left', '\\right'];
  switch (name) {
    case 'sqrt':
      return `\\sqrt{${tex}}`;
    case 'cbrt':
      return `\\sqrt[3]{${tex}}`;
    case 'abs':
      return `${left}\\lvert ${tex}${right}\\rvert `;
    case 'floor':
      return `${left}\\lfloor ${tex}${right}\\rfloor `;
    case 'ceil':
      return `${left}\\lceil ${tex}${right}\\rceil `;
    default:
      return null;
  }
}

function integralPiece(node: CallNode, variable: string, style: TexStyle, inside: Inside): Piece {
  const [integrand, , low, high] = node.args;
  if (!integrand || !low || !high)
    throw new RangeError('integralPiece: an integral needs 4 arguments');
  const { valueOf } = style;
  // The variable keeps its letter where names give way to numbers.
  const bound = valueOf && ((name: string) => (name === variable ? null : valueOf(name)));
  const isSum =
    integrand.kind === 'binary' ? '+-'.includes(integrand.op) : !tight.has(integrand.kind);
  const body = inside(integrand, { ...style, valueOf: bound });
  const limits = { ...style, slash: true };
  return piece(
    `\\int_{${inside(low, limits)}}^{${inside(high, limits)}} ` +
      `${isSum ? bracketed(body, style) : body}\\,\\mathrm{d}${texOfName(variable)}`,
    (binding.sum + binding.product) / 2
  );
}

const tight: ReadonlySet<Expression['kind']> = new Set([
  'number', 'quantity', 'name', 'sign', 'call', 'group'
]); // prettier-ignore
