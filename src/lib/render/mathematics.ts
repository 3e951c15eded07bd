// Where mathematics stands in prose: `$…$` and `$$…$$`. The opening `$` is not followed, the closing
// one not preceded by space, nor followed by a digit, so that prices stay prices.

export interface Mathematics {
  readonly tex: string;
  readonly display: boolean;
  /** Position behind the closing sign. */
  readonly end: number;
}

/** The mathematics that begins at a position of a text, or null. */
export function mathematicsAt(text: string, from: number): Mathematics | null {
  display.lastIndex = from;
  const shown = display.exec(text);
  if (shown) return { tex: shown[1] ?? '', display: true, end: display.lastIndex };
  inline.lastIndex = from;
  const within = inline.exec(text);
  return within ? { tex: within[1] ?? '', display: false, end: inline.lastIndex } : null;
}

const display = /\$\$((?:[^$\\]|\\[^])+)\$\$/y;
const inline = /\$(?!\s)((?:[^$\\\n]|\\.)*?[^\s$\\])\$(?!\d)/y;
