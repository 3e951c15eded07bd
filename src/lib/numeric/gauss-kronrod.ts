// The 15-point Gauss-Kronrod rule on one panel. The 7 Gauss points are among the 15, so one set of
// values gives two estimates, and their difference says how far the better one can be off.
// Source: nodes and weights as in R. Piessens, E. de Doncker-Kapenga, C. W. Überhuber,
// D. K. Kahaner, QUADPACK, Springer 1983 (routine QK15); the figures were worked out again in
// 40 digits from the Legendre and Stieltjes polynomials.

import { at, epsilon } from './lane-function.ts';

/** Values of f that one panel asks for. */
export const pointsPerPanel = 15;

const positiveNodes = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945,
  0.5860872354676911, 0.4058451513773972, 0.20778495500789848
]; // prettier-ignore
const kronrod = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592,
  0.1690047266392679, 0.19035057806478542, 0.20443294007529889
]; // prettier-ignore
const kronrodCentre = 0.20948214108472782;
const gauss = [0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0];
const gaussCentre = 0.4179591836734694;

/** Nodes on [-1, 1], ascending. */
export const nodes = symmetric(positiveNodes, 0, -1);
/** Weights of all 15 points. */
export const kronrodWeights = symmetric(kronrod, kronrodCentre, 1);
/** Weights of the 7 Gauss points, 0 at the others. */
export const gaussWeights = symmetric(gauss, gaussCentre, 1);

/** What 15 values say about one panel. */
export interface PanelEstimate {
  /** Integral over the panel [unit of f times x]. */
  value: number;
  /** Bound on |value - integral| that holds for all but perverse f [same unit]. */
  error: number;
  /** Integral of |f| over the panel [same unit]. */
  magnitude: number;
}

/**
 * Integral over one panel from the 15 values at its nodes.
 *
 * @param values  f at centre + half * nodes[i], i ascending, from index `from` on
 * @param half    half the width of the panel [unit of x]
 * @param result  receives the estimate; NaN or infinity in `values` travels into it
 *
 * Error   exact for polynomials to degree 23, but for rounding
 * Source  QUADPACK, QK15; its power law for the error is left out, because the plain difference of
 *         the two rules is the more careful estimate
 */
export function panelEstimate(
  values: Float64Array,
  from: number,
  half: number,
  result: PanelEstimate
): void {
  let fine = 0;
  let coarse = 0;
  let magnitude = 0;
  for (let i = 0; i < pointsPerPanel; i++) {
    const f = at(values, from + i);
    fine += at(kronrodWeights, i) * f;
    coarse += at(gaussWeights, i) * f;
    magnitude += at(kronrodWeights, i) * Math.abs(f);
  }
  result.value = fine * half;
  result.magnitude = magnitude * half;
  result.error = Math.max(Math.abs(fine - coarse) * half, 50 * epsilon * result.magnitude);
}

function symmetric(positive: readonly number[], centre: number, sign: 1 | -1): Float64Array {
  const low = positive.map((value) => sign * value);
  return Float64Array.from([...low, centre, ...[...positive].reverse()]);
}
