// A tree as TeX for KaTeX, in two forms. The formula: fractions, roots, thin spaces between factors,
// units upright, no brackets that the form makes needless. With numbers: one line with strokes and
// dots, names replaced by the values of a stage. Only commands written here come out; names, numbers
// and units are printed by their own files, which let nothing else through.
// Style: ISO 80000-1, 7 (from memory).

import { takesSpace, unitTex, type Unit } from '#lib/units/index.ts';
import { binding } from './precedence.ts';
import { callPiece, raisedCall } from './tex-call.ts';
import { isCompoundName, texOfName } from './tex-name.ts';
import { texOfDisplayed, texOfNumber } from './tex-number.ts';
import {
  atLeast,
  bracketed,
  piece,
  type Piece,
  type ShownValue,
  type TexStyle
} from './tex-piece.ts';
import type { BinaryNode, Expression, RelationOperator } from './tree.ts';

const formula: TexStyle = { slash: false, dots: false, valueOf: null };

/** TeX of an expression as a formula. */
export function texOf(tree: Expression): string {
  return inside(tree, formula);
}

/** TeX of `name = expression`, or `name(parameters) = expression`. */
export function texOfDefinition(
  name: string,
  tree: Expression,
  parameters: readonly string[] | null = null
): string {
  const list = parameters ? `(${parameters.map(texOfName).join(', ')})` : '';
  return `${texOfName(name)}${list} = ${texOf(tree)}`;
}

/**
 * TeX of an expression on one line, names replaced by values.
 *
 * @param valueOf  number as displayed (plain, typeset or TeX) and unit; null keeps the name
 */
export function texWithNumbers(
  tree: Expression,
  valueOf: (name: string) => ShownValue | null
): string {
  return inside(tree, { slash: true, dots: true, valueOf });
}

/** A whole expression: brackets around all of it are not needed. */
function inside(node: Expression, style: TexStyle): string {
  return pieceOf(node.kind === 'group' ? peeled(node) : node, style).tex;
}

function peeled(node: Expression): Expression {
  let inner = node;
  while (inner.kind === 'group') ({ inner } = inner);
  return inner;
}

function pieceOf(node: Expression, style: TexStyle): Piece {
  switch (node.kind) {
    case 'number':
      return numberPiece(texOfNumber(node.text));
    case 'quantity':
      return withUnit(magnitudeTex(node.magnitudeText, style), node.unit);
    case 'name':
      return namePiece(node.name, style);
    case 'group':
      return groupPiece(node.inner, style);
    case 'sign': {
      const operand = atLeast(pieceOf(node.operand, style), binding.sideBySide, style, false);
      return piece(node.op + operand, binding.sign, 'sign');
    }
    case 'not':
      return piece(
        `\\text{not }${atLeast(pieceOf(node.operand, style), binding.sign, style)}`,
        binding.sign
      );
    case 'binary':
      return binaryPiece(node, style);
    case 'relation': {
      const [first, ...rest] = node.operands.map((operand) =>
        atLeast(pieceOf(operand, style), binding.sum, style)
      );
      const tail = rest.map((tex, i) => relationSigns[node.operators[i] ?? '=='] + tex);
      return piece((first ?? '') + tail.join(''), binding.relation);
    }
    case 'logic': {
      const own = node.op === 'or' ? binding.or : binding.and;
      const left = atLeast(pieceOf(node.left, style), own, style);
      const right = atLeast(pieceOf(node.right, style), own + 1, style);
      return piece(`${left}\\text{ ${node.op} }${right}`, own);
    }
    case 'conditional':
      return piece(
        style.slash ? choiceLine(node, style) : choiceRows(node, style),
        binding.conditional
      );
    case 'call':
      return callPiece(node, style, inside);
  }
}

const relationSigns: Readonly<Record<RelationOperator, string>> = {
  '<': ' < ',
  '<=': ' \\le ',
  '>': ' > ',
  '>=': ' \\ge ',
  '==': ' = ',
  '!=': ' \\ne '
};

// Values ------------------------------------------------------------------------------------------

function numberPiece(tex: string): Piece {
  const begins = tex.startsWith('-') ? 'sign' : 'number';
  if (begins === 'sign') return piece(tex, binding.sign, begins);
  // A number with a power of ten is a product, or a power by itself.
  if (tex.includes('\\times')) return piece(tex, binding.product, begins);
  return piece(tex, tex.includes('^') ? binding.power : binding.value, begins);
}

function withUnit(number: string, unit: Unit): Piece {
  const tex = unitTex(unit);
  const begins = number.startsWith('-') ? 'sign' : number.startsWith('\\t') ? 'fraction' : 'number';
  if (tex === '') return numberPiece(number);
  // '1/rev' has no upper part: written after a number it is 2048/rev.
  const joint = tex.startsWith('1/') ? '' : takesSpace(unit) ? '\\,' : '';
  const written = number + joint + (tex.startsWith('1/') ? tex.slice(1) : tex);
  return piece(written, begins === 'sign' ? binding.product : binding.sideBySide, begins, true);
}

function magnitudeTex(text: string, style: TexStyle): string {
  const [top = '', bottom] = text.split('/');
  if (bottom === undefined) return texOfNumber(text);
  const parts = [texOfNumber(top), texOfNumber(bottom)] as const;
  return style.slash ? parts.join('/') : `\\tfrac{${parts[0]}}{${parts[1]}}`;
}

function namePiece(name: string, style: TexStyle): Piece {
  const constant = constants.get(name);
  if (constant !== undefined) return piece(constant);
  const shown = style.valueOf?.(name) ?? null;
  if (!shown)
    return piece(texOfName(name), isCompoundName(name) ? binding.sideBySide : binding.value);
  const number = texOfDisplayed(shown.number);
  return shown.unit ? withUnit(number, shown.unit) : numberPiece(number);
}

const constants: ReadonlyMap<string, string> = new Map([
  ['pi', '\\pi '],
  ['inf', '\\infty '],
  ['true', '\\text{true}'],
  ['false', '\\text{false}']
]);

/** A fraction, a root, a single value need no brackets of their own where the form shows their extent. */
function groupPiece(inner: Expression, style: TexStyle): Piece {
  const content = peeled(inner);
  const part = pieceOf(content, style);
  const isFraction = content.kind === 'binary' && content.op === '/' && part.begins === 'fraction';
  if (isFraction || part.binds === binding.value) return part;
  return piece(bracketed(part.tex, style));
}

// Operators ---------------------------------------------------------------------------------------

function binaryPiece(node: BinaryNode, style: TexStyle): Piece {
  switch (node.op) {
    case '+':
    case '-': {
      const left = pieceOf(node.left, style);
      const right = atLeast(pieceOf(node.right, style), binding.sum + 0.5, style, false);
      return piece(
        `${atLeast(left, binding.sum, style)} ${node.op} ${right}`,
        binding.sum,
        beginsAs(left)
      );
    }
    case '*': {
      const left = pieceOf(node.left, style);
      // 1 / 2 · m in one line would be read as 1/(2 m).
      const isStroke = style.slash && node.left.kind === 'binary' && node.left.op === '/';
      const first = isStroke ? piece(bracketed(left.tex, style)) : left;
      return productPiece(first, pieceOf(node.right, style), style);
    }
    case '/':
      return style.slash ? strokePiece(node, style) : fractionPiece(node, style);
    case '^':
      return powerPiece(node, style);
  }
}

function productPiece(left: Piece, right: Piece, style: TexStyle): Piece {
  const first = atLeast(left, binding.product, style);
  const second = atLeast(right, binding.product, style, false);
  const plainRight = right.begins === 'number' && second === right.tex;
  const mixed = left.begins === 'number' && right.begins === 'fraction';
  const dot = style.dots || plainRight || mixed || left.endsInUnit;
  const endsInUnit = right.endsInUnit && second === right.tex;
  return piece(
    first + (dot ? ' \\cdot ' : '\\,') + second,
    binding.product,
    beginsAs(left),
    endsInUnit
  );
}

/** a/b/c is one fraction: a over b c. */
function fractionPiece(node: BinaryNode, style: TexStyle): Piece {
  let top = node.left;
  const below = [node.right];
  while (top.kind === 'binary' && top.op === '/') {
    below.unshift(top.right);
    top = top.left;
  }
  const [single] = below;
  const bottom =
    below.length === 1 && single
      ? inside(single, style)
      : below.map((part) => pieceOf(part, style)).reduce((a, b) => productPiece(a, b, style)).tex;
  const negative = top.kind === 'sign' && top.op === '-';
  const numerator = top.kind === 'sign' && negative ? top.operand : top;
  const fraction = `\\frac{${inside(numerator, style)}}{${bottom}}`;
  return negative
    ? piece(`-${fraction}`, binding.product, 'sign')
    : piece(fraction, binding.product, 'fraction');
}

function strokePiece(node: BinaryNode, style: TexStyle): Piece {
  const left = pieceOf(node.left, style);
  const right = pieceOf(node.right, style);
  // 5 m/s / t would show two strokes of different meaning.
  const least = left.endsInUnit && left.tex.includes('/') ? binding.value : binding.product;
  const top = atLeast(left, least, style);
  return piece(
    `${top} / ${atLeast(right, binding.power, style, false)}`,
    binding.product,
    beginsAs(left)
  );
}

function powerPiece({ left, right }: BinaryNode, style: TexStyle): Piece {
  const exponent = peeled(right);
  const degree = rootDegree(exponent);
  if (degree !== null) {
    return piece(`\\sqrt${degree === '2' ? '' : `[${degree}]`}{${inside(left, style)}}`);
  }
  const call = raisedCall(left, exponent, style, inside);
  if (call) return call;
  const basePiece = pieceOf(left, style);
  // A fraction in brackets keeps them under a power.
  const least = left.kind === 'group' && basePiece.binds < binding.value ? Infinity : binding.value;
  const base = atLeast(basePiece, least, style);
  const raised = pieceOf(exponent, { ...style, slash: true }).tex;
  const begins = basePiece.begins === 'number' && base === basePiece.tex ? 'number' : 'other';
  return piece(`${base}^{${raised}}`, binding.power, begins);
}

/** '3' for an exponent 1/3 that was written in brackets; null for any other. */
function rootDegree(exponent: Expression): string | null {
  if (exponent.kind !== 'binary' || exponent.op !== '/') return null;
  const { left, right } = exponent;
  if (left.kind !== 'number' || left.text !== '1' || right.kind !== 'number') return null;
  return /^[2-9]$/.test(right.text) ? right.text : null;
}

function beginsAs(left: Piece): Piece['begins'] {
  return left.begins === 'sign' || left.begins === 'number' ? left.begins : 'other';
}

// Choices -----------------------------------------------------------------------------------------

function choiceRows(node: Expression, style: TexStyle): string {
  const rows: string[] = [];
  let rest = node;
  while (rest.kind === 'conditional') {
    rows.push(`${inside(rest.yes, style)} & \\text{if } ${inside(rest.test, style)}`);
    rest = peeled(rest.no);
  }
  rows.push(`${inside(rest, style)} & \\text{otherwise}`);
  return `\\begin{cases} ${rows.join(' \\\\ ')} \\end{cases}`;
}

function choiceLine(node: Expression & { kind: 'conditional' }, style: TexStyle): string {
  const yes = atLeast(pieceOf(node.yes, style), binding.or, style);
  const no = pieceOf(node.no, style).tex;
  return `${yes}\\text{ if }${inside(node.test, style)}\\text{, otherwise }${no}`;
}
