// The static check of one expression: its dimension with all marks, worked out from the types of the
// names in it, without a single value. A mistake is reported once, where it is; whatever contains it
// has no type and adds no second complaint.

import { nodeSpan, type Expression } from '#lib/language/index.ts';
import {
  problem, shiftProblem, temperatureWords, unitWords, valueWords, type Problem, type ProblemCode,
  type Severity, type Wording
} from '#lib/problem/index.ts'; // prettier-ignore
import { predefinedValues } from '#lib/model/index.ts';
import type { Cut } from '#lib/text/index.ts';
import {
  baseDimension, coherentUnitText, divideDimensions, dropAngle, exponentOf,
  isUnitFault, multiplyDimensions, parseUnit, plain, quantityName, rational, sameBesidesAngle,
  withExponent, type Unit
} from '#lib/units/index.ts'; // prettier-ignore
import { angleOf, angleRemark, angleRemarkOfPair, isRate, isSpeed } from './angle.ts';
import { checkCall } from './functions.ts';
import { isWithinReach, literalExponent } from './exponent.ts';
import { commonTemperature, quantityIn, quantityLiteral, raised } from './quantity.ts';
import { plainNumber, type QuantityType, type TemperatureKind, type Type } from './type.ts';

/** What two values side by side are wanted for, to complete 'cannot be …'. */
export type PairVerb = 'added' | 'subtracted' | 'compared' | 'branches of one choice';

/** An own function of the sheet, as a call sees it. */
export interface CallableFunction {
  readonly parameters: readonly string[];
  /** Type of a call with these arguments; problems are those of its body, with lines of its entry. */
  check(args: readonly Type[]): {
    readonly type: Type | null;
    readonly problems: readonly Problem[];
  };
}

export interface CheckScope {
  /** null: the name exists, but has a mistake or waits for one that has. */
  typeOf(name: string): Type | null | undefined;
  functionOf(name: string): CallableFunction | undefined;
  /** A name of the sheet whose dimension this is, for a hint: `Did you mean T_shaft * omega?`. */
  nameOfDimension?(key: string): string | null;
}

/** One run of the check over one expression: collects problems, answers types. */
export class ExpressionCheck {
  readonly problems: Problem[] = [];
  readonly scope: CheckScope;
  readonly cut: Cut;
  private readonly bound: (readonly [string, Type])[] = [];

  constructor(scope: CheckScope, cut: Cut) {
    this.scope = scope;
    this.cut = cut;
  }

  /** The text of a node as it stands in the sheet. */
  text(node: Expression): string {
    return this.cut.text.slice(node.from, node.to).replace(/\s+/gu, ' ');
  }

  report(code: ProblemCode, node: Expression, words: Wording, severity: Severity = 'error'): null {
    // prettier-ignore
    this.problems.push(problem(code, nodeSpan(this.cut, node), words, { severity }));
    return null;
  }

  /** 'P_drag (power, W)' */
  describe(node: Expression, type: Type): string {
    return describeType(this.text(node), type);
  }

  /** With `name` bound to a type, as by `integrate`. */
  withBound<T>(name: string, type: Type, work: () => T): T {
    this.bound.push([name, type]);
    try {
      return work();
    } finally {
      this.bound.pop();
    }
  }

  /** The type of an expression, or null where it has a mistake or waits. */
  type(node: Expression): Type | null {
    const type = this.ownType(node);
    if (type?.kind !== 'quantity' || isWithinReach(type.dimension)) return type;
    return this.report('units/exponent', node, unitWords.exponentBeyondReach(this.text(node)));
  }

  private ownType(node: Expression): Type | null {
    switch (node.kind) {
      case 'number':
        return { ...plainNumber, literal: true, literalZero: node.value === 0 };
      case 'quantity':
        return quantityLiteral(node.unit, node.magnitude);
      case 'name':
        return this.nameType(node.name);
      case 'group': {
        const inner = this.type(node.inner);
        if (!inner || !node.unit) return inner;
        return this.shownIn(node.inner, inner, node.unit);
      }
      case 'sign':
        return this.signType(node);
      case 'not': {
        const operand = this.type(node.operand);
        if (!operand) return null;
        if (operand.kind === 'truth') return operand;
        return this.report(
          'units/mismatch',
          node.operand,
          unitWords.needsTruth('not', this.text(node.operand))
        );
      }
      case 'logic': {
        const sides = [node.left, node.right].map((side) => {
          const type = this.type(side);
          if (!type || type.kind === 'truth') return type;
          return this.report(
            'units/mismatch',
            side,
            unitWords.needsTruth(node.op, this.text(side))
          );
        });
        const [left, right] = sides;
        if (!left || !right) return null;
        const rows = this.commonRows(node.left, left, node.right, right);
        return rows === undefined ? null : { kind: 'truth', rows };
      }
      case 'relation':
        return this.relationType(node);
      case 'conditional':
        return this.conditionalType(node);
      case 'binary':
        if (node.op === '+' || node.op === '-') return this.sumType(node);
        return node.op === '^' ? this.powerType(node) : this.productType(node);
      case 'call': {
        const own = this.scope.functionOf(node.callee);
        return own ? this.ownCallType(node, own) : checkCall(this, node);
      }
    }
  }

  /** The type of an expression that must be a quantity. */
  quantity(node: Expression): QuantityType | null {
    const type = this.type(node);
    return type && this.asQuantity(node, type);
  }

  asQuantity(node: Expression, type: Type): QuantityType | null {
    if (type.kind === 'quantity') return type;
    const words = type.kind === 'truth' ? unitWords.needsNumber : unitWords.textNotNumber;
    return this.report('units/mismatch', node, words(this.text(node)));
  }

  /** Rows of two operands taken together; undefined (and a problem) where two columns differ. */
  commonRows(left: Expression, a: Type, right: Expression, b: Type): number | null | undefined {
    if (a.rows === null || b.rows === null || a.rows === b.rows) return a.rows ?? b.rows;
    this.report(
      'units/mismatch', right,
      unitWords.differentRows(this.text(left), this.text(right), [a.rows, b.rows])
    ); // prettier-ignore
    return undefined;
  }

  /**
   * Two values side by side: in a sum, a comparison, or as arguments that must be of one kind. Gives
   * the type both have together, without its temperature; null (and a problem) where they differ.
   */
  pair(
    left: Expression,
    a: QuantityType,
    right: Expression,
    b: QuantityType,
    verb: PairVerb
  ): QuantityType | null {
    // prettier-ignore
    const rows = this.commonRows(left, a, right, b);
    if (rows === undefined) return null;
    if (a.literalZero && a.dimension === plain)
      return { ...b, rows, piPower: 0, literal: a.literal && b.literal };
    if (b.literalZero && b.dimension === plain)
      return { ...a, rows, piPower: 0, literal: a.literal && b.literal };
    if (!sameBesidesAngle(a.dimension, b.dimension)) {
      const words = unitWords.cannotAdd(
        this.describe(left, a), this.describe(right, b), verb, this.factorHint(left, a, right, b),
        typeUnitText(b), typeUnitText(a)
      ); // prettier-ignore
      return this.reportPair('units/mismatch', left, right, words);
    }
    const { remark, angle } = angleRemarkOfPair(a, b, [this.text(left), this.text(right)]);
    if (remark) {
      this.reportPair(remark.code, left, right, remark.words, remark.severity);
      if (remark.severity === 'error') return null;
    }
    const exponent = exponentOf(hasAngle(a, angle) ? a.dimension : b.dimension, 'rad');
    return {
      ...plainNumber,
      dimension: withExponent(a.dimension, 'rad', angle === 0 ? rational(0) : exponent),
      rows,
      rev: a.rev || b.rev,
      hz: a.hz || b.hz,
      root: a.root && b.root,
      rate: a.rate || b.rate,
      unit: a.unit ?? b.unit,
      length: a.length ?? b.length,
      force: a.force || b.force,
      literal: a.literal && b.literal
    };
  }

  /** A value taken to a unit by `to`: the unit fixes angle, the rev mark and the kind of temperature. */
  shownIn(node: Expression, type: Type, unit: Unit): QuantityType | null {
    const value = this.asQuantity(node, type);
    if (!value) return null;
    const what = this.text(node);
    if (value.literalZero && value.dimension === plain)
      return { ...quantityIn(unit), rows: value.rows };
    if (!sameBesidesAngle(value.dimension, unit.dimension)) {
      return this.report(
        'units/mismatch', node,
        unitWords.cannotShow(describeType(what, value), unit.text, quantityName(unit.dimension) ?? coherentUnitText(unit.dimension))
      ); // prettier-ignore
    }
    const remark = angleRemark(
      value,
      { angle: angleOf(unit.dimension), asked: 'to', unit, rev: unit.hasRev },
      what
    );
    if (remark) {
      this.report(remark.code, node, remark.words, remark.severity);
      if (remark.severity === 'error') return null;
    }
    if (unit.temperature === 'reading' && value.temperature === 'difference') {
      return this.report(
        'temperature/difference-as-reading', node,
        temperatureWords.differenceAsReading(what, unit.text)
      ); // prettier-ignore
    }
    if (unit.text === 'VA' && value.unit?.text.endsWith('W') === true) {
      this.report('units/mismatch', node, unitWords.apparentPower(what), 'note');
    }
    const shown = quantityIn(unit);
    const temperature =
      unit.temperature === 'kelvin' && value.temperature === 'difference'
        ? 'difference'
        : shown.temperature;
    const rate = value.rate || shown.rate;
    return { ...shown, rows: value.rows, temperature, rate, literal: value.literal };
  }

  private nameType(name: string): Type | null {
    for (let i = this.bound.length - 1; i >= 0; i--) {
      const entry = this.bound[i];
      if (entry?.[0] === name) return entry[1];
    }
    if (name === 'pi') return { ...plainNumber, piPower: 1, literal: true };
    if (name === 'true' || name === 'false') return { kind: 'truth', rows: null };
    const predefined = predefinedTypes.get(name);
    return predefined ?? this.scope.typeOf(name) ?? null;
  }

  private signType(node: Expression & { kind: 'sign' }): QuantityType | null {
    const operand = this.quantity(node.operand);
    if (!operand) return null;
    const sign = node.op;
    // The sign of a reading belongs to the reading: -20 degC.
    if (operand.temperature === 'point' && sign === '-' && node.operand.kind !== 'quantity') {
      return this.report(
        'temperature/scaled-point',
        node,
        temperatureWords.scaledPoint(this.text(node))
      );
    }
    return operand;
  }

  private sumType(node: Expression & { kind: 'binary' }): QuantityType | null {
    const a = this.quantity(node.left);
    const b = this.quantity(node.right);
    if (!a || !b) return null;
    const both = this.pair(node.left, a, node.right, b, node.op === '+' ? 'added' : 'subtracted');
    if (!both) return null;
    if (both.dimension !== kelvin) return both;
    return this.temperatureSum(node, a, b, both);
  }

  private temperatureSum(
    node: Expression & { kind: 'binary' },
    a: QuantityType,
    b: QuantityType,
    both: QuantityType
  ): QuantityType | null {
    // prettier-ignore
    const [left, right] = [a.temperature ?? 'neutral', b.temperature ?? 'neutral'];
    const words = [this.text(node.left), this.text(node.right)] as const;
    let temperature: TemperatureKind;
    if (node.op === '+') {
      if (left === 'point' && right === 'point') {
        return this.reportPair(
          'temperature/two-points',
          node.left,
          node.right,
          temperatureWords.twoPoints(...words)
        );
      }
      if (left === 'point' || right === 'point') temperature = 'point';
      else temperature = left === 'difference' && right === 'difference' ? 'difference' : 'neutral';
    } else if (left === 'difference' && right === 'point') {
      return this.reportPair(
        'temperature/two-points',
        node.left,
        node.right,
        temperatureWords.differenceMinusPoint(...words)
      );
    } else if (left === 'point') temperature = right === 'point' ? 'difference' : 'point';
    else if (left === 'neutral') temperature = right === 'difference' ? 'neutral' : 'difference';
    else temperature = 'difference';
    const reading = temperature === 'difference' && both.unit?.temperature === 'reading';
    return { ...both, temperature, unit: reading ? null : both.unit };
  }

  /** A product is judged whole, whatever brackets stand in it: `2 * (T / 3)` scales a reading too. */
  private productType(node: Expression & { kind: 'binary' }): QuantityType | null {
    const factors: Factor[] = [];
    for (const { factor, inverse } of factorsOf(node)) {
      const type = this.quantity(factor);
      if (type) factors.push({ node: factor, type, inverse });
      else return null;
    }
    let product: Factor | null = null;
    for (const factor of factors) {
      if (!product) {
        product = factor.inverse ? { ...factor, type: times(plainNumber, factor) } : factor;
        continue;
      }
      const rows = this.commonRows(product.node, product.type, factor.node, factor.type);
      if (rows === undefined) return null;
      product = { ...product, type: { ...times(product.type, factor), rows } };
      if (!isWithinReach(product.type.dimension)) {
        return this.report('units/exponent', node, unitWords.exponentBeyondReach(this.text(node)));
      }
    }
    if (!product) return null;
    const type = product.type;
    const points = factors.filter((factor) => factor.type.temperature === 'point');
    const others = factors.filter((factor) => !points.includes(factor));
    if (
      points.length === 1 &&
      others.every((factor) => dropAngle(factor.type.dimension) === plain)
    ) {
      return this.report(
        'temperature/scaled-point',
        node,
        temperatureWords.scaledPoint(this.text(node))
      );
    }
    const isDifference = factors.some((factor) => factor.type.temperature === 'difference');
    const own = factors.find(
      (factor) =>
        factor.type.unit !== null && factor.type.dimension === type.dimension && !factor.inverse
    );
    return {
      ...type,
      temperature: type.dimension === kelvin ? (isDifference ? 'difference' : 'neutral') : null,
      unit: own?.type.unit?.temperature === 'reading' ? null : (own?.type.unit ?? null)
    };
  }

  private powerType(node: Expression & { kind: 'binary' }): QuantityType | null {
    const base = this.quantity(node.left);
    const power = this.quantity(node.right);
    if (!base || !power) return null;
    const rows = this.commonRows(node.left, base, node.right, power);
    if (rows === undefined) return null;
    if (dropAngle(power.dimension) !== plain) {
      return this.report(
        'units/exponent',
        node.right,
        unitWords.exponentNotPlain(this.describe(node.right, power))
      );
    }
    const exponent = literalExponent(node.right);
    if (exponent === null) {
      if (dropAngle(base.dimension) === plain)
        return { ...plainNumber, rows, literal: base.literal && power.literal };
      return this.report(
        'units/exponent', node.right,
        unitWords.exponentNotLiteral(
          this.describe(node.left, base), this.text(node.left), this.text(node.right)
        )
      ); // prettier-ignore
    }
    const type = { ...raised(base, exponent), rows };
    if (dropAngle(base.dimension) !== plain || isWithinReach(type.dimension)) return type;
    return { ...plainNumber, rows };
  }

  private relationType(node: Expression & { kind: 'relation' }): Type | null {
    const types = node.operands.map((operand) => this.type(operand));
    let rows: number | null = null;
    for (let i = 0; i + 1 < node.operands.length; i++) {
      const [left, right] = [node.operands[i], node.operands[i + 1]];
      const [a, b] = [types[i], types[i + 1]];
      if (!left || !right || !a || !b) return null;
      const first = this.asQuantity(left, a);
      const second = first && this.asQuantity(right, b);
      if (!first || !second) return null;
      const both = this.pair(left, first, right, second, 'compared');
      if (!both) return null;
      if (rows !== null && both.rows !== null && rows !== both.rows) {
        const first = node.operands[0] ?? left;
        this.commonRows(first, { ...both, rows }, right, both);
        return null;
      }
      rows = both.rows ?? rows;
      const exact = node.operators[i] === '==' || node.operators[i] === '!=';
      if (exact && !first.literal && !second.literal) {
        this.report(
          'value/exact-comparison',
          node,
          valueWords.exactComparison(this.text(node)),
          'note'
        );
      }
    }
    return { kind: 'truth', rows };
  }

  private conditionalType(node: Expression & { kind: 'conditional' }): Type | null {
    const test = this.type(node.test);
    const yes = this.type(node.yes);
    const no = this.type(node.no);
    if (test && test.kind !== 'truth') {
      return this.report(
        'units/mismatch',
        node.test,
        unitWords.needsTruth('? :', this.text(node.test))
      );
    }
    if (!test || !yes || !no) return null;
    if (yes.kind !== 'quantity' || no.kind !== 'quantity') {
      if (yes.kind === no.kind) return { ...yes, rows: test.rows ?? yes.rows ?? no.rows };
      const words = unitWords.mixedBranches(
        this.describe(node.yes, yes),
        this.describe(node.no, no)
      );
      return this.report('units/mismatch', node, words);
    }
    const both = this.pair(node.yes, yes, node.no, no, 'branches of one choice');
    if (!both) return null;
    const column = yes.rows === null ? node.no : node.yes;
    const rows = this.commonRows(node.test, test, column, both);
    if (rows === undefined) return null;
    return {
      ...both,
      rows,
      piPower: yes.piPower === no.piPower ? yes.piPower : 0,
      temperature: both.dimension === kelvin ? commonTemperature([yes, no]) : null,
      literal: false
    };
  }

  private ownCallType(node: Expression & { kind: 'call' }, own: CallableFunction): Type | null {
    const types: Type[] = [];
    for (const arg of node.args) {
      const type = this.type(arg);
      if (!type) return null;
      types.push(type.kind === 'quantity' ? { ...type, piPower: 0, literal: false } : type);
    }
    if (types.length !== own.parameters.length) return null; // said when names were resolved
    const { type, problems } = own.check(types);
    const first = problems.find((found) => found.severity === 'error');
    if (first) {
      const words = { message: `${this.text(node)}: ${first.message}`, hint: first.hint };
      this.problems.push({
        ...problem(first.code, nodeSpan(this.cut, node), words),
        related: [shiftProblem(first, 0).at]
      });
      return null;
    }
    return type;
  }

  /** A problem between two operands is marked over both. */
  private reportPair(
    code: ProblemCode,
    left: Expression,
    right: Expression,
    words: Wording,
    severity: Severity = 'error'
  ): null {
    // prettier-ignore
    return this.report(code, { ...left, from: left.from, to: right.to }, words, severity);
  }

  private factorHint(
    left: Expression,
    a: QuantityType,
    right: Expression,
    b: QuantityType
  ): string | null {
    // prettier-ignore
    const find = this.scope.nameOfDimension?.bind(this.scope);
    if (!find || left.kind !== 'name' || right.kind !== 'name') return null;
    const ratio = divideDimensions(b.dimension, a.dimension);
    const up = find(dropAngle(ratio).key);
    const down = find(dropAngle(divideDimensions(a.dimension, b.dimension)).key);
    // A torque becomes a power by a rotating speed sooner than a power an energy by some time.
    if (up && (isRate(ratio) || !down)) return `Did you mean ${left.name} * ${up}?`;
    if (down) return `Did you mean ${right.name} * ${down}?`;
    return null;
  }
}

const predefinedTypes: ReadonlyMap<string, QuantityType> = new Map(
  [...predefinedValues].flatMap(([name, { unit }]) => {
    const found = parseUnit(unit, null);
    return isUnitFault(found) ? [] : [[name, quantityIn(found)] as const];
  })
);

interface Factor {
  readonly node: Expression;
  readonly type: QuantityType;
  readonly inverse: boolean;
}

const kelvin = baseDimension('K');

function factorsOf(node: Expression, inverse = false): { factor: Expression; inverse: boolean }[] {
  if (node.kind === 'group' && !node.unit) return factorsOf(node.inner, inverse);
  if (node.kind !== 'binary' || (node.op !== '*' && node.op !== '/'))
    return [{ factor: node, inverse }];
  return [
    ...factorsOf(node.left, inverse),
    ...factorsOf(node.right, node.op === '/' ? !inverse : inverse)
  ];
}

/** The marks of a product so far and one more factor; rows, unit and temperature are set later. */
function times(a: QuantityType, factor: Factor): QuantityType {
  const b = factor.type;
  const combine = factor.inverse ? divideDimensions : multiplyDimensions;
  return {
    ...plainNumber,
    dimension: combine(a.dimension, b.dimension),
    rows: a.rows ?? b.rows,
    rev: a.rev || b.rev,
    hz: a.hz || b.hz,
    root: (a.root || b.root) && (a.root || isNumber(a)) && (b.root || isNumber(b)),
    piPower: factor.inverse ? a.piPower - b.piPower : a.piPower + b.piPower,
    rate: a.rate || b.rate,
    tipSpeedRatio:
      a.tipSpeedRatio ||
      (factor.inverse && isSpeed(a.dimension) && isSpeed(b.dimension) &&
        angleOf(a.dimension) === 1 && angleOf(b.dimension) === 0),
    literal: a.literal && b.literal,
    length: a.length ?? b.length,
    force: a.force || (!factor.inverse && b.force)
  }; // prettier-ignore
}

const isNumber = (type: QuantityType): boolean => type.dimension === plain;
const hasAngle = (type: QuantityType, angle: number): boolean => angleOf(type.dimension) === angle;

/** 'P_drag (power, W)', 'n (plain number)', 'is_hot (condition)'. */
export function describeType(text: string, type: Type): string {
  if (type.kind === 'truth') return `${text} (condition)`;
  if (type.kind === 'text') return `${text} (text)`;
  if (type.dimension === plain) return `${text} (plain number)`;
  const name = quantityName(type.dimension);
  const unit = typeUnitText(type);
  return name ? `${text} (${name}, ${unit})` : `${text} (${unit})`;
}

function typeUnitText(type: QuantityType): string {
  return type.unit?.text ?? coherentUnitText(type.dimension);
}
