// Tolerances: an amount, then suffixes that say how it is distributed. Without one it is a bound,
// taken as rectangular (JCGM 100:2008, 4.3.7).

import { lineWords, problem, type Problem } from '#lib/problem/index.ts';
import { sliceCut, spanOf, trimCut, type Cut } from '#lib/text/index.ts';
import type { Tolerance } from '../types.ts';

const suffix =
  /(?:^|\s)(sd|triangular|arcsine|k\s*=\s*(?:\d+(?:\.\d*)?|\.\d+)|dof\s+(?:\d+(?:\.\d*)?|\.\d+))$/;

/** Splits `amount [sd | k=2 | triangular | arcsine] [dof N]`; suffixes in any order. */
export function readTolerance(cut: Cut, subject: string, problems: Problem[]): Tolerance {
  let amount = trimCut(cut);
  let shape: Tolerance['shape'] = 'rectangular';
  let coverage: number | null = null;
  let degreesOfFreedom: number | null = null;
  let shaped: string | null = null;
  for (let match = suffix.exec(amount.text); match; match = suffix.exec(amount.text)) {
    const word = match[1] ?? '';
    const from = amount.text.length - word.length;
    const at = spanOf(amount, from);
    const number = Number(/[\d.]+$/.exec(word)?.[0] ?? Number.NaN);
    if (number <= 0) {
      const what = word.startsWith('k') ? 'A coverage factor' : 'A number of degrees of freedom';
      const words = lineWords.notPositive(what, word);
      problems.push(problem('line/not-understood', at, words, { subject }));
    }
    if (word.startsWith('dof')) {
      if (degreesOfFreedom !== null) problems.push(clash(at, 'dof', word, subject));
      degreesOfFreedom = number;
    } else {
      if (shaped !== null) problems.push(clash(at, shaped, word, subject));
      shaped = word;
      if (word === 'triangular' || word === 'arcsine') shape = word;
      else {
        shape = 'normal';
        coverage = word === 'sd' ? 1 : number;
      }
    }
    amount = trimCut(sliceCut(amount, 0, from));
  }
  if (amount.text === '') {
    const words = lineWords.missing(subject, 'the amount after ±', '± amount [sd]');
    problems.push(problem('line/not-understood', spanOf(amount, 0, 0), words, { subject }));
  }
  return { amount, shape, coverage, degreesOfFreedom };
}

function clash(at: Problem['at'], first: string, second: string, subject: string): Problem {
  const words = lineWords.suffixesClash(first, second);
  return problem('line/not-understood', at, words, { subject });
}
