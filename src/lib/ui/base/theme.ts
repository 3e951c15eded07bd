// Light or dark: the system's until the reader chooses; the choice is kept in a cookie, so that the
// server sends the right page at once and it works without scripts.

export type Theme = 'light' | 'dark';

/** The theme a text names, or null: the system's. */
export const themeOf = (text: string | undefined | null): Theme | null =>
  text === 'light' || text === 'dark' ? text : null;
