// A worksheet under edit. Each text given to a session is read, checked and run as far as it differs
// from the one before; what comes out is complete every time.

import { SheetChecker, type CheckedModel } from '#lib/check/index.ts';
import { createReader, type Reader } from '#lib/document/index.ts';
import {
  dependencyOrder, ModelBuilder, usesAt, type InputNode, type Model, type Order, type SheetNode,
  type TableFiles
} from '#lib/model/index.ts'; // prettier-ignore
import { constantValue } from '#lib/lanes/index.ts';
import { lookupUnit } from '#lib/units/index.ts';
import { Evaluation } from './evaluation.ts';
import { StageGroup, type WorkCount } from './group.ts';
import { evaluateInput, type InputEvaluation, type InputFigures } from './inputs.ts';
import { readOverrides, type Override, type OverrideFigures } from './overrides.ts';
import { noRows, presentSheet, type KeptRows } from './present.ts';
import type { Results } from './results.ts';
import { FirstOrder, type Correlated, type UncertainInput } from './uncertainty.ts';
import type { NodeCheck } from '#lib/check/index.ts';

export interface ComputeOptions {
  /** Texts of the files that tables are read from, by path as the sheet writes it. */
  readonly files?: ReadonlyMap<string, string>;
  /** Other values for inputs; the text is not touched. */
  readonly overrides?: readonly Override[];
}

const noFiles: TableFiles = new Map();

/** Keeps what was worked out for one worksheet, from one edit to the next. */
export class Session {
  private readonly reader: Reader = createReader();
  private readonly builder = new ModelBuilder();
  private readonly checker = new SheetChecker();
  private readonly inputs = new WeakMap<
    SheetNode,
    { check: NodeCheck; evaluation: InputEvaluation }
  >();
  private groups = new Map<string, StageGroup>();
  private kept: KeptRows = noRows();
  private structure: Structure | null = null;

  /** Segments compiled and run so far, over all groups of stages. */
  get work(): WorkCount {
    const total: WorkCount = { compiled: 0, run: 0 };
    for (const group of this.groups.values()) {
      total.compiled += group.work.compiled;
      total.run += group.work.run;
    }
    return total;
  }

  /**
   * Results of a text.
   *
   * Cost   proportional to what an edit reaches, beside one pass over the lines and the definitions
   * Fails  never by what the text holds: mistakes are problems in the results
   */
  update(text: string, options: ComputeOptions = {}): Results {
    const model = this.builder.build(this.reader.read(text), options.files ?? noFiles);
    const structure = this.structureOf(model);
    const checked = this.checker.check(
      model, structure.checkOrder, structure.isTwice, !structure.isNew
    ); // prettier-ignore
    const overrides = readOverrides(options.overrides ?? [], checked);
    const evaluations = this.evaluateInputs(checked);
    const groups = this.groupsOf(model, structure);
    const ran = new Set<string>();
    for (const [group, order] of groups) {
      const { touched } = group.update({
        checked,
        sorted: order.sorted,
        inCircle: order.inCircle,
        figuresOf: (id, lane) =>
          figuresAt(model, id, group.stages[lane] ?? 0, evaluations, overrides.figures)
      });
      for (const id of touched) ran.add(id);
    }
    const { money, units, digits } = model.worksheet.frontMatter;
    const evaluation = new Evaluation(
      checked,
      [...groups.keys()],
      firstOrders(checked, groups, evaluations, overrides.figures),
      structure.inCircle,
      structure.usedBy,
      structure.hasNamesLikeUnits,
      { family: units, digits, money }
    );
    evaluation.settle(structure.settleOrder);
    const presented = presentSheet(evaluation, structure.circles, {
      ran,
      kept: this.kept,
      isRestructured: structure.isNew,
      evaluations,
      problems: overrides.problems
    });
    this.kept = presented.kept;
    return presented.results;
  }

  /** Orders and circles, kept while no definition uses other names than before. */
  private structureOf(model: Model): Structure {
    const before = this.structure;
    if (before && isSameStructure(before.nodes, model)) {
      const byNow = (node: SheetNode): SheetNode => model.byId.get(node.id) ?? node;
      this.structure = {
        ...before,
        nodes: model.nodes,
        isNew: false,
        checkOrder: before.checkOrder.map(byNow),
        settleOrder: before.settleOrder.map(byNow),
        orders: before.orders.map((order) => ({ ...order, sorted: order.sorted.map(byNow) }))
      };
      return this.structure;
    }
    this.structure = structureOf(model);
    return this.structure;
  }

  private evaluateInputs(checked: CheckedModel): ReadonlyMap<string, InputEvaluation> {
    const evaluations = new Map<string, InputEvaluation>();
    for (const node of checked.model.nodes) {
      if (node.kind !== 'input') continue;
      const check = checked.checks.get(node.id);
      if (!check) continue;
      let known = this.inputs.get(node);
      if (!known || known.check !== check) {
        known = { check, evaluation: evaluateInput(node, check) };
        this.inputs.set(node, known);
      }
      evaluations.set(node.id, known.evaluation);
    }
    return evaluations;
  }

  /** Stages that share every formula, each set as a group; groups are kept while their stages are. */
  private groupsOf(model: Model, structure: Structure): ReadonlyMap<StageGroup, Order> {
    const revised = model.nodes.filter((node) => node.kind !== 'input' && node.variants.length > 1);
    const stagesOf = new Map<string, number[]>();
    for (const { index } of model.stages) {
      const variants = revised.map((node) => node.variantAt[index]).join(',');
      const key = `${variants}|${structure.orderAt[index]}`;
      const stages = stagesOf.get(key);
      if (stages) stages.push(index);
      else stagesOf.set(key, [index]);
    }
    const groups = new Map<StageGroup, Order>();
    const kept = new Map<string, StageGroup>();
    for (const stages of stagesOf.values()) {
      const key = stages.join(',');
      const group = this.groups.get(key) ?? new StageGroup(stages);
      kept.set(key, group);
      const order = structure.orders[structure.orderAt[stages[0] ?? 0] ?? 0];
      if (order) groups.set(group, order);
    }
    this.groups = kept;
    return groups;
  }
}

/** Reads, checks and runs a worksheet once. */
export function compute(text: string, options: ComputeOptions = {}): Results {
  return new Session().update(text, options);
}

interface Structure {
  readonly nodes: readonly SheetNode[];
  readonly isNew: boolean;
  readonly checkOrder: readonly SheetNode[];
  readonly isTwice: boolean;
  /** Every node once, those in circles included. */
  readonly settleOrder: readonly SheetNode[];
  /** One for all stages, or one a stage where a revised formula makes them differ. */
  readonly orders: readonly Order[];
  readonly orderAt: readonly number[];
  readonly circles: readonly { readonly path: readonly string[]; readonly stage: number | null }[];
  readonly inCircle: ReadonlySet<string>;
  readonly usedBy: ReadonlyMap<string, readonly string[]>;
  readonly hasNamesLikeUnits: boolean;
}

function structureOf(model: Model): Structure {
  const all = dependencyOrder(model.nodes, model.byId, (node) => node.uses);
  const usedBy = usersOf(model);
  const shared = {
    nodes: model.nodes,
    isNew: true,
    usedBy,
    hasNamesLikeUnits: model.nodes.some(({ name }) => name !== null && isUnitName(name, model)),
    settleOrder: [...all.sorted, ...model.nodes.filter((node) => all.inCircle.has(node.id))]
  };
  const isPlain =
    all.circles.length === 0 ||
    model.nodes.every((node) => node.kind === 'input' || node.variants.length === 1);
  if (isPlain) {
    return {
      ...shared, checkOrder: all.sorted, isTwice: false, orders: [all],
      orderAt: model.stages.map(() => 0), inCircle: all.inCircle,
      circles: all.circles.map((path) => ({ path, stage: null }))
    }; // prettier-ignore
  }
  const orders = model.stages.map(({ index }) =>
    dependencyOrder(model.nodes, model.byId, (node) => usesAt(node, index))
  );
  const circles = circlesAtStages(orders);
  const inCircle = new Set(orders.flatMap((order) => [...order.inCircle]));
  return {
    ...shared, checkOrder: orders[0]?.sorted ?? [], isTwice: true, orders, circles, inCircle,
    orderAt: model.stages.map(({ index }) => index)
  }; // prettier-ignore
}

/** A circle that several stages have is one circle, of no stage in particular. */
function circlesAtStages(orders: readonly Order[]): Structure['circles'] {
  const found = new Map<string, { path: readonly string[]; stage: number | null }>();
  for (const [stage, order] of orders.entries()) {
    for (const path of order.circles) {
      const key = path.join(' -> ');
      found.set(key, { path, stage: found.has(key) ? null : stage });
    }
  }
  return [...found.values()];
}

function isUnitName(name: string, model: Model): boolean {
  return lookupUnit(name, model.worksheet.frontMatter.money) !== null;
}

function isSameStructure(before: readonly SheetNode[], model: Model): boolean {
  if (before.length !== model.nodes.length) return false;
  return before.every((old, i) => {
    const node = model.nodes[i];
    if (node === old) return true;
    if (!node || node.id !== old.id || node.kind !== old.kind) return false;
    if (node.variants.length !== old.variants.length && node.kind !== 'input') return false;
    return (
      node.uses.length === old.uses.length && node.uses.every((name, k) => name === old.uses[k])
    );
  });
}

function usersOf(model: Model): ReadonlyMap<string, readonly string[]> {
  const users = new Map<string, string[]>();
  for (const node of model.nodes) {
    if (node.kind === 'limit') continue;
    for (const name of node.uses) {
      const list = users.get(name);
      if (list) list.push(node.id);
      else users.set(name, [node.id]);
    }
  }
  return users;
}

/** What an input is at a stage; an override stands before whatever is revised there. */
function figuresAt(
  model: Model,
  id: string,
  stage: number,
  evaluations: ReadonlyMap<string, InputEvaluation>,
  overrides: ReadonlyMap<string, OverrideFigures>
): InputFigures {
  // prettier-ignore
  const node = model.byId.get(id) as InputNode;
  const own = evaluations.get(id)?.figures[node.variantAt[stage] ?? 0];
  const figures = own ?? { value: NaN, state: 'error', standardUncertainty: 0, range: null };
  const tried = overrides.get(id)?.at(stage);
  return tried === undefined ? figures : { ...figures, value: tried, state: 'value' };
}

function firstOrders(
  checked: CheckedModel,
  groups: ReadonlyMap<StageGroup, Order>,
  evaluations: ReadonlyMap<string, InputEvaluation>,
  overrides: ReadonlyMap<string, OverrideFigures>
): ReadonlyMap<StageGroup, FirstOrder> {
  // prettier-ignore
  const { model } = checked;
  const correlations = model.correlations.flatMap(
    ({ first, second, coefficient }): Correlated[] => {
      if (!coefficient.tree) return [];
      const value = constantValue(coefficient.tree, coefficient.cut);
      return Math.abs(value) <= 1 ? [{ first, second, coefficient: value }] : [];
    }
  );
  const orders = new Map<StageGroup, FirstOrder>();
  for (const group of groups.keys()) {
    const inputs: UncertainInput[] = [];
    for (const id of evaluations.keys()) {
      const place = group.nodes.get(id)?.places[0];
      if (!place) continue;
      const standardUncertainty = group.stages.map(
        (stage) => figuresAt(model, id, stage, evaluations, overrides).standardUncertainty
      );
      if (standardUncertainty.some((u) => u > 0))
        inputs.push({ id, register: place.register, standardUncertainty });
    }
    if (inputs.length === 0) continue;
    const wanted = [...group.nodes.values()].flatMap(({ places, node }) =>
      node.kind === 'limit' ? places : places.slice(0, 1)
    );
    orders.set(group, new FirstOrder(group, inputs, correlations, wanted));
  }
  return orders;
}
