// The check of one definition: the types of its expressions in every variant, held to one kind, and what
// its kind of node asks beside (tolerances, sides of a limit, the range of a solve, conditions).

import { visit, type Expression } from '#lib/language/index.ts';
import type {
  ChooseNode, ChooseVariant, FormulaNode, FunctionNode, InputNode, InputVariant, LimitNode,
  LimitVariant, Model, Parsed, SheetNode, SolveNode
} from '#lib/model/index.ts'; // prettier-ignore
import {
  chooseWords, nameWords, problem, solveWords, temperatureWords, unitWords, valueWords,
  type Problem, type Span
} from '#lib/problem/index.ts'; // prettier-ignore
import { spanOf, type Cut } from '#lib/text/index.ts';
import { dropAngle, plain, type Unit } from '#lib/units/index.ts';
import { angleOf, angleRemark, angleRemarkOfPair, isRate, settleAngle } from './angle.ts';
import { describeType, ExpressionCheck, type CheckScope } from './expression.ts';
import { unknownNames } from './names.ts';
import { quantityIn } from './quantity.ts';
import type { SheetScope } from './scope.ts';
import { plainNumber, type QuantityType, type Type } from './type.ts';

/** What the check knows of one node. */
export interface NodeCheck {
  readonly node: SheetNode;
  /** Type of its value; null where it has a mistake or waits, and for functions and limits. */
  readonly type: Type | null;
  /** For a limit: the type both sides have together at each variant. */
  readonly sides: readonly (QuantityType | null)[];
  /** Variants with a mistake in them cannot be run. */
  readonly isVariantSound: readonly boolean[];
  /** With lines from 0 at the entry (at the fence, for what stands for a whole block). */
  readonly problems: readonly Problem[];
  /** Used names that have no type. */
  readonly waitsFor: readonly string[];
  /** Changes whenever anything that a user of this node may see has changed. */
  readonly version: string;
}

type Findings = Omit<NodeCheck, 'version'>;

/** The check of one node. */
export class NodeChecker {
  private readonly problems: Problem[] = [];
  private readonly waits = new Set<string>();
  private readonly model: Model;
  private readonly scope: SheetScope;
  private readonly node: SheetNode;

  constructor(model: Model, scope: SheetScope, node: SheetNode) {
    this.model = model;
    this.scope = scope;
    this.node = node;
  }

  run(): Findings {
    const { node } = this;
    if (node.isBroken)
      return this.findings(
        null,
        [],
        node.variants.map(() => false)
      );
    switch (node.kind) {
      case 'input':
        return this.revised(node.variants.map((variant) => this.inputType(node, variant)));
      case 'calc':
        return this.revised(this.formulaTypes(node));
      case 'function':
        return this.ownFunction(node);
      case 'limit':
        return this.limit(node);
      case 'solve':
        return this.revised([this.solveType(node)]);
      case 'column':
        return this.revised([columnType(node)]);
      case 'choose':
        return this.choose(node);
      case 'pick': {
        const source = this.scope.typeOf(node.source) ?? null;
        if (!source) this.waits.add(node.source);
        return this.revised([source && { ...source, rows: null }]);
      }
      case 'later':
        this.waits.add(node.id);
        return this.revised([null]);
    }
  }

  /** One type for all variants: a revision keeps the dimension. */
  private revised(types: readonly (Type | null)[]): Findings {
    const base = types.find((type) => type !== null) ?? null;
    const isSound = types.map((type) => type !== null);
    let merged = base;
    for (const [i, type] of types.entries()) {
      if (type === base || !type || !base) continue;
      if (!sameKind(base, type)) {
        const at = this.variantSpan(i);
        const name = this.node.name ?? this.node.id;
        const [kept, found] = [describeType(name, base), describeType('', type).trim()];
        const words = unitWords.differentInRevision(name, kept.slice(name.length + 1), found);
        this.problems.push(problem('units/mismatch', at, words, { subject: name }));
        isSound[i] = false;
      } else if (
        merged?.kind === 'quantity' &&
        type.kind === 'quantity' &&
        base.kind === 'quantity'
      ) {
        merged = { ...merged, rev: merged.rev || type.rev, hz: merged.hz || type.hz };
        if (this.turnsOtherwise(base, type, i)) isSound[i] = false;
      }
    }
    return this.findings(merged, [], isSound);
  }

  /** 60 rpm cannot be revised to 10 Hz: nothing says what the hertz count. */
  private turnsOtherwise(base: QuantityType, type: QuantityType, variant: number): boolean {
    const { name, id } = this.node;
    const { remark } = angleRemarkOfPair(base, type, [name ?? id, 'This revision']);
    if (remark?.severity !== 'error') return false;
    this.problems.push(
      problem(remark.code, this.variantSpan(variant), remark.words, { subject: name })
    );
    return true;
  }

  private findings(
    type: Type | null,
    sides: readonly (QuantityType | null)[],
    isVariantSound: readonly boolean[]
  ): Findings {
    // prettier-ignore
    const subject = this.node.kind === 'limit' ? this.node.label : this.node.name;
    const problems = this.problems.map((found) => (found.subject ? found : { ...found, subject }));
    return { node: this.node, type, sides, isVariantSound, problems, waitsFor: [...this.waits] };
  }

  private variantSpan(index: number): Span {
    const variant = this.node.variants[index];
    let parsed: Parsed | null = null;
    if (variant && 'expression' in variant) parsed = variant.expression;
    if (variant && 'value' in variant) parsed = (variant as InputVariant).value;
    return parsed ? spanOf(parsed.cut) : { line: variant?.line ?? 0, from: 1, to: 2 };
  }

  /** Type of an expression of this node; names that are missing or wait are noted. */
  private typeOf(
    parsed: Parsed,
    extra: ReadonlySet<string> = new Set()
  ): { type: Type | null; check: ExpressionCheck } {
    const check = new ExpressionCheck(this.scope, parsed.cut);
    const { tree, cut } = parsed;
    if (!tree) return { type: null, check };
    const missing = unknownNames(tree, cut, this.model, extra);
    this.problems.push(...missing);
    if (missing.length > 0) return { type: null, check };
    this.noteWaiting(tree, extra);
    const type = check.type(tree);
    this.problems.push(...check.problems.splice(0));
    return { type, check };
  }

  private noteWaiting(tree: Expression, extra: ReadonlySet<string>): void {
    visit(tree, (node, bound) => {
      if (node.kind === 'call') this.noteWaitingBody(node.callee);
      if (node.kind !== 'name' || bound.includes(node.name) || extra.has(node.name)) return;
      const used = this.model.byId.get(node.name);
      const isLater =
        !used &&
        node.name.includes('.') &&
        this.model.blockNames.has(node.name.split('.')[0] ?? '');
      if (isLater || (used && !this.scope.typeOf(node.name))) this.waits.add(node.name);
    });
  }

  /** Names that an own function reads wait for its callers too. */
  private noteWaitingBody(name: string): void {
    const open = new Set([name]);
    for (const callee of open) {
      const own = this.model.byId.get(callee);
      if (own?.kind !== 'function') continue;
      for (const used of own.uses) {
        const node = this.model.byId.get(used);
        if (node?.kind === 'function') open.add(used);
        else if (node && !this.scope.typeOf(used)) this.waits.add(used);
      }
    }
  }

  /** Type of an expression as the row shows it: in the unit asked for, angle settled. */
  private shownType(
    parsed: Parsed,
    unit: Unit | null,
    unitFailed: boolean,
    extra?: ReadonlySet<string>
  ): Type | null {
    // prettier-ignore
    const { type, check } = this.typeOf(parsed, extra);
    if (!type || !parsed.tree) return null;
    if (unitFailed) return null;
    if (type.kind !== 'quantity') {
      if (!unit) return type;
      check.asQuantity(parsed.tree, type);
      this.problems.push(...check.problems.splice(0));
      return null;
    }
    if (unit) {
      const shown = check.shownIn(parsed.tree, type, unit);
      this.problems.push(...check.problems.splice(0));
      return shown && { ...shown, literal: false, literalZero: false };
    }
    return this.shownAsItIs(parsed.tree, type, check);
  }

  private shownAsItIs(tree: Expression, type: QuantityType, check: ExpressionCheck): Type | null {
    const settled = settleAngle(type);
    const a = angleOf(settled.dimension);
    const dropped = isRate(settled.dimension) || dropAngle(settled.dimension).key === 's' ? a : 0;
    const target = { angle: dropped, asked: 'shown', unit: null, rev: settled.rev } as const;
    const remark = angleRemark(settled, target, check.text(tree));
    if (remark) {
      check.report(remark.code, tree, remark.words, remark.severity);
      this.problems.push(...check.problems.splice(0));
      if (remark.severity === 'error') return null;
    }
    return { ...settled, piPower: 0, literal: false, literalZero: false };
  }

  private inputType(node: InputNode, variant: InputVariant): Type | null {
    if (variant.isUnknown) return variant.unit ? quantityIn(variant.unit) : plainNumber;
    if (variant.fitted !== null && this.isFit(variant.fitted)) {
      this.waits.add(variant.fitted);
      // Its kind is that of the base, which the fit's own check will hold it to.
      const base = node.variants[0];
      return base && base !== variant ? this.inputType(node, base) : null;
    }
    if (!variant.value?.tree) return null;
    const used = this.firstName(variant.value.tree);
    if (used) {
      const words = valueWords.notConstant(node.id, used);
      this.problems.push(
        problem('value/needs-a-value', spanOf(variant.value.cut), words, { subject: node.id })
      );
      return null;
    }
    const type = this.shownType(variant.value, variant.unit, false);
    if (type?.kind === 'quantity') this.toleranceAndRange(node, variant, type);
    return type;
  }

  private isFit(name: string): boolean {
    const block = name.slice(0, name.indexOf('.'));
    return this.model.blockNames.get(block)?.block === 'fit';
  }

  /** Type of what must be a constant: no name and no own function of the sheet. */
  private constantType(subject: string, parsed: Parsed): { readonly type: Type | null } {
    const used = parsed.tree && this.firstName(parsed.tree);
    if (!used) return this.typeOf(parsed);
    const words = valueWords.notConstantHere(parsed.cut.text, used);
    this.problems.push(problem('value/needs-a-value', spanOf(parsed.cut), words, { subject }));
    return { type: null };
  }

  /** The first name or own function of the sheet in an expression. */
  private firstName(tree: Expression): string | null {
    let name: string | null = null;
    visit(tree, (node, bound) => {
      if (name !== null) return;
      if (node.kind === 'call' && this.scope.functionOf(node.callee)) name = node.callee;
      if (node.kind !== 'name' || bound.includes(node.name)) return;
      const block = node.name.includes('.') ? node.name.split('.')[0] : undefined;
      if (this.model.byId.has(node.name) || this.model.blockNames.has(block ?? ''))
        name = node.name;
    });
    return name;
  }

  private toleranceAndRange(node: InputNode, variant: InputVariant, type: QuantityType): void {
    const { tolerance, within, value } = variant;
    const amount = tolerance?.amount;
    if (amount?.tree && value?.tree) {
      const found = this.constantType(node.id, amount);
      const isShare =
        amount.tree.kind === 'quantity' && amount.tree.unit.text === '%' && type.unit?.text !== '%';
      if (isShare && type.temperature === 'point') {
        const words = temperatureWords.percentOfPoint(node.id);
        this.problems.push(problem('temperature/scaled-point', spanOf(amount.cut), words));
      } else if (!isShare && found.type?.kind === 'quantity') {
        this.sameKindAs(type, value, found.type, amount);
      }
    }
    for (const end of within ? [within.low, within.high] : []) {
      const found = this.constantType(node.id, end);
      if (value && found.type?.kind === 'quantity') this.sameKindAs(type, value, found.type, end);
    }
  }

  /** A tolerance or an end of a range is of the kind of the value it belongs to. */
  private sameKindAs(type: QuantityType, value: Parsed, other: QuantityType, parsed: Parsed): void {
    pairOfCuts(this.scope, { parsed: value, type }, { parsed, type: other }, this.problems);
  }

  private formulaTypes(node: FormulaNode): (Type | null)[] {
    return node.variants.map((variant) => {
      const type = this.shownType(variant.expression, variant.unit, variant.unitFailed);
      return type && node.rows !== null ? { ...type, rows: node.rows } : type;
    });
  }

  private ownFunction(node: FunctionNode): Findings {
    const parameters = new Set(node.parameters);
    const isSound = node.variants.map(({ expression }) => {
      if (!expression.tree) return false;
      const missing = unknownNames(expression.tree, expression.cut, this.model, parameters);
      this.problems.push(...missing);
      return missing.length === 0;
    });
    for (const [i, name] of node.parameters.entries()) {
      const shadowed = this.model.lineOf.get(name);
      if (shadowed === undefined || node.entry?.kind !== 'function') continue;
      const cut = node.entry.parameters[i];
      if (!cut) continue;
      const words = nameWords.shadowsName(name, shadowed);
      this.problems.push(problem('line/duplicate-name', spanOf(cut), words, { severity: 'note' }));
    }
    return this.findings(null, [], isSound);
  }

  private limit(node: LimitNode): Findings {
    const types = node.variants.map((variant) => this.limitType(variant));
    if (node.close?.kind === 'within') this.constantType(node.label, node.close.amount);
    return this.findings(
      null,
      types,
      types.map((type) => type !== null)
    );
  }

  /** The sides of a limit must be of one kind; they are shown in the first side's unit. */
  private limitType(variant: LimitVariant): QuantityType | null {
    let first: { parsed: Parsed; type: QuantityType } | null = null;
    let all: QuantityType | null = null;
    for (const side of [...variant.sides, variant.tolerance]) {
      if (!side) continue;
      const { type, check } = this.typeOf(side);
      const quantity = type && side.tree ? check.asQuantity(side.tree, type) : null;
      this.problems.push(...check.problems.splice(0));
      if (!quantity || !side.tree) return null;
      if (quantity.rows !== null) {
        const words = unitWords.needsSingle('A limit', side.cut.text);
        this.problems.push(problem('units/mismatch', spanOf(side.cut), words));
        return null;
      }
      if (!first || !all) {
        first = { parsed: side, type: quantity };
        all = quantity;
        continue;
      }
      const both = pairOfCuts(this.scope, first, { parsed: side, type: quantity }, this.problems);
      if (!both) return null;
      all = {
        ...both,
        temperature:
          all.temperature === 'point' || quantity.temperature === 'point'
            ? 'point'
            : all.temperature
      };
    }
    return all;
  }

  private solveType(node: SolveNode): Type | null {
    const variant = node.variants[0];
    const unknown = this.model.byId.get(node.unknown);
    if (!variant) return null;
    if (!unknown) {
      const words = nameWords.unknownName(node.unknown);
      this.problems.push(problem('names/unknown', spanOf(node.unknownCut), words));
      return null;
    }
    if (unknown.kind !== 'input') {
      const words = solveWords.unknownIsNoInput(node.unknown);
      this.problems.push(problem('value/needs-a-value', spanOf(node.unknownCut), words));
      return null;
    }
    const choice = choiceBetween(node, this.model);
    if (choice !== null) {
      const words = solveWords.choiceBetween(node.id, choice, node.unknown);
      this.problems.push(problem('value/needs-a-value', spanOf(node.unknownCut), words));
      return null;
    }
    const type = this.scope.typeOf(node.unknown);
    if (!type) this.waits.add(node.unknown);
    const [left, right] = [this.typeOf(variant.left), this.typeOf(variant.right)];
    if (left.type?.kind !== 'quantity' || right.type?.kind !== 'quantity') return null;
    const both = pairOfCuts(
      this.scope, { parsed: variant.left, type: left.type }, { parsed: variant.right, type: right.type },
      this.problems
    ); // prettier-ignore
    if (!both || type?.kind !== 'quantity') return null;
    const hasRange =
      (variant.low && variant.high) || unknown.variants.every((each) => each.within !== null);
    if (!hasRange) {
      const words = solveWords.needsRange(node.unknown);
      this.problems.push(problem('value/needs-a-value', spanOf(node.unknownCut), words));
      return null;
    }
    for (const end of [variant.low, variant.high]) {
      if (!end) continue;
      const found = this.typeOf(end);
      if (found.type?.kind !== 'quantity') return null;
      const matched = pairOfCuts(
        this.scope, { parsed: end, type: found.type }, { parsed: end, type }, this.problems
      ); // prettier-ignore
      if (!matched) return null;
    }
    return { ...type, literal: false, literalZero: false };
  }

  private choose(node: ChooseNode): Findings {
    const isSound = node.variants.map((variant) => this.isChoiceSound(node, variant));
    return this.findings(isSound[0] ? plainNumber : null, [], isSound);
  }

  private isChoiceSound(node: ChooseNode, variant: ChooseVariant): boolean {
    let isSound = node.rows > 0;
    for (const condition of variant.conditions) {
      if (condition.kind === 'words') {
        const column = this.model.byId.get(`${node.table}.${condition.column}`);
        if (column?.kind === 'column' && column.isBroken) {
          isSound = false;
          continue;
        }
        if (column?.kind === 'column' && column.numbers === null) continue;
        const words = column
          ? chooseWords.columnOfNumbers(condition.column)
          : nameWords.unknownName(condition.column);
        this.pushAt(
          problem(column ? 'units/mismatch' : 'names/unknown', spanOf(condition.cut), words),
          condition.line
        );
        isSound = false;
        continue;
      }
      const { type } = this.typeAtLine(condition.test, condition.line);
      if (type?.kind === 'truth') continue;
      isSound = false;
      if (!type) continue;
      const words = unitWords.needsTruth('A condition', condition.test.cut.text);
      this.pushAt(problem('units/mismatch', spanOf(condition.test.cut), words), condition.line);
    }
    if (variant.preference) {
      const { column, line } = variant.preference;
      const { type } = this.typeAtLine(column, line);
      if (type?.kind !== 'quantity' || type.rows === null) {
        isSound = false;
        if (type) {
          const words = unitWords.needsColumn(variant.preference.sense, column.cut.text);
          this.pushAt(problem('units/mismatch', spanOf(column.cut), words), line);
        }
      }
    }
    if (variant.take && !node.rowNames.includes(variant.take.row)) {
      const words = chooseWords.rowUnknown(variant.take.row, node.rowNames);
      this.pushAt(problem('choose/none-fits', spanOf(variant.take.cut), words), variant.take.line);
      isSound = false;
    }
    return isSound;
  }

  /** Entries of a choose block stand below its fence; their problems are moved there. */
  private typeAtLine(parsed: Parsed, line: number): { type: Type | null } {
    const before = this.problems.length;
    const { type } = this.typeOf(parsed);
    for (const found of this.problems.splice(before)) this.pushAt(found, line);
    return { type };
  }

  private pushAt(found: Problem, line: number): void {
    this.problems.push({ ...found, at: { ...found.at, line: found.at.line + line } });
  }
}

/** Two expressions from different cuts side by side; the problem stands at the second. */
function pairOfCuts(
  scope: CheckScope,
  first: { readonly parsed: Parsed; readonly type: QuantityType },
  second: { readonly parsed: Parsed; readonly type: QuantityType },
  problems: Problem[]
): QuantityType | null {
  // prettier-ignore
  const [left, right] = [first.parsed.tree, second.parsed.tree];
  if (!left || !right) return null;
  // Both texts are put into one cut, so that each side is called by its own words.
  const text = `${first.parsed.cut.text}\n${second.parsed.cut.text}`;
  const offset = first.parsed.cut.text.length + 1;
  const joined: Cut = { text, pieces: [{ offset: 0, line: 0, column: 1 }] };
  const check = new ExpressionCheck(scope, joined);
  const moved = { ...right, from: right.from + offset, to: right.to + offset };
  const both = check.pair(left, first.type, moved, second.type, 'compared');
  const at = spanOf(second.parsed.cut);
  for (const found of check.problems) problems.push({ ...found, at });
  return both;
}

function sameKind(base: Type, type: Type): boolean {
  if (base.kind !== type.kind) return false;
  if (base.kind !== 'quantity' || type.kind !== 'quantity') return true;
  if (type.literalZero && type.dimension === plain) return true;
  return dropAngle(base.dimension) === dropAngle(type.dimension) && base.rows === type.rows;
}

function columnType(node: SheetNode & { kind: 'column' }): Type {
  const rows = node.texts.length;
  if (!node.numbers) return { kind: 'text', rows };
  return { ...(node.unit ? quantityIn(node.unit) : plainNumber), rows };
}

/** A choice that the sides of a solve read and that depends on its unknown: it jumps, so no root is near. */
export function choiceBetween(node: SolveNode, model: Model): string | null {
  const from = (start: readonly string[]): ReadonlySet<string> => {
    const reached = new Set(start);
    for (const id of reached) for (const used of model.byId.get(id)?.uses ?? []) reached.add(used);
    return reached;
  };
  for (const id of from(node.uses.filter((name) => name !== node.unknown))) {
    if (model.byId.get(id)?.kind === 'choose' && from([id]).has(node.unknown)) return id;
  }
  return null;
}
