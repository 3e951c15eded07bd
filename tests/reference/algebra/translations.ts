// Forms of mathjs that a worksheet writes differently, or not at all. Everything here is deliberate:
// worksheet-format says that a worksheet must not surprise, and gives the reason of each rule.

/** A form that is rewritten wherever it stands. `refusal` is what the form itself gets. */
export interface Translation {
  readonly form: RegExp;
  readonly instead: string;
  readonly refusal: string;
  readonly why: string;
}

export const translations: readonly Translation[] = [
  {
    form: /\blog\(/g,
    instead: 'ln(',
    refusal: 'names/not-a-function',
    why: 'ln or log10? The one word means both in books'
  },
  {
    form: /\be\b/g,
    instead: 'exp(1)',
    refusal: 'names/unknown',
    why: 'e is a free name: eccentricity, strain, charge'
  },
  {
    form: /\btau\b/g,
    instead: '(2*pi)',
    refusal: 'names/unknown',
    why: 'tau is a free name: shear stress, time constant'
  },
  {
    form: /\bphi\b/g,
    instead: '((1 + sqrt(5))/2)',
    refusal: 'names/unknown',
    why: 'phi is a free name: angles'
  },
  {
    form: /\bpow\(([^,()]+), ([^,()]+)\)/g,
    instead: '(($1)^($2))',
    refusal: 'names/not-a-function',
    why: 'one way to write a power'
  },
  {
    form: /\bsquare\(([^()]+)\)/g,
    instead: '(($1)^2)',
    refusal: 'names/not-a-function',
    why: 'one way to write a power'
  },
  {
    form: /\berf\(([^()]+)\)/g,
    instead: '(2/sqrt(pi)*integrate(exp(-t^2), t, 0, $1))',
    refusal: 'names/not-a-function',
    why: 'not in the list of functions; its definition is'
  }
];

/** Cases that are rewritten as a whole; `refusal` is what the form as written gets. */
export const rewritten: Readonly<Record<string, { instead: string; refusal: string }>> = {
  // No juxtaposition but a number before pi or a bracket where no `/` stands before it.
  a066: { instead: '(1+2)*(3+4)', refusal: 'syntax/missing-operator' },
  a072: { instead: '2*(3)*(4)', refusal: 'syntax/missing-operator' },
  a073: { instead: '2*exp(1)', refusal: 'syntax/missing-operator' },
  a075: { instead: '3/4*(8)', refusal: 'syntax/missing-operator' },
  a076: { instead: '(1+3)*pi', refusal: 'syntax/missing-operator' },
  a078: { instead: 'pi/(2*pi)', refusal: 'syntax/missing-operator' },
  a079: { instead: '2*sin(pi/6)', refusal: 'syntax/missing-operator' },
  a081: { instead: '(2+1)*(2-1)^3', refusal: 'syntax/missing-operator' },
  a082: { instead: '2*pi*3', refusal: 'syntax/missing-operator' },
  a084: { instead: '1/2*(3+5)', refusal: 'syntax/missing-operator' },
  a085: { instead: 'sqrt(4)*(1+2)', refusal: 'syntax/missing-operator' },
  // Constants that only a computer scientist looks for.
  a096: { instead: 'sqrt(1/2)', refusal: 'names/unknown' },
  a097: { instead: 'ln(2)', refusal: 'names/unknown' },
  a099: { instead: '1/ln(2)', refusal: 'names/unknown' },
  a100: { instead: '1/ln(10)', refusal: 'names/unknown' },
  // Functions that the list of the language leaves out, in terms of those it has.
  a111: { instead: '2*exp(1e-6/2)*sinh(1e-6/2)', refusal: 'names/not-a-function' },
  a120: { instead: '1/tan(0.7)', refusal: 'names/not-a-function' },
  a121: { instead: '1/cos(0.3)', refusal: 'names/not-a-function' },
  a141: { instead: 'ceil(-2.7)', refusal: 'names/not-a-function' },
  a150: { instead: 'integrate(t^3.5*exp(-t), t, 0, inf)', refusal: 'names/not-a-function' },
  a156: { instead: '5*4', refusal: 'names/not-a-function' },
  // No factorial: `!` is easily read over.
  a147: { instead: '5*4*3*2*1', refusal: 'syntax/not-in-language' },
  a148: { instead: '(3*2*1)^2', refusal: 'syntax/not-in-language' },
  // Statistics are of columns; the test's sheet has tables for them.
  a157: { instead: 'mean(three.x)', refusal: 'names/arguments' },
  a159: { instead: 'sd(four.x)', refusal: 'names/not-a-function' },
  a160: { instead: 'sum(addends.x)', refusal: 'names/arguments' }
};

/** Cases without a counterpart: whole-number theory has no place on a bench. */
export const refused: Readonly<Record<string, string>> = {
  a153: 'names/not-a-function',
  a154: 'names/not-a-function'
};

/** A meaning that is ours: `%` is 0.01, always, so 100 - 3% is 99.97 and not 97. */
export const meansOtherwise: Readonly<Record<string, number>> = { a171: 99.97 };

/** The tables that the translations read. */
export const tables: Readonly<Record<string, readonly number[]>> = {
  three: [2, 4, 9],
  four: [1, 2, 3, 4],
  addends: [1, 2, 3.5]
};
