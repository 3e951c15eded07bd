// A definition to its instructions, on the registers of the sheet. A solve is lowered with the chain
// between its unknown and its two sides written into a program of its own, so that the sheet's own
// formulas are re-run as they stand.

import {
  Builder,
  Lowering,
  type Operand,
  type RegisterSpace,
  type Segment
} from '#lib/lanes/index.ts';
import type { NodeCheck } from '#lib/check/index.ts';
import type {
  ChooseNode, ChooseVariant, FormulaVariant, LimitVariant, SheetNode, SolveVariant
} from '#lib/model/index.ts'; // prettier-ignore

/** Where a node's values stand. Limits have one place a side; a choice its index first, then its scores. */
export interface Place {
  readonly register: number;
  /** null: a single value. */
  readonly rows: number | null;
}

/** What compiling needs to know of the sheet at the stages of one group. */
export interface CompileScope {
  readonly space: RegisterSpace;
  nodeOf(id: string): SheetNode | undefined;
  checkOf(id: string): NodeCheck | undefined;
  placesOf(id: string): readonly Place[] | undefined;
  /** Index of the variant that holds. */
  variantOf(node: SheetNode): number;
  /** Nodes that depend on `unknown` and that `targets` depend on, in order of dependence. */
  chainBetween(unknown: string, targets: readonly string[]): readonly SheetNode[];
  /** Low and high end of an input's own range, as registers. */
  rangeOf(input: string): readonly [Place, Place] | null;
}

/** The instructions of a node; `statusNumber` is where its lanes' states go. */
export function compileNode(
  node: SheetNode,
  places: readonly Place[],
  statusNumber: number,
  scope: CompileScope
): Segment {
  // prettier-ignore
  return new Compilation(node, places, statusNumber, scope).run();
}

class Compilation {
  private readonly builder: Builder;
  private readonly node: SheetNode;
  private readonly places: readonly Place[];
  private readonly statusNumber: number;
  private readonly scope: CompileScope;

  constructor(
    node: SheetNode,
    places: readonly Place[],
    statusNumber: number,
    scope: CompileScope
  ) {
    this.builder = new Builder(scope.space);
    this.node = node;
    this.places = places;
    this.statusNumber = statusNumber;
    this.scope = scope;
  }

  run(): Segment {
    const { node } = this;
    const variant = node.variants[this.scope.variantOf(node)];
    switch (node.kind) {
      case 'calc':
        this.formula(variant as FormulaVariant);
        break;
      case 'limit':
        this.limit(variant as LimitVariant);
        break;
      case 'solve':
        this.solve(node.unknown, variant as SolveVariant);
        break;
      case 'choose':
        this.choose(node, variant as ChooseVariant);
        break;
      case 'pick':
        this.pick(node.choice, node.source);
        break;
      default:
        throw new RangeError(`a node of kind ${node.kind} has no instructions`);
    }
    return this.builder.segment();
  }

  private lowering(cut: Parameters<Lowering['lower']>[1]): Lowering {
    if (!cut) throw new RangeError('an expression without its text');
    return new Lowering(this.builder, loweringScope(this.scope), cut);
  }

  /** One end a node: of several places, all but the last are checked before it. */
  private finish(places: readonly Place[] = this.places): void {
    for (const [i, { register, rows }] of places.entries()) {
      if (i < places.length - 1) this.builder.append('check', -1, register, -1, 0, rows, null, -1);
      else this.builder.append('end', register, -1, this.statusNumber, -1, rows, null, -1);
    }
  }

  private place(index = 0): Place {
    const place = this.places[index];
    if (!place) throw new RangeError(`${this.node.id} has no place ${index}`);
    return place;
  }

  private formula({ expression }: FormulaVariant): void {
    const { tree, cut } = expression;
    if (!tree) throw new RangeError(`${this.node.id} has no tree`);
    const place = this.place();
    let value = this.lowering(cut).lower(tree);
    const type = this.scope.checkOf(this.node.id)?.type;
    if (type?.kind === 'quantity' && type.temperature === 'point') {
      value = this.builder.element('notNegative', [value], { node: tree, cut }, -1);
    }
    value = this.builder.spreadTo(value, place.rows, { node: tree, cut }, -1);
    this.builder.moveTo(place.register, value, { node: tree, cut });
    this.finish();
  }

  private limit(variant: LimitVariant): void {
    let index = 0;
    for (const side of [...variant.sides, variant.tolerance]) {
      if (!side?.tree) continue;
      const value = this.lowering(side.cut).lower(side.tree);
      this.builder.moveTo(this.place(index++).register, value, { node: side.tree, cut: side.cut });
    }
    this.finish(this.places.slice(0, index));
  }

  private solve(unknown: string, variant: SolveVariant): void {
    const { left, right } = variant;
    if (!left.tree || !right.tree) throw new RangeError(`${this.node.id} has no tree`);
    const outer = this.lowering(left.cut);
    const ends = [variant.low, variant.high].map((end) =>
      end?.tree ? outer.lower(end.tree, end.cut) : null
    );
    const own = this.scope.rangeOf(unknown);
    const [low, high] = ends.map((end, i) => {
      if (end) return end;
      const place = own?.[i === 0 ? 0 : 1];
      if (!place) throw new RangeError(`${unknown} has no range`);
      return definition(place);
    });
    if (!low || !high) throw new RangeError(`${this.node.id} has no range`);
    const targets = this.node.uses.filter((name) => name !== unknown);
    const chain = this.scope.chainBetween(unknown, targets);
    const called = outer.nest(
      unknown,
      (inner) => this.difference(inner, variant, chain),
      'unknown'
    );
    const value = outer.callNested('solve', low, high, called, left.tree);
    this.builder.moveTo(this.place().register, value, { node: left.tree, cut: left.cut });
    this.finish();
  }

  /** left - right, with the chain of definitions computed anew from the unknown on. */
  private difference(inner: Lowering, variant: SolveVariant, chain: readonly SheetNode[]): Operand {
    for (const node of chain) this.chainLink(inner, node);
    const { left, right } = variant;
    if (!left.tree || !right.tree) throw new RangeError(`${this.node.id} has no tree`);
    const a = inner.lower(left.tree, left.cut);
    const b = inner.lower(right.tree, right.cut);
    return inner.builder.element('subtract', [a, b], { node: left.tree, cut: left.cut }, -1);
  }

  private chainLink(inner: Lowering, node: SheetNode): void {
    const variant = node.variants[this.scope.variantOf(node)];
    if (node.kind === 'calc') {
      const { tree, cut } = (variant as FormulaVariant).expression;
      if (!tree) throw new RangeError(`${node.id} has no tree`);
      inner.define(node.id, inner.lower(tree, cut), { node: tree, cut });
      return;
    }
    if (node.kind === 'solve') {
      const { left, right, low, high } = variant as SolveVariant;
      if (!left.tree || !right.tree) throw new RangeError(`${node.id} has no tree`);
      const [from, to] = ([low, high] as const).map((end, i) =>
        end?.tree ? inner.lower(end.tree, end.cut) : inner.operandOf(rangeEnd(node.unknown, i))
      );
      if (!from || !to) throw new RangeError(`${node.id} has no range`);
      const targets = node.uses.filter((name) => name !== node.unknown);
      const chain = this.scope.chainBetween(node.unknown, targets);
      const called = inner.nest(
        node.unknown, (deeper) => this.difference(deeper, variant as SolveVariant, chain), 'unknown'
      ); // prettier-ignore
      const value = inner.callNested('solve', from, to, called, left.tree);
      inner.define(node.id, value, { node: left.tree, cut: left.cut });
      return;
    }
    throw new RangeError(`${node.id} cannot stand between an unknown and its equation`);
  }

  /** Places: index, index by ranking alone, score column, then a truth column for each condition. */
  private choose(node: ChooseNode, variant: ChooseVariant): void {
    const rows = node.rows;
    const { builder } = this;
    const columns: Operand[] = [];
    for (const [i, condition] of variant.conditions.entries()) {
      const place = this.place(3 + i);
      if (condition.kind === 'words') {
        const column = this.scope.nodeOf(`${node.table}.${condition.column}`);
        const texts = column?.kind === 'column' ? column.texts : [];
        for (let row = 0; row < rows; row++) {
          const holds = builder.constant(texts[row] === condition.words ? 1 : 0);
          builder.append('copy', place.register + row, holds.register, -1, -1, null, null, -1);
        }
      } else if (condition.test.tree) {
        const { tree, cut } = condition.test;
        const value = builder.spreadTo(
          this.lowering(cut).lower(tree),
          rows,
          { node: tree, cut },
          -1
        );
        builder.moveTo(place.register, value, { node: tree, cut });
      }
      columns.push(definition({ register: place.register, rows }));
    }
    let mask: Operand = builder.spreadTo(builder.constant(1), rows, null, -1);
    for (const column of columns) mask = builder.element('and', [mask, column], null, -1);
    const score = this.place(2);
    const preference = variant.preference;
    if (preference?.column.tree) {
      const { tree, cut } = preference.column;
      const value = this.lowering(cut).lower(tree);
      const signed = preference.sense === 'most'
        ? builder.element('negate', [value], { node: tree, cut }, -1)
        : value; // prettier-ignore
      builder.moveTo(score.register, signed, { node: tree, cut });
    } else {
      builder.append(
        'spread',
        score.register,
        builder.constant(0).register,
        -1,
        -1,
        rows,
        null,
        -1
      );
    }
    const ranked = this.place(1);
    builder.append('choose', ranked.register, mask.register, score.register, -1, rows, null, -1);
    builder.release(mask);
    const taken = variant.take ? node.rowNames.indexOf(variant.take.row) : -1;
    const index = taken >= 0 ? builder.constant(taken).register : ranked.register;
    builder.append('copy', this.place().register, index, -1, -1, null, null, -1);
    builder.append('end', this.place().register, -1, this.statusNumber, -1, null, null, -1);
  }

  private pick(choice: string, source: string): void {
    const [index] = this.scope.placesOf(choice) ?? [];
    const [column] = this.scope.placesOf(source) ?? [];
    if (!index) throw new RangeError(`${this.node.id} has nothing to pick from`);
    if (!column) {
      // A text is looked up where it is shown; here stands the number of its row.
      this.builder.append('copy', this.place().register, index.register, -1, -1, null, null, -1);
      return this.finish();
    }
    this.builder.append(
      'pick', this.place().register, column.register, index.register, -1, column.rows, null, -1
    ); // prettier-ignore
    this.finish();
  }
}

/** How expressions of this sheet find their names. */
export function loweringScope(scope: CompileScope): ConstructorParameters<typeof Lowering>[1] {
  const tables = new Set<number>();
  return {
    operandOf: (name) => {
      const end = rangeEndOf.exec(name);
      const range = end?.[1] ? scope.rangeOf(end[1]) : null;
      if (end && range) return definition(end[2] === 'low' ? range[0] : range[1]);
      const place = scope.placesOf(name)?.[0];
      if (!place) return undefined;
      if (scope.nodeOf(name)?.kind === 'column') tables.add(place.register);
      return definition(place);
    },
    functionOf: (name) => {
      const node = scope.nodeOf(name);
      if (node?.kind !== 'function') return undefined;
      const variant = node.variants[scope.variantOf(node)];
      const tree = variant?.expression.tree;
      return tree ? { parameters: node.parameters, tree, cut: variant.expression.cut } : undefined;
    },
    isTable: (operand) => tables.has(operand.register)
  };
}

function definition(place: Place): Operand {
  return { register: place.register, rows: place.rows, kind: 'definition', value: NaN };
}

/** How a nested program asks for an end of an input's own range; no name of a sheet has a space. */
const rangeEnd = (input: string, index: number): string =>
  `${input} within ${index === 0 ? 'low' : 'high'}`;
const rangeEndOf = /^(\S+) within (low|high)$/;
