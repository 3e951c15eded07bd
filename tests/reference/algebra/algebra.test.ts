import { describe, expect, it } from 'vitest';
import { block, reference, relativeDifference, run } from '../worksheet.ts';
import { meansOtherwise, refused, rewritten, tables, translations } from './translations.ts';

interface Algebra {
  readonly cases: readonly { id: string; topic: string; expression: string; value: number }[];
  readonly derivatives: readonly {
    id: string;
    expression: string;
    variables: Record<string, number>;
    value: number;
    partial_derivatives: Record<string, number>;
  }[];
}

const { cases, derivatives } = reference<Algebra>(import.meta.url, 'algebra.json');

/** What a worksheet writes for an expression, and whether that differs. */
function translated(id: string, expression: string): string {
  let text = rewritten[id]?.instead ?? expression;
  for (const { form, instead } of translations) text = text.replace(form, instead);
  return text;
}

const computed = cases.filter(({ id }) => refused[id] === undefined);
const changed = computed.filter(({ id, expression }) => translated(id, expression) !== expression);

const columns = Object.entries(tables).map(([name, values]) =>
  block(`table ${name}`, ['x', ...values.map(String)])
);
const sheet = run(
  columns.join('\n') +
    block('calc', computed.map(({ id, expression }) => `${id} = ${translated(id, expression)}`)) // prettier-ignore
);
// As mathjs would take them: each is a line of its own, so one refusal does not touch the others.
const asWritten = run(
  block('calc', cases.map(({ id, expression }) => `${id} = ${expression}`)) // prettier-ignore
);

describe('expressions with plain numbers', () => {
  it('are 256: 186 as written, 68 translated, 2 refused', () => {
    expect([cases.length, changed.length, Object.keys(refused).length]).toEqual([256, 68, 2]);
  });

  it.each(computed)('$id $expression to 1e-12', ({ id, value }) => {
    expect(sheet.problems(id).filter((code) => code.startsWith('error'))).toEqual([]);
    expect(relativeDifference(sheet.si(id), meansOtherwise[id] ?? value)).toBeLessThan(1e-12);
  });

  it.each(Object.entries({ ...refused }))('%s is refused as %s', (id, code) => {
    expect(asWritten.problems(id)).toContain(`error ${code}`);
  });

  it.each(changed)('$id $expression as written is refused', ({ id, expression }) => {
    const expected = rewritten[id]
      ? [rewritten[id].refusal]
      : translations.filter(({ form }) => expression.search(form) >= 0).map((t) => t.refusal);
    const found = asWritten.problems(id);
    expect(
      expected.some((code) => found.includes(`error ${code}`)),
      found.join()
    ).toBe(true);
    expect(asWritten.si(id)).toBeNaN();
  });
});

describe('formulas with names', () => {
  it.each(derivatives)('$id $expression to 1e-12', ({ id, expression, variables, value }) => {
    const inputs = Object.entries(variables).map(([name, number]) => `${name} = ${number}`);
    const alone = run(
      block('inputs', inputs) + block('calc', [`${id} = ${translated(id, expression)}`])
    );
    expect(alone.problems(id).filter((code) => code.startsWith('error'))).toEqual([]);
    expect(relativeDifference(alone.si(id), value)).toBeLessThan(1e-12);
  });

  // A standard uncertainty of 1e-3 in one input alone is that times the partial derivative in the
  // result (JCGM 100:2008, 5.1.2), so each tangent can be seen from outside.
  it.each(derivatives)('$id $expression: partial derivatives to 1e-10', (one) => {
    const { id, expression, variables, partial_derivatives: partials } = one;
    for (const [uncertain, partial] of Object.entries(partials)) {
      const inputs = Object.entries(variables).map(
        ([name, number]) => `${name} = ${number}${name === uncertain ? ' ± 1e-3 sd' : ''}`
      );
      const sheet = run(
        block('inputs', inputs) + block('calc', [`${id} = ${translated(id, expression)}`])
      );
      const u = sheet.results.values.get(id)?.at[0]?.standardUncertainty ?? NaN;
      expect(relativeDifference(u, Math.abs(partial) * 1e-3), uncertain).toBeLessThan(1e-10);
    }
  });
});
