// Random damage to a worksheet: bytes flipped, lines deleted, swapped and doubled, tokens put in where
// they do not belong. A worksheet in such a state is what an editor holds between two key strokes.

import type { Random } from '../laws/random.ts';

/** Pieces of the language, of the format and of neither. */
const tokens = [
  '```', '~~~~', '---', '`', '```calc\n', '```solve s\n', '```table t from x.csv\n', '```choose c from t\n',
  '\n', '\r\n', '\r', '\t', '\0', '\u2028', '\ufeff', '\ud800', '😀', '  at upgrade: ', '  at sketch: none\n',
  ' = ', ' ± ', '± 5 %', ' within ', ' .. ', ' where ', ' == ', ' between ', ' and ', ' to ', ' to 1',
  'to rpm', '<=', '>=', '?', ' ? 1 : 2', ':', '#', ' # ', '(', ')', '((((((((', '[', ']', '{', '}', '^',
  '^^', '^2', '²', '³', '!', '%', '&', '$', '@', '\\', '"', "'", ',', ';', '|', '.', '..', '-', '--', '+',
  '*', '/', '//', '1e999', '1e-999', '0', '-0', '1/0', '0/0', 'inf', 'pi', 'e', 'NaN', '1e5', '10^-6 m',
  'm', 'kg', 'degC', '-5 degC', 'rpm', 'Hz', 'rad', 'EUR', 'USD', 'N m', 'kW', 'furlong', 'x', 'omega',
  'ω', 'P_drag', 'v', '__proto__', 'constructor', 'toString', 'integrate(x, x, 0, 1)', 'sqrt(-1)',
  'integrate(', 'min(', 'max()', 'f(x) = f(x)', 'x = x', 'sum(1)', 'interp(1, 2, 3)', 'true', 'not ',
  ' or ', 'title: ', 'stages:\n  a: b\n', 'units: US', 'format: 2', '[safety]', '[close 5 %]', '[level]',
  'least x', 'take "x"', 'correlated v, R 2', '<script>', '{v}', '{v at nowhere}'
]; // prettier-ignore

type Mutation = (text: string, random: Random) => string;

function atLines(change: (lines: string[], random: Random) => void): Mutation {
  return (text, random) => {
    const lines = text.split('\n');
    change(lines, random);
    return lines.join('\n');
  };
}

const flipCharacter: Mutation = (text, random) => {
  const at = random.below(text.length + 1);
  const code = text.charCodeAt(at) ^ (1 << random.below(8));
  return (
    text.slice(0, at) + String.fromCharCode(Number.isNaN(code) ? 32 : code) + text.slice(at + 1)
  );
};

const insertToken: Mutation = (text, random) => {
  const at = random.below(text.length + 1);
  return text.slice(0, at) + random.pick(tokens) + text.slice(at);
};

const deleteSpan: Mutation = (text, random) => {
  const at = random.below(text.length + 1);
  return text.slice(0, at) + text.slice(at + 1 + random.below(12));
};

const moveSpan: Mutation = (text, random) => {
  const from = random.below(text.length + 1);
  const piece = text.slice(from, from + 1 + random.below(80));
  const rest = text.slice(0, from) + text.slice(from + piece.length);
  const to = random.below(rest.length + 1);
  return rest.slice(0, to) + piece + rest.slice(to);
};

const mutations: readonly Mutation[] = [
  flipCharacter,
  insertToken,
  insertToken,
  insertToken,
  deleteSpan,
  moveSpan,
  (text, random) => text.slice(0, random.below(text.length + 1)),
  atLines((lines, random) => lines.splice(random.below(lines.length), 1 + random.below(3))),
  atLines((lines, random) => {
    const [i, j] = [random.below(lines.length), random.below(lines.length)];
    const [a, b] = [lines[i] ?? '', lines[j] ?? ''];
    lines[i] = b;
    lines[j] = a;
  }),
  atLines((lines, random) => {
    const from = random.below(lines.length);
    const piece = lines.slice(from, from + 1 + random.below(5));
    lines.splice(random.below(lines.length), 0, ...piece);
  }),
  atLines((lines, random) => {
    const at = random.below(lines.length);
    lines[at] = (lines[at] ?? '').replace(/\d+/, () =>
      random.pick(['0', '1e999', '-1', '7', '1e-300'])
    );
  }),
  atLines((lines, random) => {
    const at = random.below(lines.length);
    const words = (lines[at] ?? '').split(' ');
    lines[at] = random.shuffled(words).join(' ');
  })
];

/** One to four kinds of damage. */
export function mutated(text: string, random: Random): string {
  let result = text;
  for (let n = 1 + random.below(4); n > 0; n--) result = random.pick(mutations)(result, random);
  return result;
}
