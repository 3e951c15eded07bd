// The page docs/problems.md, made from the catalogue and from what the engine says about each example.
// `npm run problems` writes it; page.test.ts fails where the written page is another.

import {
  areaTitles,
  catalogue,
  type CatalogueEntry,
  type RaisedProblem
} from '#lib/problem/index.ts';
import { markedText, problemsOf } from './said.ts';

const opening = `# Problems

What a worksheet can be told about its own lines. One wrong line stops only itself and what depends on
it; the rest computes. A problem names its place, says in one sentence what was found and what was
expected, and offers something that can be done.

An *error* has no value. A *warning* has one, and asks for a second look. A *note* is said quietly, and
shown on demand. The figures in the examples are invented.

This page is made from the catalogue in \`src/lib/problem/\` by \`npm run problems\`; a test holds the two
together.
`;

export function problemsPage(): string {
  const parts = [opening, contents()];
  let area = '';
  for (const entry of catalogue) {
    const own = areaOf(entry.code);
    if (own !== area) parts.push(`## ${areaTitles[own] ?? own}\n`);
    area = own;
    parts.push(entry.isLater ? laterSection(entry) : section(entry));
  }
  return `${parts.join('\n').trimEnd()}\n`;
}

const areaOf = (code: string): string => code.slice(0, code.indexOf('/'));

function contents(): string {
  const areas = [...new Set(catalogue.map(({ code }) => areaOf(code)))];
  const lines = areas.map((area) => {
    const title = areaTitles[area] ?? area;
    const anchor = title.toLowerCase().replace(/[^a-z ]/gu, '').replace(/ /gu, '-');
    const codes = catalogue.filter(({ code }) => areaOf(code) === area);
    return `- [${title}](#${anchor}): ${codes.map(({ code }) => `\`${code}\``).join(', ')}`;
  }); // prettier-ignore
  return `${lines.join('\n')}\n`;
}

function laterSection({ code, meaning }: CatalogueEntry): string {
  return `### ${code}\n\n${meaning} No worksheet raises it in this release.\n`;
}

function section(entry: RaisedProblem): string {
  const { code, meaning, severity, inWords } = entry;
  const files = Object.entries(entry.files).map(
    ([path, text]) => `Beside it, \`${path}\`:\n\n${fenced(text)}`
  );
  const example = inWords ? `${inWords.example}\n` : fenced(entry.example);
  const cure = inWords ? `${inWords.cure}\n` : fenced(entry.cure);
  return [
    `### ${code}\n`,
    `${meaning} *${severity[0]?.toUpperCase() ?? ''}${severity.slice(1)}.*\n`,
    example,
    ...files,
    said(entry),
    `Put right:\n`,
    cure
  ].join('\n');
}

function said(entry: RaisedProblem): string {
  const lines = problemsOf(entry.example, entry.files).map((found) => {
    const marked = markedText(entry.example, found);
    const place = marked.length > 60 ? '' : `, ${codeSpan(marked)}`;
    const hint = found.hint === null ? '' : `\n> ${asText(found.hint)}`;
    return `> Line ${found.at.line}${place}: ${asText(found.message)}${hint}\n`;
  });
  return lines.join('>\n');
}

/** Worksheets hold fences of three, so theirs has four. */
const fenced = (text: string): string => `\`\`\`\`text\n${text}\`\`\`\`\n`;

/** A code span with a fence longer than any run of backticks in it. */
function codeSpan(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/gu)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  return longest > 0 ? `${fence} ${text} ${fence}` : `${fence}${text}${fence}`;
}

/** Signs that Markdown would take as its own. */
const asText = (text: string): string => text.replace(/[\\`*_<[\]]/gu, '\\$&');
