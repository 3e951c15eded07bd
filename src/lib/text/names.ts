// Names as a worksheet writes them: a letter or `_`, then letters, decimal digits and `_`, in Unicode
// normalisation form C. Greek letters and their spelled names are one: `ω_tip` is `omega_tip`.
// The names that no line may define are listed here, where the document and the language both see
// them.

const plainName = /^[A-Za-z_][A-Za-z0-9_]*$/;
const anyName = /^[\p{L}_][\p{L}\p{Nd}_]*$/u;
const beyondAscii = /[^\0-\x7f]/;
const greek = /[\u00b5\u0370-\u03ff]/g;

/** Spelled names of the Greek letters, their variant forms and the micro sign. */
const greekNames: ReadonlyMap<string, string> = new Map([
  ['α', 'alpha'], ['β', 'beta'], ['γ', 'gamma'], ['δ', 'delta'], ['ε', 'epsilon'], ['ζ', 'zeta'],
  ['η', 'eta'], ['θ', 'theta'], ['ι', 'iota'], ['κ', 'kappa'], ['λ', 'lambda'], ['μ', 'mu'],
  ['ν', 'nu'], ['ξ', 'xi'], ['ο', 'omicron'], ['π', 'pi'], ['ρ', 'rho'], ['σ', 'sigma'],
  ['ς', 'sigma'], ['τ', 'tau'], ['υ', 'upsilon'], ['φ', 'phi'], ['χ', 'chi'], ['ψ', 'psi'],
  ['ω', 'omega'], ['Α', 'Alpha'], ['Β', 'Beta'], ['Γ', 'Gamma'], ['Δ', 'Delta'], ['Ε', 'Epsilon'],
  ['Ζ', 'Zeta'], ['Η', 'Eta'], ['Θ', 'Theta'], ['Ι', 'Iota'], ['Κ', 'Kappa'], ['Λ', 'Lambda'],
  ['Μ', 'Mu'], ['Ν', 'Nu'], ['Ξ', 'Xi'], ['Ο', 'Omicron'], ['Π', 'Pi'], ['Ρ', 'Rho'],
  ['Σ', 'Sigma'], ['Τ', 'Tau'], ['Υ', 'Upsilon'], ['Φ', 'Phi'], ['Χ', 'Chi'], ['Ψ', 'Psi'],
  ['Ω', 'Omega'], ['ϑ', 'theta'], ['ϕ', 'phi'], ['ϖ', 'pi'], ['ϵ', 'epsilon'], ['ϰ', 'kappa'],
  ['ϱ', 'rho'], ['ϴ', 'Theta'], ['\u00b5', 'mu']
]); // prettier-ignore

/** Whether a text, as it stands, is a name. */
export function isName(text: string): boolean {
  return plainName.test(text) || (beyondAscii.test(text) && anyName.test(text.normalize('NFC')));
}

/**
 * The one spelling under which a name is known: normalised to NFC, Greek letters by their names.
 * Dotted names keep their points.
 *
 * @example canonicalName('ω_tip')  // 'omega_tip'
 */
export function canonicalName(text: string): string {
  if (!beyondAscii.test(text)) return text;
  return text.normalize('NFC').replace(greek, (letter) => greekNames.get(letter) ?? letter);
}

/** Words that split an entry; reserved inside blocks. */
export const splitWords: ReadonlySet<string> = new Set([
  'where', 'between', 'and', 'with', 'from', 'to', 'over', 'until', 'when', 'within', 'at', 'in',
  'weight', 'by', 'outside', 'of'
]); // prettier-ignore

/** Functions of the language; `log` is none, but is kept free so that it can be asked which is meant. */
export const functionNames: ReadonlySet<string> = new Set([
  'sqrt', 'cbrt', 'abs', 'exp', 'ln', 'log', 'log10', 'log2', 'sin', 'cos', 'tan', 'asin', 'acos',
  'atan', 'atan2', 'sinh', 'cosh', 'tanh', 'asinh', 'acosh', 'atanh', 'min', 'max', 'hypot', 'floor',
  'ceil', 'round', 'mod', 'sign', 'clamp', 'sum', 'mean', 'sd', 'count', 'first', 'last', 'interp',
  'interp_hold', 'interp_spline', 'integrate'
]); // prettier-ignore

/** Constants and words of expressions. */
const reservedWords: ReadonlySet<string> = new Set([
  'pi', 'true', 'false', 'and', 'or', 'not', 'inf', 'none'
]); // prettier-ignore

export type Reservation = 'function' | 'constant' | 'word';

/** Why a name cannot be defined by a line of a worksheet, or null where it can. */
export function reservationOf(name: string): Reservation | null {
  const spelled = canonicalName(name);
  if (functionNames.has(spelled)) return 'function';
  if (spelled === 'pi' || spelled === 'true' || spelled === 'false') return 'constant';
  if (spelled === 'inf' || spelled === 'g_n') return 'constant';
  if (reservedWords.has(spelled) || splitWords.has(spelled)) return 'word';
  return null;
}
