// From the entries of a worksheet to its nodes: expressions read, revisions put to stages, names and
// labels made unique. Nodes are kept by their entry, so that after an edit only what changed is new.

import type { Block, Entry, Placed, Worksheet } from '#lib/document/index.ts';
import {
  lineWords, problem, sheetWords, shiftProblem, type Problem, type Span
} from '#lib/problem/index.ts'; // prettier-ignore
import { canonicalName, spanOf, type Cut } from '#lib/text/index.ts';
import { chooseNodes, type ChooseBlockNode } from './choose.ts';
import type { ColumnNode, LaterNode, Parsed, SheetNode } from './node.ts';
import { EntryReader } from './reader.ts';
import { stageTree, type Stage } from './stages.ts';
import { columnNodes, tableText, type TableFiles } from './table.ts';

export interface Model {
  readonly worksheet: Worksheet;
  readonly stages: readonly Stage[];
  /** In file order; a name or label that is taken twice stands here once. */
  readonly nodes: readonly SheetNode[];
  readonly byId: ReadonlyMap<string, SheetNode>;
  /** Line of the file on which a node's entry begins. */
  readonly lineOf: ReadonlyMap<string, number>;
  /** Names of blocks (tables, choices, fits …) with the line of their fence. */
  readonly blockNames: ReadonlyMap<string, BlockName>;
  readonly correlations: readonly Correlation[];
  /** Of the form of lines and of expressions, with lines of the file. */
  readonly problems: readonly Problem[];
}

export interface BlockName {
  readonly line: number;
  readonly block: string;
  /** It has a mistake, and the names it would give are not known. */
  readonly isBroken?: boolean;
}

export interface Correlation {
  readonly first: string;
  readonly second: string;
  readonly coefficient: Parsed;
  readonly line: number;
  readonly cuts: readonly [Cut, Cut];
}

/** Builds models one after another, keeping the nodes of entries that did not change. */
export class ModelBuilder {
  private settings = '';
  private byEntry = new WeakMap<Entry, SheetNode>();
  private byBlock = new WeakMap<readonly Placed<Entry>[], ChooseParts>();

  build(worksheet: Worksheet, files: TableFiles): Model {
    const stages = stageTree(worksheet.frontMatter.stages);
    const ownFunctions = functionNamesOf(worksheet);
    const money = worksheet.frontMatter.money;
    const settings = JSON.stringify([
      money,
      stages.map((s) => [s.id, s.parent]),
      [...ownFunctions]
    ]);
    if (settings !== this.settings) {
      this.settings = settings;
      this.byEntry = new WeakMap();
      this.byBlock = new WeakMap();
    }
    const reader = new EntryReader({ money, stages, ownFunctions });
    return new Assembly(worksheet, stages, files, reader, this.byEntry, this.byBlock).model();
  }
}

interface ChooseParts {
  readonly key: string;
  readonly nodes: readonly ChooseBlockNode[];
}

/** Puts the nodes of all blocks together. */
class Assembly {
  private readonly nodes: SheetNode[] = [];
  private readonly byId = new Map<string, SheetNode>();
  private readonly lineOf = new Map<string, number>();
  private readonly blockNames = new Map<string, BlockName>();
  private readonly correlations: Correlation[] = [];
  private readonly problems: Problem[];
  private readonly worksheet: Worksheet;
  private readonly stages: readonly Stage[];
  private readonly files: TableFiles;
  private readonly reader: EntryReader;
  private readonly byEntry: WeakMap<Entry, SheetNode>;
  private readonly byBlock: WeakMap<readonly Placed<Entry>[], ChooseParts>;

  constructor(
    worksheet: Worksheet, stages: readonly Stage[], files: TableFiles, reader: EntryReader,
    byEntry: WeakMap<Entry, SheetNode>, byBlock: WeakMap<readonly Placed<Entry>[], ChooseParts>
  ) {
    this.worksheet = worksheet;
    this.stages = stages;
    this.files = files;
    this.reader = reader;
    this.byEntry = byEntry;
    this.byBlock = byBlock;
    this.problems = [...worksheet.problems];
  } // prettier-ignore

  model(): Model {
    const blocks = this.worksheet.items.filter((item): item is Block => item.kind === 'block');
    for (const block of blocks) this.addBlock(block);
    for (const block of blocks) if (block.block === 'choose') this.addChoose(block);
    return {
      worksheet: this.worksheet,
      stages: this.stages,
      nodes: this.nodes,
      byId: this.byId,
      lineOf: this.lineOf,
      blockNames: this.blockNames,
      correlations: this.correlations,
      problems: this.problems
    };
  }

  private addBlock(block: Block): void {
    const isSystem = block.block === 'solve' && block.head.name !== null;
    if (laterKinds.has(block.block) || isSystem) return this.addLater(block, isSystem);
    if (block.block === 'table' || block.block === 'readings') return this.addTable(block);
    if (block.block === 'choose') {
      if (block.head.name) this.takeBlockName(block, block.head.name);
      return;
    }
    for (const placed of block.entries) this.addEntry(block, placed);
  }

  private addEntry(block: Block, placed: Placed<Entry>): void {
    const { entry } = placed;
    const line = block.line + placed.line;
    if (entry.kind === 'correlation') {
      const coefficient = this.reader.constant(entry.coefficient);
      for (const found of coefficient.problems) this.problems.push(shiftProblem(found, line));
      this.correlations.push({
        first: canonicalName(entry.first.text),
        second: canonicalName(entry.second.text),
        coefficient: coefficient.parsed,
        line,
        cuts: [entry.first, entry.second]
      });
      return;
    }
    let node = this.byEntry.get(entry);
    if (!node) {
      const made = this.reader.node(entry);
      if (!made) return;
      node = made;
      this.byEntry.set(entry, node);
    }
    this.addNode(node, line, entry.kind === 'bare' ? `line ${line}` : null);
  }

  /** A node under its id; a second one of that name or label is reported and left out. */
  private addNode(found: SheetNode, line: number, bareId: string | null = null): void {
    const node = bareId && found.id !== bareId ? { ...found, id: bareId } : found;
    if (!node.isBroken)
      for (const each of node.problems) this.problems.push(shiftProblem(each, line));
    const ofBlock = node.kind === 'choose' ? undefined : this.blockNames.get(node.id)?.line;
    const earlier = this.lineOf.get(node.id) ?? ofBlock;
    if (earlier !== undefined) {
      const at = node.nameCut ? shifted(spanOf(node.nameCut), line) : { line, from: 1, to: 2 };
      const words =
        node.kind === 'limit'
          ? lineWords.duplicateLabel(node.label, earlier)
          : lineWords.duplicateName(node.name ?? node.id, earlier);
      const code = node.kind === 'limit' ? 'line/duplicate-label' : 'line/duplicate-name';
      const related = [{ line: earlier, from: 1, to: 2 }];
      this.problems.push(problem(code, at, words, { subject: node.name ?? node.id, related }));
      return;
    }
    this.nodes.push(node);
    this.byId.set(node.id, node);
    this.lineOf.set(node.id, line);
  }

  private takeBlockName(block: Block, cut: Cut): string | null {
    const name = canonicalName(cut.text);
    const earlier = this.lineOf.get(name) ?? this.blockNames.get(name)?.line;
    if (earlier !== undefined) {
      const at = shifted(spanOf(cut), block.line);
      const words = lineWords.duplicateName(name, earlier);
      this.problems.push(problem('line/duplicate-name', at, words, { subject: name }));
      return null;
    }
    this.blockNames.set(name, { line: block.line, block: block.block });
    return name;
  }

  private addTable(block: Block): void {
    if (!block.head.name) return;
    const name = this.takeBlockName(block, block.head.name);
    if (name === null) return;
    if (block.block === 'readings') this.sayLater(block, 'readings');
    const { table, problems } = tableText(block, this.files);
    this.problems.push(...problems);
    if (!table) return this.breakBlock(name);
    const made = columnNodes(
      name,
      table,
      block.line,
      block.head.from,
      this.stages.length,
      this.reader.context.money
    );
    this.problems.push(...made.problems);
    for (const node of made.nodes) this.addNode(node, block.line);
  }

  private addChoose(block: Block): void {
    const name = block.head.name && canonicalName(block.head.name.text);
    if (!name || this.blockNames.get(name)?.line !== block.line) return;
    const table = block.head.from ? canonicalName(block.head.from.text) : '';
    const columns = this.nodes.filter(
      (node): node is ColumnNode => node.kind === 'column' && node.table === table
    );
    const key = `${name}|${table}|${this.blockNames.has(table)}|${columns.map(({ id }) => id).join(',')}`;
    if (columns.length === 0) this.breakBlock(name);
    const known = this.byBlock.get(block.entries);
    let nodes =
      known && known.key === key && columns.every((c) => this.byId.get(c.id) === c)
        ? known.nodes
        : null;
    if (!nodes) {
      nodes = chooseNodes(
        name,
        table,
        block,
        columns,
        this.reader,
        this.byId,
        this.blockNames.has(table)
      );
      this.byBlock.set(block.entries, { key, nodes });
    }
    for (const { node, line } of nodes) this.addNode(node, block.line + line);
  }

  /** What it would give is not known: its dotted names wait. */
  private breakBlock(name: string): void {
    const found = this.blockNames.get(name);
    if (found) this.blockNames.set(name, { ...found, isBroken: true });
  }

  /** Kinds that are not computed yet are said so; names they would give wait. */
  private addLater(block: Block, isSystem: boolean): void {
    this.sayLater(block, isSystem ? 'solve of several unknowns' : block.block);
    const named = block.head.name && this.takeBlockName(block, block.head.name);
    const later = (id: string): void => {
      if (this.byId.has(id) || this.lineOf.has(id)) return;
      this.addNode(laterNode(id, this.stages.length), block.line);
    };
    for (const { entry } of block.entries) {
      if (entry.kind === 'unknown' && named) later(`${named}.${canonicalName(entry.name.text)}`);
      const rating = entry.kind === 'later' ? entry.parts['name'] : undefined;
      if (block.block === 'parts' && rating && 'text' in rating) later(canonicalName(rating.text));
    }
  }

  private sayLater(block: Block, kind: string): void {
    if (proseKinds.has(block.block)) return;
    const at: Span = { line: block.line, from: 1, to: Math.max(2, block.text.indexOf('\n') + 1) };
    const words = sheetWords.notComputedYet(kind);
    this.problems.push(problem('sheet/not-computed-yet', at, words, { severity: 'note' }));
  }
}

function laterNode(id: string, stages: number): LaterNode {
  return {
    kind: 'later', id, name: id, entry: null, nameCut: null,
    variants: [{ stage: null, line: 0, comment: null }],
    variantAt: new Array<number>(stages).fill(0), problems: [], isBroken: false, uses: []
  }; // prettier-ignore
}

const shifted = (span: Span, lines: number): Span => ({ ...span, line: span.line + lines });

/** Kinds whose computing comes with a later release. */
const laterKinds: ReadonlySet<string> = new Set([
  'parts', 'cases', 'fit', 'course', 'sweep', 'ladder', 'drivers', 'plan', 'holds', 'event', 'ask',
  'caution', 'remark', 'listing'
]); // prettier-ignore

/** Kinds that are words only: nothing is missing there. */
const proseKinds: ReadonlySet<string> = new Set(['caution', 'remark', 'listing', 'event', 'holds']);

function functionNamesOf(worksheet: Worksheet): ReadonlySet<string> {
  const names = new Set<string>();
  for (const item of worksheet.items) {
    if (item.kind !== 'block' || item.block !== 'calc') continue;
    for (const { entry } of item.entries) {
      if (entry.kind === 'function') names.add(canonicalName(entry.name.text));
    }
  }
  return names;
}
