// A choice from a table: its conditions, derived columns, preference and pinned row as one node, and a
// node for every value that the chosen row gives. Inside the block a bare name may be a column; it is
// written out as TABLE.column (or as the derived column's own id) before anything is checked.

import type { Block } from '#lib/document/index.ts';
import type { Expression } from '#lib/language/index.ts';
import { nameWords, problem, shiftProblem, sheetWords, type Problem } from '#lib/problem/index.ts';
import { canonicalName, spanOf, type Cut } from '#lib/text/index.ts';
import type {
  ChooseCondition, ChooseNode, ChooseVariant, ColumnNode, FormulaNode, Parsed, PickNode, SheetNode
} from './node.ts'; // prettier-ignore
import type { EntryReader } from './reader.ts';
import { usesOf } from './uses.ts';

/** Id of a derived column of a choice; `CHOICE.column` is its value in the chosen row. */
export const derivedId = (choice: string, column: string): string => `${choice}#${column}`;

/** A node of a choose block and the line, from 0 at the fence, that its own lines count from. */
export interface ChooseBlockNode {
  readonly node: SheetNode;
  readonly line: number;
}

/**
 * The nodes of one choose block: derived columns, the choice, its values.
 *
 * @param isTableKnown  the table is a block of the sheet, though it may have no column to read
 */
export function chooseNodes(
  choice: string,
  table: string,
  block: Block,
  columns: readonly ColumnNode[],
  reader: EntryReader,
  sheetNames: ReadonlyMap<string, SheetNode>,
  isTableKnown: boolean
): readonly ChooseBlockNode[] {
  // prettier-ignore
  return new ChooseReader(
    choice, table, block, columns, reader, sheetNames, isTableKnown
  ).nodes(); // prettier-ignore
}

class ChooseReader {
  private readonly problems: Problem[] = [];
  private readonly ids = new Map<string, string>();
  private readonly choice: string;
  private readonly table: string;
  private readonly block: Block;
  private readonly columns: readonly ColumnNode[];
  private readonly reader: EntryReader;
  private readonly sheetNames: ReadonlyMap<string, SheetNode>;
  private readonly isTableKnown: boolean;

  constructor(
    choice: string, table: string, block: Block, columns: readonly ColumnNode[],
    reader: EntryReader, sheetNames: ReadonlyMap<string, SheetNode>, isTableKnown: boolean
  ) {
    this.choice = choice;
    this.table = table;
    this.block = block;
    this.columns = columns;
    this.reader = reader;
    this.sheetNames = sheetNames;
    this.isTableKnown = isTableKnown;
  } // prettier-ignore

  nodes(): readonly ChooseBlockNode[] {
    if (this.columns.length === 0) return [{ node: this.withoutTable(), line: 0 }];
    for (const column of this.columns) this.ids.set(column.column, column.id);
    for (const { entry } of this.block.entries) {
      if (entry.kind === 'calculation') {
        const name = canonicalName(entry.name.text);
        this.ids.set(name, derivedId(this.choice, name));
      }
    }
    const derived = this.derivedColumns();
    const variants = this.chooseVariants();
    const rowNames = this.columns.find((column) => column.numbers === null)?.texts ??
      this.columns[0]?.texts ?? []; // prettier-ignore
    const uses = new Set<string>();
    for (const variant of variants) {
      for (const condition of variant.conditions) {
        if (condition.kind === 'test') for (const name of usesOf([condition.test])) uses.add(name);
      }
      if (variant.preference)
        for (const name of usesOf([variant.preference.column])) uses.add(name);
    }
    const choose: ChooseNode = {
      kind: 'choose', id: this.choice, name: null, table: this.table, rowNames,
      rows: this.columns[0]?.texts.length ?? 0, entry: null, nameCut: this.block.head.name,
      variants, variantAt: this.reader.at(variants), problems: this.problems, isBroken: false, uses: [...uses]
    }; // prettier-ignore
    const picks = [...this.ids].map(([column, source]) => this.pick(column, source));
    return [...derived, ...[choose, ...picks].map((node) => ({ node, line: 0 }))];
  }

  /** A choice from a table that is not there, or that has a mistake: nothing in it can be read. */
  private withoutTable(): ChooseNode {
    const { from, name } = this.block.head;
    const problems: Problem[] = [];
    if (from && !this.isTableKnown) {
      problems.push(problem('names/unknown', spanOf(from), nameWords.unknownTable(this.table)));
    }
    const variant = {
      stage: null,
      line: 0,
      comment: null,
      conditions: [],
      preference: null,
      take: null
    };
    return {
      kind: 'choose', id: this.choice, name: null, table: this.table, rowNames: [], rows: 0,
      entry: null, nameCut: name, variants: [variant], variantAt: this.reader.at([variant]),
      problems, isBroken: this.isTableKnown, uses: []
    }; // prettier-ignore
  }

  private derivedColumns(): { readonly node: FormulaNode; readonly line: number }[] {
    const nodes: { readonly node: FormulaNode; readonly line: number }[] = [];
    for (const { line, entry } of this.block.entries) {
      if (entry.kind !== 'calculation') continue;
      const found: Problem[] = [];
      const name = canonicalName(entry.name.text);
      const variants = this.reader.formulaVariants(entry, name, found).map((variant) => ({
        ...variant,
        expression: this.resolve(variant.expression, found)
      }));
      for (const each of found) this.problems.push(shiftProblem(each, line));
      const node: FormulaNode = {
        kind: 'calc', rows: this.columns[0]?.texts.length ?? 0, id: derivedId(this.choice, name), name: null, entry: null, nameCut: null,
        variants, variantAt: this.reader.at(variants), problems: [], isBroken: false,
        uses: usesOf(variants.map((variant) => variant.expression))
      }; // prettier-ignore
      nodes.push({ node, line });
    }
    return nodes;
  }

  /** All entries of the block at each stage for which any of them is revised. */
  private chooseVariants(): readonly ChooseVariant[] {
    const stages = new Set<number>();
    for (const { entry, line } of this.block.entries) {
      const revisions = 'revisions' in entry ? entry.revisions : [];
      if (entry.kind === 'calculation') continue;
      for (const revision of revisions) {
        const found: Problem[] = [];
        const stage = this.reader.stageIndex(revision.stage, found);
        for (const each of found) this.problems.push(shiftProblem(each, line));
        if (stage !== null) stages.add(stage);
      }
    }
    const base = this.variantAt(null, true);
    return [base, ...[...stages].map((stage) => this.variantAt(stage, false))];
  }

  private variantAt(stage: number | null, isBase: boolean): ChooseVariant {
    const conditions: ChooseCondition[] = [];
    let preference: ChooseVariant['preference'] = null;
    let take: ChooseVariant['take'] = null;
    const found: Problem[] = [];
    for (const { entry, line } of this.block.entries) {
      const local: Problem[] = [];
      switch (entry.kind) {
        case 'condition': {
          const cut = this.holding(entry.base, entry.revisions, stage);
          conditions.push({
            kind: 'test',
            test: this.resolve(this.reader.parse(cut, local), local),
            line
          });
          break;
        }
        case 'text-condition':
          conditions.push({
            kind: 'words', column: canonicalName(entry.column.text), words: entry.words,
            cut: entry.column, line
          }); // prettier-ignore
          break;
        case 'preference': {
          const { sense, column, weight, revisions } = entry;
          const held = this.holding({ sense, column, weight }, revisions, stage);
          if (preference) {
            const words = sheetWords.notComputedYet('second preference of a choose');
            local.push(
              problem('sheet/not-computed-yet', spanOf(held.column), words, { severity: 'note' })
            );
            break;
          }
          preference = {
            sense: held.sense,
            column: this.resolve(this.reader.parse(held.column, local), local),
            line
          };
          break;
        }
        case 'take': {
          const cut = this.holding(entry.row, entry.revisions, stage);
          take = { row: cut.text.replace(/^"|"$/gu, ''), cut, line };
          break;
        }
        default:
          break;
      }
      for (const each of local) found.push(shiftProblem(each, line));
    }
    if (isBase) this.problems.push(...found);
    return { stage, line: 0, comment: null, conditions, preference, take };
  }

  /** The value of an entry at a stage: of the nearest stage of its lineage that revises it. */
  private holding<T>(
    base: T,
    revisions: readonly { readonly stage: Cut; readonly value: T }[],
    stage: number | null
  ): T {
    // prettier-ignore
    if (stage === null) return base;
    const { stages } = this.reader.context;
    for (const ancestor of stages[stage]?.lineage ?? []) {
      const id = stages[ancestor]?.id;
      const revision = revisions.find((each) => each.stage.text === id);
      if (revision) return revision.value;
    }
    return base;
  }

  private pick(column: string, source: string): PickNode {
    const id = `${this.choice}.${column}`;
    return {
      kind: 'pick', id, name: id, choice: this.choice, source, entry: null, nameCut: null,
      variants: [{ stage: null, line: 0, comment: null }],
      variantAt: this.reader.context.stages.map(() => 0), problems: [], isBroken: false, uses: [this.choice, source]
    }; // prettier-ignore
  }

  /** Bare names of columns written out. */
  private resolve(parsed: Parsed, problems: Problem[]): Parsed {
    if (!parsed.tree) return parsed;
    let isAmbiguous = false;
    const tree = renamed(parsed.tree, (name, node) => {
      const id = this.ids.get(name);
      if (id === undefined) return name;
      if (this.sheetNames.has(name)) {
        isAmbiguous = true;
        const words = nameWords.ambiguousColumn(name, this.table);
        problems.push(
          problem('names/ambiguous-column', spanOf(parsed.cut, node.from, node.to), words)
        );
      }
      return id;
    });
    return { cut: parsed.cut, tree: isAmbiguous ? null : tree };
  }
}

/** The tree with its names replaced. */
function renamed(node: Expression, give: (name: string, node: Expression) => string): Expression {
  // prettier-ignore
  const again = (child: Expression): Expression => renamed(child, give);
  switch (node.kind) {
    case 'name':
      return { ...node, name: give(node.name, node) };
    case 'number':
    case 'quantity':
      return node;
    case 'sign':
    case 'not':
      return { ...node, operand: again(node.operand) };
    case 'binary':
    case 'logic':
      return { ...node, left: again(node.left), right: again(node.right) };
    case 'relation':
      return { ...node, operands: node.operands.map(again) };
    case 'conditional':
      return { ...node, test: again(node.test), yes: again(node.yes), no: again(node.no) };
    case 'call':
      return { ...node, args: node.args.map(again) };
    case 'group':
      return { ...node, inner: again(node.inner) };
  }
}
