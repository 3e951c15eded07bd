// The page of a worksheet, from its results and the view asked for: plain data, made in one pass down
// the file. Problems are handed to the line they stand on; what no line takes is shown at the head, so
// that none is lost.

import { counted, partsWithoutCheck, titleOf } from '#lib/render/index.ts';
import type { Results } from '#lib/sheet/index.ts';
import { blockItems } from './blocks.ts';
import type { PageContext } from './context.ts';
import { lettersOf } from './letters.ts';
import { liveValueOf } from './live.ts';
import { renderProse, type Heading, type ProseOptions } from './markdown.ts';
import { notesOf } from './notes.ts';
import { attentionAt, idsOf, stageHead, stageMarks, verdictOf } from './stages.ts';
import type { CautionItem, ContentsEntry, Item, PageModel, ProblemNote } from './types.ts';
import { columnsOf, hrefOf, viewOf, type View, type ViewRequest } from './view.ts';

export interface PageRequest {
  readonly results: Results;
  /** File name, as the reader knows it. */
  readonly file: string;
  readonly view: ViewRequest;
  /** Address of a picture beside the sheet. */
  readonly pictureHref: (path: string) => string;
  /** Address of another sheet by its name without ending. */
  readonly sheetHref: (name: string) => string;
}

/** The page of a worksheet. */
export function pageModel(request: PageRequest): PageModel {
  const { results, file } = request;
  const ids = idsOf(results);
  const view = viewOf(request.view, ids);
  const context: PageContext = {
    results,
    view,
    marks: stageMarks(results.stages),
    columns: columnsOf(view, ids.length),
    letters: lettersOf(results),
    notes: notesOf(results.problems, results.worksheet.text.split(/\r?\n/), results.stages)
  };
  const shown = context.marks[view.shown];
  if (!shown) throw new RangeError('a sheet has at least one stage');

  const title = titleOf(results) ?? file.replace(/\.md$/i, '');
  const frontMatterEnd = results.worksheet.frontMatter.lineCount + 1;
  const headProblems = context.notes.take(1, frontMatterEnd);
  const { items, headings } = itemsOf(context, request, title);
  const problems = [...headProblems, ...context.notes.takeRest()];
  const { summary, by } = results.worksheet.frontMatter;
  return {
    file,
    title,
    summary,
    by: by.length === 0 ? null : by.join(', '),
    stages: context.columns.map((index) => stageHead(context, index)),
    ...windowLinks(context, ids),
    shown,
    hasFocus: view.focus !== null,
    hasNumbers: view.hasNumbers,
    numbersHref: hrefOf({ ...view, hasNumbers: !view.hasNumbers }, ids),
    sideBySideHref: hrefOf({ ...view, focus: null }, ids),
    verdict:
      results.limits.size + partsWithoutCheck(results).length === 0 ? [] : verdictOf(results),
    contents: contentsOf(headings),
    attention: attentionAt(results, view.shown),
    items,
    cautions: items.filter((item): item is CautionItem => item.kind === 'caution'),
    problems,
    mistakes: mistakesOf(results)
  };
}

interface Body {
  readonly items: readonly Item[];
  readonly headings: readonly Heading[];
}

function itemsOf(context: PageContext, request: PageRequest, title: string): Body {
  const { results } = context;
  const items: Item[] = [];
  const headings: Heading[] = [];
  const options = { ...proseOptions(context, request), title };
  const sheetItems = results.worksheet.items;
  // A sheet that uses `#` beyond its title has its sections there, else they are at `##`.
  const headingShift = sheetItems.some(
    (item) => item.kind === 'prose' && usesTopLevel(item.text, title)
  )
    ? 1
    : 0;
  const prose = (text: string, line: number, scope: 'view' | 'greatest', isBlock: boolean) => {
    const rendered = renderProse(text, {
      ...options,
      headingShift: isBlock ? 2 : headingShift,
      live: (inside) => liveValueOf(context, inside, scope)
    });
    if (!isBlock) headings.push(...rendered.headings);
    const taken = context.notes
      .take(line, line + text.split('\n').length)
      // What stands in prose is told in the open: there is no row to fold it under.
      .map((note) => (note.severity === 'note' ? { ...note, severity: 'warning' as const } : note));
    const own = rendered.notices
      .filter(({ line: at, inside }) => {
        const [name = inside] = inside.trim().split(/\s/);
        return !taken.some((note) => note.line === line + at && note.message.includes(name));
      })
      .map((notice) => noticeOf(results, line + notice.line, notice));
    return { html: rendered.html, problems: [...taken, ...own] };
  };
  for (const item of sheetItems) {
    if (item.kind === 'block') {
      items.push(...blockItems(context, item, (text, line) => prose(text, line, 'greatest', true)));
      continue;
    }
    const { html, problems } = prose(item.text, item.line, 'view', false);
    if (html.trim() !== '' || problems.length > 0)
      items.push({ kind: 'prose', id: `line-${item.line}`, html, problems });
  }
  return { items, headings };
}

/** A value in prose that names nothing is told below its paragraph, with the line as written. */
function noticeOf(
  results: Results,
  line: number,
  { sentence, inside }: { sentence: string; inside: string }
): ProblemNote {
  const text = results.worksheet.text.split(/\r?\n/)[line - 1] ?? '';
  const at = text.indexOf(`{${inside}}`);
  return {
    severity: 'warning',
    line,
    stage: null,
    message: sentence,
    hint: 'Check the name, or put the braces between backticks where they are meant as text.',
    source:
      at < 0
        ? null
        : {
            before: text.slice(Math.max(0, at - 40), at),
            marked: text.slice(at, at + inside.length + 2),
            after: text.slice(at + inside.length + 2, at + inside.length + 42)
          },
    replacement: null
  };
}

function usesTopLevel(text: string, title: string): boolean {
  for (const [, words] of text.matchAll(/^ {0,3}#[ \t]+(.+?)[ \t]*#*[ \t]*\r?$/gm))
    if (words !== undefined && words.trim() !== title.trim()) return true;
  return false;
}

function proseOptions(
  context: PageContext,
  { pictureHref, sheetHref }: PageRequest
): Omit<ProseOptions, 'headingShift' | 'title'> {
  const used = new Map<string, number>();
  return {
    live: () => null,
    pictureHref,
    sheetHref,
    anchor: (text) => {
      const words =
        text
          .toLowerCase()
          .match(/[\p{L}\p{N}]+/gu)
          ?.join('-') ?? 'section';
      const count = (used.get(words) ?? 0) + 1;
      used.set(words, count);
      // The prefix keeps a heading's anchor from being the name of anything else on the page.
      return `s-${words}${count > 1 ? `-${count}` : ''}`;
    }
  };
}

/** The two upper levels that the sheet uses. */
function contentsOf(headings: readonly Heading[]): readonly ContentsEntry[] {
  const top = Math.min(...headings.map(({ level }) => level));
  return headings
    .filter(({ level }) => level <= top + 1)
    .map(({ id, text, level }) => ({ href: `#${id}`, text, depth: level === top ? 0 : 1 }));
}

function windowLinks(
  { columns, view }: PageContext,
  ids: readonly string[]
): Pick<PageModel, 'earlier' | 'later'> {
  const [first = 0, last = 0] = [columns[0], columns.at(-1)];
  const link = (count: number, word: string, shown: number): PageModel['earlier'] =>
    count <= 0
      ? null
      : {
          text: `${count} ${word}`,
          href: hrefOf(
            { ...view, focus: view.focus === null ? null : shown, shown } satisfies View,
            ids
          )
        };
  return {
    earlier: link(first, 'earlier', Math.max(0, first - 1)),
    later: link(ids.length - 1 - last, 'later', Math.min(ids.length - 1, last + 1))
  };
}

function mistakesOf(results: Results): string | null {
  const lines = new Set(
    results.problems.filter((one) => one.severity === 'error').map((one) => one.at.line)
  );
  if (lines.size === 0) return null;
  return `${counted(lines.size, 'line has', 'lines have')} a mistake; the rest is computed.`;
}
