// How the methods of this folder ask for values. A method holds a work list of (lane, abscissa) and
// has it evaluated as one batch, whatever mixture of lanes stands in it. No method lets what it does
// for one lane depend on another, so permuting lanes or cutting them into chunks changes no bit.

/**
 * Evaluates a function of one variable for the first `count` entries of a work list.
 *
 * @param lanes  lane index of each entry; a lane may occur many times, in any order
 * @param x      abscissa of each entry [unit of x]
 * @param count  entries in use; the arrays may be longer
 * @param out    receives f(x[i]) of lane lanes[i] at i; NaN or infinity where f has no value
 *
 * A method may look at places that its answer does not rest on (the far tail of an infinite range,
 * the neighbourhood of a pole): a value that is not finite is a fault of the sheet only where the
 * method's own status says so.
 */
export type LaneFunction = (
  lanes: Int32Array,
  x: Float64Array,
  count: number,
  out: Float64Array
) => void;

/** Entry `i` of an array that is known to be long enough. */
export function at(values: ArrayLike<number>, i: number): number {
  return values[i] as number;
}

/** The smallest spacing of doubles near 1: 2^-52. */
export const epsilon = 2 ** -52;
