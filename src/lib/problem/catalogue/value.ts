// Problems of values: not finite, outside a domain or a range, and tolerances.

import { block, later, raised, type CatalogueEntry } from './entry.ts';

const twoStages = ['---', 'stages:', '  sketch: First sketch', '  upgrade: Bigger motor', '---'];

export const valueProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'value/not-finite',
    meaning: 'A value is not a finite number: something is divided by 0, or overflows.',
    example: block('calc', 'gap = 3 mm - 3 mm', 'rate = 5 N / gap'),
    cure: block('calc', 'gap = 3 mm - 2 mm', 'rate = 5 N / gap')
  }),
  raised({
    code: 'value/outside-domain',
    meaning: 'A function is taken of a value for which it has no real result.',
    example: block('calc', 'h = 2 m - 5 m', 'v = sqrt(2 * g_n * h)'),
    cure: block('calc', 'h = 5 m - 2 m', 'v = sqrt(2 * g_n * h)')
  }),
  raised({
    code: 'value/needs-a-value',
    meaning: 'A line has no value that can be read, or not the kind of value that is wanted there.',
    example: block('inputs', 'd_arm = 25 mm', 'd_hub = 3 * d_arm'),
    cure: [...block('inputs', 'd_arm = 25 mm'), ...block('calc', 'd_hub = 3 * d_arm')]
  }),
  raised({
    code: 'value/outside-within',
    meaning: 'An input lies outside the range written after within; as an error where the range itself cannot be.',
    severity: 'warning',
    example: block('inputs', 'v_tip = 90 m/s within 20 m/s .. 80 m/s'),
    cure: block('inputs', 'v_tip = 70 m/s within 20 m/s .. 80 m/s')
  }),
  later('value/waits-for', 'A value waits for another one; today its row says so, and it counts as no mistake.'),
  raised({
    code: 'value/negative-tolerance',
    meaning: 'A tolerance is 0, negative, or a percentage of 0.',
    example: block('inputs', 'd_arm = 25 mm ± -1 mm'),
    cure: block('inputs', 'd_arm = 25 mm ± 1 mm')
  }),
  raised({
    code: 'value/tolerance-lost',
    meaning: 'A revision gives a new value without the tolerance that the old one had.',
    severity: 'note',
    example: [...twoStages, ...block('inputs', 'k_air = 1.00 ± 0.20', '  at upgrade: 0.85')],
    cure: [...twoStages, ...block('inputs', 'k_air = 1.00 ± 0.20', '  at upgrade: 0.85 ± 0.20')]
  }),
  raised({
    code: 'value/exact-comparison',
    meaning: 'Two computed values are compared to the last digit.',
    severity: 'note',
    example: block('calc', 'a = 0.1 + 0.2', 'b = 0.15 * 2', 'is_same = a == b'),
    cure: block('calc', 'a = 0.1 + 0.2', 'b = 0.15 * 2', 'is_same = abs(a - b) < 1e-9')
  }),
  later('value/literal-in-caution', 'A caution states a figure in its words where a value of the sheet could stand.')
]; // prettier-ignore
