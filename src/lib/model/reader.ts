// Reads one entry into its node: every expression to a tree, every revision to its stage. Problems have
// lines from 0 at the entry.

import type {
  Comment, Comparison, Entry, Formula, InputValue, LimitEntry, Revision
} from '#lib/document/index.ts'; // prettier-ignore
import { parseExpression, parseUnitCut } from '#lib/language/index.ts';
import { lineWords, problem, sheetWords, type Problem } from '#lib/problem/index.ts';
import { canonicalName, spanOf, type Cut } from '#lib/text/index.ts';
import type { Unit } from '#lib/units/index.ts';
import type {
  FormulaNode, FormulaVariant, FunctionNode, InputNode, InputVariant, LimitNode, LimitVariant,
  Parsed, SheetNode, SolveNode
} from './node.ts'; // prettier-ignore
import { variantsAtStages, type Stage } from './stages.ts';
import { usesOf } from './uses.ts';

/** What reading an expression depends on besides its text. */
export interface ReadingContext {
  readonly money: string | null;
  readonly stages: readonly Stage[];
  readonly ownFunctions: ReadonlySet<string>;
}

/** Reads entries into nodes. Problems have lines from 0 at the entry. */
export class EntryReader {
  readonly context: ReadingContext;

  constructor(context: ReadingContext) {
    this.context = context;
  }

  node(entry: Entry): SheetNode | null {
    switch (entry.kind) {
      case 'input':
        return this.input(entry);
      case 'calculation':
        return this.formula(entry, canonicalName(entry.name.text), entry.name);
      case 'bare':
        return this.formula(entry, 'line 0', null);
      case 'function':
        return this.ownFunction(entry);
      case 'limit':
        return this.limit(entry);
      case 'solve':
        return this.solve(entry);
      default:
        return null;
    }
  }

  /** An expression, its problems collected. */
  parse(cut: Cut, problems: Problem[]): Parsed {
    const { tree, problems: found } = parseExpression(cut, this.context);
    problems.push(...found);
    return { cut, tree };
  }

  constant(cut: Cut): { readonly parsed: Parsed; readonly problems: readonly Problem[] } {
    const problems: Problem[] = [];
    return { parsed: this.parse(cut, problems), problems };
  }

  unit(
    cut: Cut | null,
    problems: Problem[]
  ): { readonly unit: Unit | null; readonly failed: boolean } {
    if (!cut) return { unit: null, failed: false };
    const { unit, problems: found } = parseUnitCut(cut, this.context.money);
    problems.push(...found);
    return { unit, failed: unit === null };
  }

  /** Index of a revision's stage, or null (and a problem) where there is none of that id. */
  stageIndex(cut: Cut, problems: Problem[]): number | null {
    const stage = this.context.stages.find((each) => each.id === cut.text);
    if (stage) return stage.index;
    const declared = this.context.stages.map((each) => each.id);
    problems.push(
      problem('line/unknown-stage', spanOf(cut), lineWords.unknownStage(cut.text, declared))
    );
    return null;
  }

  /** The base and the revisions of an entry as variants. */
  variants<T, V>(
    base: T,
    comment: Comment | null,
    revisions: readonly Revision<T>[],
    subject: string,
    problems: Problem[],
    make: (value: T, at: { stage: number | null; line: number; comment: Comment | null }) => V
  ): readonly V[] {
    // prettier-ignore
    const variants = [make(base, { stage: null, line: 0, comment })];
    const seen = new Set<number>();
    for (const revision of revisions) {
      const stage = this.stageIndex(revision.stage, problems);
      if (stage === null) continue;
      if (seen.has(stage)) {
        const words = lineWords.revisedTwice(subject, revision.stage.text);
        problems.push(problem('line/duplicate-name', spanOf(revision.stage), words, { subject }));
        continue;
      }
      seen.add(stage);
      const line = revision.stage.pieces[0]?.line ?? 0;
      variants.push(make(revision.value, { stage, line, comment: revision.comment }));
    }
    return variants;
  }

  at(variants: readonly { readonly stage: number | null }[]): readonly number[] {
    return variantsAtStages(
      this.context.stages,
      variants.map((variant) => variant.stage)
    );
  }

  private input(entry: Entry & { kind: 'input' }): InputNode {
    const problems: Problem[] = [];
    const name = canonicalName(entry.name.text);
    const variants = this.variants(
      entry.base, entry.comment, entry.revisions, name, problems,
      (value, place): InputVariant => ({ ...place, ...this.inputValue(value, problems) })
    ); // prettier-ignore
    return {
      kind: 'input', id: name, name, entry, nameCut: entry.name, variants,
      variantAt: this.at(variants), problems, isBroken: hasError(entry),
      uses: usesOf(
        variants.flatMap(({ value, tolerance, within }) => [
          value, tolerance && tolerance.amount, within && within.low, within && within.high
        ])
      )
    }; // prettier-ignore
  }

  private inputValue(
    value: InputValue,
    problems: Problem[]
  ): Omit<InputVariant, 'stage' | 'line' | 'comment'> {
    const { unit } = this.unit(value.unit, problems);
    const parsed = value.expression && this.parse(value.expression, problems);
    const tolerance = value.tolerance;
    return {
      value: parsed,
      isUnknown: value.expression === null,
      unit,
      tolerance: tolerance && {
        amount: this.parse(tolerance.amount, problems),
        form: tolerance,
        text: tolerance.amount.text
      },
      within: value.within && {
        low: this.parse(value.within.low, problems),
        high: this.parse(value.within.high, problems)
      },
      fitted:
        parsed?.tree?.kind === 'name' && parsed.tree.name.includes('.') ? parsed.tree.name : null
    };
  }

  private formula(
    entry: Entry & { kind: 'calculation' | 'bare' },
    id: string,
    nameCut: Cut | null
  ): FormulaNode {
    // prettier-ignore
    const problems: Problem[] = [];
    const variants = this.formulaVariants(entry, id, problems);
    return {
      kind: 'calc', rows: null, id, name: nameCut && id, entry, nameCut, variants, variantAt: this.at(variants),
      problems, isBroken: hasError(entry), uses: usesOf(variants.map((variant) => variant.expression))
    }; // prettier-ignore
  }

  formulaVariants(
    entry: {
      readonly base: Formula;
      readonly comment: Comment | null;
      readonly revisions: readonly Revision<Formula>[];
    },
    subject: string,
    problems: Problem[]
  ): readonly FormulaVariant[] {
    // prettier-ignore
    return this.variants(
      entry.base, entry.comment, entry.revisions, subject, problems,
      (formula, place): FormulaVariant => {
        const { unit, failed } = this.unit(formula.unit, problems);
        return { ...place, expression: this.parse(formula.expression, problems), unit, unitFailed: failed };
      }
    ); // prettier-ignore
  }

  private ownFunction(entry: Entry & { kind: 'function' }): FunctionNode {
    const problems: Problem[] = [];
    const name = canonicalName(entry.name.text);
    const parameters = entry.parameters.map((cut) => canonicalName(cut.text));
    const variants = this.formulaVariants(entry, name, problems);
    const uses = usesOf(variants.map((variant) => variant.expression));
    return {
      kind: 'function', id: name, name, entry, nameCut: entry.name, parameters, variants,
      variantAt: this.at(variants), problems, isBroken: hasError(entry), uses: uses.filter((used) => !parameters.includes(used))
    }; // prettier-ignore
  }

  private limit(entry: LimitEntry): LimitNode {
    const problems: Problem[] = [];
    const label = entry.label.text.trim();
    const variants = this.variants(
      entry.base, entry.comment, entry.revisions, label, problems,
      (comparison, place): LimitVariant => ({ ...place, ...this.comparison(comparison, problems) })
    ); // prettier-ignore
    const close = entry.tags.close;
    return {
      kind: 'limit', id: limitId(label), name: null, label, tags: entry.tags, entry,
      nameCut: entry.label, variants, variantAt: this.at(variants), problems, isBroken: hasError(entry),
      close: close && { kind: close.kind, amount: this.parse(close.amount, problems) },
      uses: usesOf(variants.flatMap((variant) => [...variant.sides, variant.tolerance]))
    }; // prettier-ignore
  }

  private comparison(
    comparison: Comparison,
    problems: Problem[]
  ): Pick<LimitVariant, 'form' | 'sides' | 'tolerance'> {
    // prettier-ignore
    const side = (cut: Cut | null): Parsed | null => cut && this.parse(cut, problems);
    const { form } = comparison;
    switch (comparison.form) {
      case 'demand<=capacity':
        return {
          form,
          sides: [side(comparison.demand), side(comparison.capacity)],
          tolerance: null
        };
      case 'actual>=required':
        return {
          form,
          sides: [side(comparison.actual), side(comparison.required)],
          tolerance: null
        };
      case 'low<=x<=high':
        return {
          form,
          sides: [side(comparison.low), side(comparison.x), side(comparison.high)],
          tolerance: null
        };
      case 'x outside a..b':
        return {
          form,
          sides: [side(comparison.x), side(comparison.low), side(comparison.high)],
          tolerance: null
        };
      case 'a==b':
        return {
          form,
          sides: [side(comparison.a), side(comparison.b)],
          tolerance: side(comparison.tolerance)
        };
    }
  }

  private solve(entry: Entry & { kind: 'solve' }): SolveNode {
    const problems: Problem[] = [];
    const name = canonicalName(entry.name.text);
    const [left, right] = [this.parse(entry.left, problems), this.parse(entry.right, problems)];
    const low = entry.between && this.parse(entry.between.low, problems);
    const high = entry.between && this.parse(entry.between.high, problems);
    const unknown = canonicalName(entry.unknown.text);
    const variants = [{ stage: null, line: 0, comment: entry.comment, left, right, low, high }];
    if (entry.everyRoot) {
      const at = { line: entry.lineCount - 1, from: 1, to: 2 };
      const words = sheetWords.notComputedYet('every root');
      problems.push(problem('sheet/not-computed-yet', at, words, { severity: 'note' }));
    }
    return {
      kind: 'solve', id: name, name, entry, nameCut: entry.name, unknown, unknownCut: entry.unknown,
      variants, variantAt: this.at(variants), problems, isBroken: hasError(entry),
      uses: [...new Set([unknown, ...usesOf([left, right, low, high])])]
    }; // prettier-ignore
  }
}

const hasError = (entry: Entry): boolean =>
  entry.problems.some((found) => found.severity === 'error');

/** Ids of limits can be no name of the sheet. */
export const limitId = (label: string): string => `limit: ${label}`;
