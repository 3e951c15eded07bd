// Every unit name, alone and with powers, is TeX that KaTeX takes without a warning.

import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { isUnitFault, parseUnit, unitTex } from '#lib/units/index.ts';
import { readFileSync } from 'node:fs';

const reference = JSON.parse(readFileSync(new URL('./units.json', import.meta.url), 'utf8')) as {
  readonly unit_names: Readonly<Record<string, unknown>>;
};
const names = [...Object.keys(reference.unit_names), 'degC', 'um', 'kohm', '%', 'uin', 'Nm'];

describe('unit TeX', () => {
  it.each(names)('of %s is accepted in strict mode', (name) => {
    for (const text of [name, `${name}^2/(s^(1/3) ${name}^0.5)`]) {
      const unit = parseUnit(text, null);
      if (isUnitFault(unit)) throw new Error(`${text}: ${unit.message}`);
      const html = katex.renderToString(unitTex(unit), { strict: 'error', throwOnError: true });
      expect(html).toContain('katex');
    }
  });
});
