// The grammar of expressions is that of mathjs, read by its own parser: `createParse` makes one over
// node classes of ours, and nothing else of mathjs runs. The parser is given the tokens, not the
// text: each number or quantity as `1`, each name as `a`, so no word of its language can reach it.
// What comes back is only the shape; the tree is then built by walking shape and tokens in step, which
// gives every node its exact place (mathjs keeps none).
//
// Method: mathjs 15.2.0, lib/esm/expression/parse.js (Apache-2.0).

import { createParse } from 'mathjs/number';
import type { Token } from './token.ts';

/** ² and ³ are passed as the one postfix sign that mathjs has and the language has not. */
export const powerMark = "'";

/** What the parser makes of the tokens; leaves carry nothing, they are the tokens in their order. */
export type Shape =
  ConstantShape | SymbolShape | BracketShape | OperatorShape | CallShape | ChainShape | ChoiceShape;

// The parser asks a node for its kind through `isXNode` and for `isNode` on its prototype.
abstract class MathNode {
  get isNode(): true {
    return true;
  }
}

class ConstantShape extends MathNode {
  readonly kind = 'constant';
  readonly isConstantNode = true;
}

class SymbolShape extends MathNode {
  readonly kind = 'symbol';
  readonly isSymbolNode = true;
}

class BracketShape extends MathNode {
  readonly kind = 'bracket';
  readonly isParenthesisNode = true;
  readonly content: Shape;
  constructor(content: Shape) {
    super();
    this.content = content;
  }
}

class OperatorShape extends MathNode {
  readonly kind = 'operator';
  readonly isOperatorNode = true;
  readonly op: string;
  readonly args: readonly Shape[];
  readonly implicit: boolean;
  constructor(op: string, _function: string, args: readonly Shape[], implicit = false) {
    super();
    this.op = op;
    this.args = args;
    this.implicit = implicit;
  }
}

class CallShape extends MathNode {
  readonly kind = 'call';
  readonly isFunctionNode = true;
  readonly args: readonly Shape[];
  constructor(_callee: Shape, args: readonly Shape[]) {
    super();
    this.args = args;
  }
}

class ChainShape extends MathNode {
  readonly kind = 'chain';
  readonly isRelationalNode = true;
  readonly args: readonly Shape[];
  constructor(_functions: readonly string[], args: readonly Shape[]) {
    super();
    this.args = args;
  }
}

class ChoiceShape extends MathNode {
  readonly kind = 'choice';
  readonly isConditionalNode = true;
  readonly test: Shape;
  readonly yes: Shape;
  readonly no: Shape;
  constructor(test: Shape, yes: Shape, no: Shape) {
    super();
    this.test = test;
    this.yes = yes;
    this.no = no;
  }
}

/** Kinds of nodes that no sequence of our tokens leads to. */
class ForeignShape {
  constructor() {
    throw new TypeError('the parser made a node that the language does not have');
  }
}

const read = createParse({
  // typed-function in short: the parser is called with one string, always.
  typed: Object.assign(
    (_name: string, signatures: Readonly<Record<string, (text: string) => Shape>>) => {
      const parse = signatures.string;
      if (!parse) throw new TypeError('the parser has no signature for a string');
      return (text: string) => parse(text);
    },
    { addConversion: () => undefined }
  ),
  numeric: () => 1,
  config: { number: 'number', numberFallback: 'number' },
  ConstantNode: ConstantShape,
  SymbolNode: SymbolShape,
  ParenthesisNode: BracketShape,
  OperatorNode: OperatorShape,
  FunctionNode: CallShape,
  RelationalNode: ChainShape,
  ConditionalNode: ChoiceShape,
  AccessorNode: ForeignShape,
  ArrayNode: ForeignShape,
  AssignmentNode: ForeignShape,
  BlockNode: ForeignShape,
  FunctionAssignmentNode: ForeignShape,
  IndexNode: ForeignShape,
  ObjectNode: ForeignShape,
  RangeNode: ForeignShape
});

/**
 * The shape of an expression whose tokens are in order. The first value of a choice comes back in
 * brackets that have no token: without them mathjs refuses a choice inside it.
 */
export function shapeOf(tokens: readonly Token[]): Shape {
  let text = '';
  for (const token of tokens) text += parserText(token);
  return read(text) as Shape;
}

function parserText(token: Token): string {
  switch (token.kind) {
    case 'number':
    case 'quantity':
      return '1';
    case 'name':
      return ' a';
    case 'operator':
      // Words need room; the sign before a sign must not run into it.
      return ` ${token.text} `;
    case 'power':
      return powerMark;
    case 'to':
      return '';
    case 'call':
      return '(';
    case '?':
      return '?(';
    case ':':
      return '):';
    default:
      return token.kind;
  }
}
