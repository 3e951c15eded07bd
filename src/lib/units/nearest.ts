// The known unit names nearest to an unknown one, for the hint. Case counts least, because 'kw' for
// 'kW' is the usual slip; then single letters added, lost, changed or swapped (optimal string
// alignment, R. A. Wagner & M. J. Fischer 1974 with the swap of two neighbours).

import { unitSpellings } from './table.ts';

/** What a letter in the wrong case costs beside other edits, each of which costs 1. */
const caseCost = 0.2;
const mostOffers = 3;

/**
 * At most three names, all equally near; none if nothing is near enough.
 *
 * Cost    about 700 short comparisons; meant for problems, not for every keystroke of a good sheet
 */
export function nearestUnits(name: string, money: string | null): readonly string[] {
  const most = name.length <= 3 ? 1 : 2;
  let best = most + 1e-9;
  let found: string[] = [];
  const consider = (candidate: string): void => {
    if (Math.abs(candidate.length - name.length) > most) return;
    const isSameWord = name.toLowerCase() === candidate.toLowerCase();
    const distance = isSameWord ? caseCost : editDistance(name, candidate);
    if (distance > best) return;
    if (distance < best - 1e-9) found = [];
    best = Math.min(best, distance);
    found.push(candidate);
  };
  for (const candidate of unitSpellings.keys()) consider(candidate);
  if (money !== null) consider(money);
  const close = found.filter((candidate) => best < candidate.length);
  return close.length > mostOffers ? [] : close;
}

function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const cost = letterCost(a[row - 1], b[column - 1]);
      let least = Math.min(
        (above[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (above[column - 1] ?? 0) + cost
      );
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        least = Math.min(least, (before[column - 2] ?? 0) + 1);
      }
      current.push(least);
    }
    before = above;
    above = current;
  }
  return above[b.length] ?? 0;
}

function letterCost(a: string | undefined, b: string | undefined): number {
  if (a === b) return 0;
  return a?.toLowerCase() === b?.toLowerCase() ? caseCost : 1;
}
