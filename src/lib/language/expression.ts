// An expression's text to its tree. Three passes, each of which may end with a problem: the lexer
// (what stands there), the order of the tokens (what may follow what), the grammar (what belongs
// together). Shape and tokens are then walked in step to build the tree, with every node's place.

import { nameWords, syntaxWords, type Problem } from '#lib/problem/index.ts';
import type { Cut } from '#lib/text/index.ts';
import { isUnitFault, parseUnit, type Unit } from '#lib/units/index.ts';
import { finding, toProblem, type Finding } from './finding.ts';
import { argumentsTaken, callForm, languageFunction, otherFunctionNames } from './functions.ts';
import { powerMark, shapeOf, type Shape } from './parse.ts';
import { tokensOf } from './lexer.ts';
import { orderFinding } from './order.ts';
import { limits, type Token, type TokenKind } from './token.ts';
import type { BinaryNode, Expression, RelationOperator } from './tree.ts';
import { unitFinding } from './unit-finding.ts';

export interface ParseOptions {
  /** The sheet's one ISO 4217 code, which is a unit in it. */
  readonly money: string | null;
  /** Functions that the sheet defines, by name. */
  readonly ownFunctions?: ReadonlySet<string>;
}

export interface ParsedExpression {
  /** null where there is a problem. */
  readonly tree: Expression | null;
  readonly problems: readonly Problem[];
}

/** Reads an expression; problems carry lines and columns of the entry the cut was taken from. */
export function parseExpression(cut: Cut, options: ParseOptions): ParsedExpression {
  const found = longLine(cut.text);
  if (found) return { tree: null, problems: [toProblem(cut, found)] };
  const { tokens, findings } = tokensOf(cut.text, options.money);
  if (findings.length > 0) return refused(cut, findings);
  const misplaced = orderFinding(cut.text, tokens, options.money);
  if (misplaced) return refused(cut, [misplaced]);
  const builder = new TreeBuilder(cut.text, tokens, options.ownFunctions ?? noFunctions);
  const tree = builder.build(shapeOf(tokens));
  return builder.findings.length > 0 ? refused(cut, builder.findings) : { tree, problems: [] };
}

/** Reads the unit that stands after `to`, or after `?` in an input. */
export function parseUnitCut(
  cut: Cut,
  money: string | null
): { readonly unit: Unit | null; readonly problems: readonly Problem[] } {
  const asked = cut.text.trim();
  const offset = cut.text.length - cut.text.trimStart().length;
  if (asked === '') {
    const found = finding('syntax/unexpected', 0, cut.text.length, syntaxWords.unitExpected());
    return { unit: null, problems: [toProblem(cut, found)] };
  }
  const unit = parseUnit(asked, money);
  if (!isUnitFault(unit)) return { unit, problems: [] };
  return { unit: null, problems: [toProblem(cut, unitFinding(unit, offset))] };
}

const noFunctions: ReadonlySet<string> = new Set();

function refused(cut: Cut, findings: readonly Finding[]): ParsedExpression {
  return { tree: null, problems: findings.map((found) => toProblem(cut, found)) };
}

function longLine(text: string): Finding | null {
  if (text.length <= limits.line) return null;
  let from = 0;
  for (const line of text.split('\n')) {
    if (line.length > limits.line) {
      const words = syntaxWords.lineTooLong(line.length, limits.line);
      return finding('syntax/too-deep', from, from + line.length, words);
    }
    from += line.length + 1;
  }
  return null;
}

/** Walks a shape and the tokens it was made from in step. */
class TreeBuilder {
  readonly findings: Finding[] = [];
  private readonly text: string;
  private readonly tokens: readonly Token[];
  private readonly ownFunctions: ReadonlySet<string>;
  private at = 0;

  constructor(text: string, tokens: readonly Token[], ownFunctions: ReadonlySet<string>) {
    this.text = text;
    this.tokens = tokens;
    this.ownFunctions = ownFunctions;
  }

  build(shape: Shape): Expression {
    switch (shape.kind) {
      case 'constant':
        return this.numeral();
      case 'symbol': {
        const { from, to, text } = this.take('name');
        return { kind: 'name', from, to, name: text };
      }
      case 'bracket':
        return this.group(shape.content);
      case 'operator':
        return shape.args.length === 1 ? this.oneSided(shape) : this.twoSided(shape);
      case 'call':
        return this.call(shape.args);
      case 'chain':
        return this.relation(shape.args);
      case 'choice': {
        const test = this.build(shape.test);
        this.take('?');
        // The first value stands in brackets that only the parser saw.
        const yes = this.build(shape.yes.kind === 'bracket' ? shape.yes.content : shape.yes);
        this.take(':');
        const no = this.build(shape.no);
        return { kind: 'conditional', from: test.from, to: no.to, test, yes, no };
      }
    }
  }

  private take(kind: TokenKind): Token {
    const token = this.tokens[this.at];
    if (token?.kind !== kind) {
      throw new TypeError(
        `parse: expected ${kind} as token ${this.at}, found ${token?.kind ?? 'none'}`
      );
    }
    this.at++;
    return token;
  }

  private numeral(): Expression {
    const isNumber = this.tokens[this.at]?.kind === 'number';
    const { from, to, text, value, unit } = this.take(isNumber ? 'number' : 'quantity');
    if (!unit) return { kind: 'number', from, to, value, text };
    return { kind: 'quantity', from, to, magnitude: value, magnitudeText: text, unit };
  }

  private group(content: Shape): Expression {
    const { from } = this.take('(');
    const inner = this.build(content);
    const unit = this.tokens[this.at]?.kind === 'to' ? this.take('to').unit : null;
    const { to } = this.take(')');
    return { kind: 'group', from, to, inner, unit };
  }

  /** A sign, `not`, or ² and ³. */
  private oneSided(shape: Shape & { kind: 'operator' }): Expression {
    const [arg] = shape.args;
    if (!arg) throw new TypeError('parse: an operator without operand');
    if (shape.op === powerMark) {
      const left = this.build(arg);
      const { from, to, text, value } = this.take('power');
      const right: Expression = { kind: 'number', from, to, value, text };
      return { kind: 'binary', from: left.from, to, op: '^', left, right, implicit: false };
    }
    const { from, text } = this.take('operator');
    const operand = this.build(arg);
    if (text === 'not') return { kind: 'not', from, to: operand.to, operand };
    return { kind: 'sign', from, to: operand.to, op: text === '-' ? '-' : '+', operand };
  }

  private twoSided(shape: Shape & { kind: 'operator' }): Expression {
    const [first, second] = shape.args;
    if (!first || !second) throw new TypeError('parse: an operator without two operands');
    if (relationOperators.has(shape.op)) return this.relation(shape.args);
    const left = this.build(first);
    if (!shape.implicit) this.take('operator');
    const right = this.build(second);
    const { op } = shape;
    const place = { from: left.from, to: right.to };
    if (op === 'and' || op === 'or') return { kind: 'logic', ...place, op, left, right };
    this.refuseBareNot(left, place.to);
    return {
      kind: 'binary',
      ...place,
      op: op as BinaryNode['op'],
      left,
      right,
      implicit: shape.implicit
    };
  }

  private relation(args: readonly Shape[]): Expression {
    const operands: Expression[] = [];
    const operators: RelationOperator[] = [];
    for (const arg of args) {
      if (operands.length > 0) operators.push(this.take('operator').text as RelationOperator);
      operands.push(this.build(arg));
    }
    const [from, to] = [operands[0]?.from ?? 0, operands.at(-1)?.to ?? 0];
    if (operands[0]) this.refuseBareNot(operands[0], to);
    return { kind: 'relation', from, to, operators, operands };
  }

  private call(args: readonly Shape[]): Expression {
    const callee = this.take('name');
    this.take('call');
    const built: Expression[] = [];
    for (const arg of args) {
      if (built.length > 0) this.take(',');
      built.push(this.build(arg));
    }
    const { to } = this.take(')');
    this.checkCall(callee, built, to);
    const { from, to: calleeTo, text } = callee;
    return { kind: 'call', from, to, callee: text, args: built, calleeTo };
  }

  private checkCall(callee: Token, args: readonly Expression[], to: number): void {
    const name = callee.text;
    const known = languageFunction(name);
    if (known) {
      if (args.length < known.least || args.length > known.most) {
        const words = nameWords.argumentCount(
          name,
          args.length,
          argumentsTaken(known),
          callForm(known)
        );
        this.findings.push(finding('names/arguments', callee.from, to, words));
      } else if (known.shape === 'integral' && args[1]?.kind !== 'name') {
        const [from, end] = [args[1]?.from ?? callee.from, args[1]?.to ?? to];
        const words = nameWords.boundVariable(this.text.slice(from, end));
        this.findings.push(finding('names/arguments', from, end, words));
      }
    } else if (name === 'log' || !this.ownFunctions.has(name)) {
      this.findings.push(this.notAFunction(callee, to));
    }
  }

  private notAFunction(callee: Token, to: number): Finding {
    const { from, text: name } = callee;
    const write = otherFunctionNames.get(name) ?? caseless(name);
    if (otherFunctionNames.get(name) === null) {
      return finding('names/not-a-function', from, callee.to, nameWords.whichLogarithm(name));
    }
    if (write !== null) {
      const cure = languageFunction(write) ? { from, to: callee.to, replacement: write } : null;
      return finding(
        'names/not-a-function',
        from,
        callee.to,
        nameWords.functionCalled(name, write),
        cure
      );
    }
    const bracket = this.text.indexOf('(', callee.to);
    const written = this.text.slice(from, callee.to);
    const words = nameWords.notAFunction(written, `${written}*${this.text.slice(bracket, to)}`);
    const cure = { from: callee.to, to: bracket, replacement: '*' };
    return finding('names/not-a-function', from, callee.to, words, cure);
  }

  /**
   * mathjs reads `not a > b` as `(not a) > b`; nobody who writes it means that. `left` is the first
   * operand of an operator whose last one ends at `to`; the widest operator says it.
   */
  private refuseBareNot(left: Expression, to: number): void {
    let first = left;
    while (first.kind === 'binary') first = first.left;
    if (first.kind !== 'not') return;
    const { from: at, operand } = first;
    const inner = this.text.slice(operand.from, to);
    const cure = { from: operand.from, to, replacement: `(${inner})` };
    const earlier = this.findings.findIndex((found) => found.from === at);
    if (earlier >= 0) this.findings.splice(earlier, 1);
    this.findings.push(
      finding('syntax/brackets', at, to, syntaxWords.notNeedsBrackets(inner), cure)
    );
  }
}

const relationOperators: ReadonlySet<string> = new Set(['<', '<=', '>', '>=', '==', '!=']);

function caseless(name: string): string | null {
  const lower = name.toLowerCase();
  return lower !== name && languageFunction(lower) ? lower : null;
}
