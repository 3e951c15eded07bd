// Text in a terminal: how wide a string is, padding, clipping, and what must never reach a screen.
// A worksheet may come from anybody, so control characters (which could move the cursor, colour or
// retitle a terminal) and direction overrides are shown as signs instead of being passed on.
// Width after Unicode Standard Annex 11 (East Asian Width), its wide blocks only, from memory.

/** Colours, as functions that wrap a text; `plainPalette` leaves it alone. */
export interface Palette {
  readonly over: (text: string) => string;
  readonly close: (text: string) => string;
  readonly inside: (text: string) => string;
  readonly quiet: (text: string) => string;
  readonly strong: (text: string) => string;
}

const asItIs = (text: string): string => text;
export const plainPalette: Palette = {
  over: asItIs,
  close: asItIs,
  inside: asItIs,
  quiet: asItIs,
  strong: asItIs
};

/** Every control but newline and tab, line separators, and marks that turn the direction of writing. */
const controls = /(?![\n\t])[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu;

/**
 * A text that cannot steer a terminal: controls become Unicode control pictures, direction marks and
 * line separators a replacement sign. Newline and tab stay.
 */
export function printable(text: string): string {
  return text.replaceAll('\r\n', '\n').replace(controls, (sign) => {
    const code = sign.charCodeAt(0);
    if (code < 0x20) return String.fromCharCode(0x2400 + code);
    return code === 0x7f ? '\u2421' : '\ufffd';
  });
}

/** The same on one line: white space runs become one space. */
export const printableLine = (text: string): string =>
  printable(text)
    .replace(/[ \t\n]+/g, ' ')
    .trim();

const zeroWidth = /[\p{Mn}\p{Me}\p{Cf}]/u;
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;

/** Columns that a text takes on a terminal. */
export function displayWidth(text: string): number {
  if (/^[\u0020-\u007e]*$/.test(text)) return text.length;
  let width = 0;
  for (const sign of text) width += zeroWidth.test(sign) ? 0 : wide.test(sign) ? 2 : 1;
  return width;
}

export const padRight = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - displayWidth(text)));

export const padLeft = (text: string, width: number): string =>
  ' '.repeat(Math.max(0, width - displayWidth(text))) + text;

/** At most `width` columns; what is cut off is told by an ellipsis. */
export function clip(text: string, width: number): string {
  if (displayWidth(text) <= width) return text;
  let kept = '';
  let used = 0;
  for (const sign of text) {
    const step = displayWidth(sign);
    if (used + step > width - 1) break;
    kept += sign;
    used += step;
  }
  return kept + '…';
}

/** Words broken into lines of at most `width` columns; a longer word keeps a line of its own. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ +/)) {
    if (line !== '' && displayWidth(line) + 1 + displayWidth(word) > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines;
}

/** The widest of some texts, 0 for none. */
export const widest = (texts: Iterable<string>): number => {
  let most = 0;
  for (const text of texts) most = Math.max(most, displayWidth(text));
  return most;
};
