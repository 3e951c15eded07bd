// Slips of the pen that people make, each with everything that is said about it. What is offered can be
// put in as it stands.

import { expect, test } from 'vitest';
import { problemsOf } from './said.ts';

const sheet = (line: string): string => `\`\`\`calc\nR = 3 m\nT = 20 degC\n${line}\n\`\`\`\n`;

test.each<readonly [line: string, said: readonly string[]]>([
  ['y = 3 mm2', ['7-10 units/unknown: Unit "mm2" is not known. Nearest: mm^2.']],
  ['y = 3 m2', ['7-9 units/unknown: Unit "m2" is not known. Nearest: m^2.']],
  ['y = 5 kw', ['7-9 units/unknown: Unit "kw" is not known. Nearest: kW.']],
  [
    'y = 10 1/s',
    [
      '5-11 syntax/missing-operator: Between 10 and 1 an operator is missing. For 10 per s write 10 s^-1.'
    ]
  ],
  [
    'y = sqrt 3',
    ['5-11 names/arguments: sqrt is a function and needs its arguments in brackets. Write sqrt(3).']
  ],
  [
    'y = 2 R',
    [
      '5-8 syntax/missing-operator: Between 2 and R an operator is missing. For 2 times R write 2*R.'
    ]
  ],
  [
    'y = 1/0',
    ['5-8 value/not-finite: 1/0 divides by 0. Check the values that go into the divisor.']
  ],
  [
    'y = 1 / (R - R)',
    [
      '5-16 value/not-finite: 1 / (R - R) divides by R - R, which is 0 here. Check the values that go into the divisor.'
    ]
  ],
  [
    'y = 10^400',
    [
      '5-11 value/not-finite: 10^400 is not a finite number: it overflows. Check the values that go into it.'
    ]
  ],
  [
    'y = exp(1000)',
    [
      '5-14 value/not-finite: exp(1000) is not a finite number: it overflows. Check the values that go into it.'
    ]
  ],
  [
    'y = 0^-1',
    [
      '5-9 value/outside-domain: 0^-1 raises 0 to a negative power, which divides by 0. Check the values that go into it, or treat that case by a condition.'
    ]
  ],
  [
    'y = (R/R - 9)^(1/3)',
    [
      '5-20 value/outside-domain: (R/R - 9)^(1/3) raises (R/R - 9) = -8 to a power that is not whole; below 0 that has no value. For a cube root write cbrt(…), or treat that case by a condition.'
    ]
  ],
  [
    'y = 1e400',
    [
      '5-10 syntax/number-form: 1e400 is beyond the largest number that can be computed with (1.8e308). Write the value in a larger unit.'
    ]
  ],
  [
    'y = 3 to',
    ['9-9 syntax/unexpected: After "to" a unit is expected. Write the unit to show it in: to kW.']
  ],
  [
    'y = if(3 > 2, 1, 2)',
    [
      '5-7 names/not-a-function: if is not a function of the language. Write test ? value : other value.'
    ]
  ],
  [
    'y = abs(T)',
    [
      '9-10 temperature/scaled-point: abs(T) depends on where the temperature scale has its zero. If the kelvins are meant, write (… to K) around the reading.'
    ]
  ]
])('%s', (line, said) => {
  const found = problemsOf(sheet(line)).map(
    ({ at, code, message, hint }) => `${at.from}-${at.to} ${code}: ${message} ${hint ?? ''}`
  );
  expect(found).toEqual(said);
});
