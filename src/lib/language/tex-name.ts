// A name as TeX. The part before the first `_` is the symbol: one letter or a Greek name in italics,
// longer words upright, so that they do not read as a product. What follows is the subscript: words
// upright, single letters and Greek in italics. Only letters, digits and our own commands come out,
// whatever the name holds.
// Upright words, italic symbols: ISO 80000-1, 7.1 (from memory).

/** Names of Greek letters and their commands; ε and φ in the form that the keyboard gives. */
const greek: ReadonlyMap<string, string> = new Map(
  [
    'alpha', 'beta', 'gamma', 'delta', 'epsilon', 'zeta', 'eta', 'theta', 'iota', 'kappa', 'lambda',
    'mu', 'nu', 'xi', 'omicron', 'pi', 'rho', 'sigma', 'tau', 'upsilon', 'phi', 'chi', 'psi', 'omega'
  ].flatMap((name) => {
    const capital = name.charAt(0).toUpperCase() + name.slice(1);
    const small = name === 'epsilon' || name === 'phi' ? `\\var${name}` : `\\${name}`;
    return [[name, small], [capital, `\\${capital}`]] as const;
  })
); // prettier-ignore

/** Letters beyond ASCII that a text in TeX can hold: Latin, Cyrillic, Georgian, Indic, Kana, Han, Hangul. */
const printable: readonly (readonly [number, number])[] = [
  [0xc0, 0xd6],
  [0xd8, 0xf6],
  [0xf8, 0x24f],
  [0x400, 0x4ff],
  [0x10a0, 0x10ff],
  [0x904, 0x939],
  [0x3041, 0x3096],
  [0x30a1, 0x30fa],
  [0x4e00, 0x9faf],
  [0xac00, 0xd7a3]
];

/**
 * TeX of a name: 'P_{\mathrm{drag}}' for P_drag, '\omega' for omega, 'T_{1}' for T1.
 *
 * @param name  in canonical form; a dotted name is written block.name
 */
export function texOfName(name: string): string {
  const parts = name.split('.');
  const symbol = symbolTex(parts.pop() ?? '');
  return [...parts.map((block) => upright(block)), symbol].join('\\mathord{.}');
}

/** Whether a name prints as more than one symbol, so that a power or call after it needs brackets. */
export function isCompoundName(name: string): boolean {
  return name.includes('.') || /^Delta_[^\d]/.test(name);
}

function symbolTex(name: string): string {
  const [first = '', ...rest] = name.split('_').filter((part) => part !== '');
  if (first === '') return '\\_'.repeat(Math.max(1, name.length));
  // Delta_T is read as a difference: one symbol with the name after it.
  if (first === 'Delta' && rest.length > 0 && !/^\d/.test(rest[0] ?? '')) {
    return `\\Delta ${symbolTex(rest.join('_'))}`;
  }
  const { symbol, digits } = splitDigits(first);
  const below = [...(digits === '' ? [] : [digits]), ...rest.map(subscriptTex)];
  return below.length === 0 ? symbol : `${symbol}_{${below.join(',')}}`;
}

/** 'T1' is T with index 1; a longer word keeps its digits. */
function splitDigits(part: string): { readonly symbol: string; readonly digits: string } {
  const [, letters = '', digits = ''] = /^(.*?)(\d*)$/u.exec(part) ?? [];
  if (digits !== '' && (letters.length === 1 || greek.has(letters))) {
    return { symbol: wordTex(letters), digits };
  }
  return { symbol: wordTex(part), digits: '' };
}

function subscriptTex(part: string): string {
  return /^\d+$/.test(part) ? part : wordTex(part);
}

function wordTex(word: string): string {
  const letter = greek.get(word);
  if (letter !== undefined) return letter;
  return /^[A-Za-z]$/.test(word) ? word : upright(word);
}

/** A word in upright letters; a letter that cannot be printed is given by its number. */
export function upright(word: string): string {
  if (/^[A-Za-z0-9]+$/.test(word)) return `\\mathrm{${word}}`;
  if (/^[A-Za-z0-9_]+$/.test(word)) return `\\mathrm{${word.replace(/_/g, '\\_')}}`;
  return `\\text{${[...word].map(characterText).join('')}}`;
}

function characterText(character: string): string {
  if (/^[A-Za-z0-9]$/.test(character)) return character;
  if (character === '_') return '\\_';
  const code = character.codePointAt(0) ?? 0;
  if (printable.some(([from, to]) => code >= from && code <= to)) return character;
  return `(U+${code.toString(16).toUpperCase().padStart(4, '0')})`;
}
