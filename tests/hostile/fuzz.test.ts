import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compute } from '#lib/sheet/index.ts';
import { Random } from '../laws/random.ts';
import { fuzz, readBack } from './fuzz.ts';
import { mutated } from './mutate.ts';

const seed = 4711;
const texts = ['spray-arm-rig.md', 'doubling-speed.md'].map((name) =>
  readFileSync(new URL(`../../worksheets/${name}`, import.meta.url), 'utf8')
);

/** Front matter and a few blocks of a worksheet: the rest of its names are then unknown. */
function excerpt(text: string, random: Random): string {
  const [front = '', ...parts] = text.split(/(?=^```\w)/m);
  const from = random.below(Math.max(1, parts.length - 3));
  return front + parts.slice(from, from + 3).join('');
}

it(`5,000 damaged worksheets come back to the byte (seed ${seed})`, () => {
  const random = new Random(seed);
  for (let i = 0; i < 5000; i++) {
    const text = mutated(random.pick(texts), random);
    expect(readBack(text) === text, `case ${i}`).toBe(true);
  }
}, 60_000);

// Whole worksheets in one session each, as in an editor, and more of them in pieces, each afresh; the
// soak runs 100,000 whole ones.
it(`5,000 damaged worksheets compute without an exception (seed ${seed})`, () => {
  const whole = fuzz(texts, seed, 300, 10);
  expect(whole.failures).toEqual([]);
  const random = new Random(seed);
  for (let i = 300; i < 5000; i++) {
    const text = mutated(excerpt(random.pick(texts), random), random);
    expect(() => compute(text), `case ${i} of\n${text}`).not.toThrow();
  }
}, 120_000);
