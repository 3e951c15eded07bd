// Prose of a sheet to HTML: CommonMark with tables, mathematics, and live values. Raw HTML is shown
// as text; links go only to web and mail addresses and to places in the sheet; pictures only to files
// beside it. All text passes through the escaping of markdown-it, so a sheet cannot write markup.

import MarkdownIt from 'markdown-it';
import { mathematicsAt } from '#lib/render/index.ts';
import { isWide, renderTex } from '../equation/katex.ts';
import type { LiveValue } from './live.ts';

export interface Heading {
  readonly id: string;
  readonly text: string;
  /** As written: 1 for `#`. */
  readonly level: number;
}

export interface ProseOptions {
  /** What stands for the text between two braces; null leaves the braces as plain text. */
  readonly live: (inside: string) => LiveValue | null;
  /** Address of a picture beside the sheet. */
  readonly pictureHref: (path: string) => string;
  /** Address of another sheet in the folder, by its name without ending. */
  readonly sheetHref: (name: string) => string;
  /** Levels by which headings are moved down, so that the page keeps one title. */
  readonly headingShift: number;
  /** A first-level heading with this text is left out: it is the page's title. */
  readonly title: string | null;
  /** Keeps the anchors of a page's headings apart. */
  readonly anchor: (text: string) => string;
}

export interface RenderedProse {
  readonly html: string;
  readonly headings: readonly Heading[];
  /** What the reader should know, with its line from 0 in the text. */
  readonly notices: readonly {
    readonly line: number;
    readonly sentence: string;
    readonly inside: string;
  }[];
}

// An alias, not an interface: markdown-it asks for an index signature.
type Environment = {
  readonly options: ProseOptions;
  readonly notices: { line: number; sentence: string; inside: string }[];
};

const isEnvironment = (value: unknown): value is Environment =>
  typeof value === 'object' && value !== null && 'notices' in value;

const safeLink = /^(?:https?:\/\/|mailto:|#)/i;
const isRelative = (address: string): boolean => /^(?![/\\#?])[^:\\]+$/.test(address);

const markdown = new MarkdownIt('commonmark', { html: false, linkify: false, typographer: false });
markdown.enable('table');
// Addresses arrive normalised (percent-encoded); what is neither a link of ours nor a picture's path
// stays as the text it was.
markdown.validateLink = (address) => safeLink.test(address) || isRelative(address);

markdown.inline.ruler.before('escape', 'mathematics', (state, silent) => {
  if (state.src[state.pos] !== '$') return false;
  const found = mathematicsAt(state.src, state.pos);
  if (!found || found.end > state.posMax) return false;
  if (!silent) {
    const token = state.push('mathematics', '', 0);
    token.content = found.tex;
    token.meta = { display: found.display };
  }
  state.pos = found.end;
  return true;
});

markdown.inline.ruler.before('escape', 'live', (state, silent) => {
  if (state.src[state.pos] !== '{') return false;
  const end = state.src.indexOf('}', state.pos);
  if (end < 0 || end >= state.posMax || end - state.pos > 200) return false;
  const inside = state.src.slice(state.pos + 1, end);
  if (/[{\n]/.test(inside) || !isEnvironment(state.env)) return false;
  const value = state.env.options.live(inside);
  if (!value) return false;
  if (!silent) {
    const token = state.push('live', '', 0);
    token.content = inside;
    token.meta = value;
  }
  state.pos = end + 1;
  return true;
});

const escape = (text: string): string => markdown.utils.escapeHtml(text);

markdown.renderer.rules['mathematics'] = (tokens, index) => {
  const token = tokens[index];
  const { display } = (token?.meta ?? { display: false }) as { display: boolean };
  const html = renderTex(token?.content ?? '', { display });
  if (!display) return html;
  // What may be wider than the page scrolls, and is reached by key.
  const scrolls = isWide(token?.content ?? '', 'form')
    ? ' data-wide tabindex="0" role="group" aria-label="Long formula"'
    : '';
  return `<span class="display-mathematics"${scrolls}>${html}</span>`;
};

markdown.renderer.rules['live'] = (tokens, index) => {
  const token = tokens[index];
  const value = token?.meta as LiveValue | undefined;
  const written = escape(`{${token?.content ?? ''}}`);
  if (value?.kind !== 'value')
    return `<span class="live" data-state="unknown-name">${written}</span>`;
  const { text, of, state } = value;
  return `<span class="live number" data-state="${state}" title="${escape(of)}">${escape(text)}</span>`;
};

markdown.renderer.rules['link_open'] = (tokens, index, options, environment: unknown, self) => {
  const token = tokens[index];
  const address = String(token?.attrGet('href') ?? '');
  if (/^https?:/i.test(address)) token?.attrSet('rel', 'noreferrer noopener');
  else if (token && !safeLink.test(address)) {
    // Another worksheet beside this one opens; any other file is not served, so it is no link.
    const sheet = /^([^/#?]+)\.md(#.*)?$/i.exec(address);
    if (sheet && isEnvironment(environment))
      token.attrSet('href', environment.options.sheetHref(sheet[1] ?? '') + (sheet[2] ?? ''));
    else token.attrs = null;
  }
  return self.renderToken(tokens, index, options);
};

markdown.renderer.rules['image'] = (tokens, index, _options, environment: unknown) => {
  const token = tokens[index];
  const source = String(token?.attrGet('src') ?? '');
  const words = token?.content ?? '';
  if (!isRelative(source) || !isEnvironment(environment)) return escape(`![${words}](${source})`);
  const address = escape(environment.options.pictureHref(decodePath(source)));
  return `<img src="${address}" alt="${escape(words)}" loading="lazy">`;
};

const decodePath = (source: string): string => {
  try {
    return decodeURI(source);
  } catch {
    return source; // a stray percent sign: the path is taken as it stands
  }
};

type Token = ReturnType<typeof markdown.parse>[number];

/** Text of an inline token without its marks. */
const plainText = (token: Token): string =>
  (token.children ?? [])
    .map((child) =>
      child.type === 'live' && (child.meta as LiveValue).kind === 'value'
        ? (child.meta as { text: string }).text
        : child.type === 'softbreak'
          ? ' '
          : child.content
    )
    .join('');

/** Renders the prose of one item. */
export function renderProse(text: string, options: ProseOptions): RenderedProse {
  const environment: Environment = { options, notices: [] };
  const tokens = markdown.parse(text, environment);
  const headings: Heading[] = [];
  const kept: Token[] = [];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index];
    if (!token) break;
    if (token.type === 'heading_open') {
      const inline = tokens[index + 1];
      const words = inline ? plainText(inline).trim() : '';
      const level = Number(token.tag.slice(1));
      if (level === 1 && options.title !== null && words === options.title.trim()) {
        index += 2; // the inline token and the closing one
        continue;
      }
      const id = options.anchor(words);
      headings.push({ id, text: words, level });
      token.attrSet('id', id);
      token.tag = shifted(level, options.headingShift);
    } else if (token.type === 'heading_close') {
      token.tag = shifted(Number(token.tag.slice(1)), options.headingShift);
    } else if (token.type === 'inline') noteUnknown(token, environment);
    kept.push(token);
  }
  const html = markdown.renderer.render(kept, markdown.options, environment);
  return { html, headings, notices: environment.notices };
}

const shifted = (level: number, by: number): string => `h${Math.min(6, Math.max(2, level + by))}`;

function noteUnknown(token: Token, environment: Environment): void {
  let line = token.map?.[0] ?? 0;
  for (const child of token.children ?? []) {
    if (child.type === 'softbreak' || child.type === 'hardbreak') line++;
    const value = child.type === 'live' ? (child.meta as LiveValue) : null;
    if (value?.kind === 'unknown')
      environment.notices.push({ line, sentence: value.sentence, inside: child.content });
  }
}
