// Sums of a column of readings, and what is made of them. Rounding errors of a plain sum grow with the
// number of terms; a compensated sum carries the lost low digits along, and the two-pass formula for
// the deviation does not lose the digits that the readings have in common.
// Sources: A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen,
// ZAMM 54 (1974) 39-51; T. F. Chan, G. H. Golub, R. J. LeVeque, Algorithms for computing the sample
// variance, The American Statistician 37 (1983) 242-247.
//
// NaN or infinity among the values gives NaN or infinity; what is not measured is left out by the caller.

/**
 * Compensated sum.
 *
 * @param values  any unit
 * @returns the sum [same unit]; 0 for no values
 *
 * Error   about 2^-53 |sum|, plus a second-order share of the sum of |values|
 * Source  Neumaier 1974
 * @example compensatedSum([1, 1e100, 1, -1e100])  // 2
 */
export function compensatedSum(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  // With an infinite term the low digits are NaN; the plain sum then says what there is to say.
  return Number.isFinite(sum) ? sum + lost : sum;
}

/** Arithmetic mean [unit of the values]; NaN for no values. Error as `compensatedSum`. */
export function mean(values: ArrayLike<number>): number {
  return values.length === 0 ? NaN : compensatedSum(Array.from(values)) / values.length;
}

/**
 * Standard deviation of a sample, with n - 1 in the denominator.
 *
 * @param values  any unit
 * @returns the deviation [same unit], >= 0; NaN for fewer than two values
 *
 * Error   a few 2^-53 relative to the deviation, unless |mean| exceeds it by more than 1e15
 * Source  Chan, Golub, LeVeque 1983: two passes, with the second pass's own mean taken off
 */
export function standardDeviation(values: ArrayLike<number>): number {
  const count = values.length;
  if (count < 2) return NaN;
  const centre = mean(values);
  const deviations = Array.from(values, (value) => value - centre);
  const remainder = compensatedSum(deviations);
  const squares = compensatedSum(deviations.map((deviation) => deviation * deviation));
  return Math.sqrt(Math.max(0, squares - (remainder * remainder) / count) / (count - 1));
}
