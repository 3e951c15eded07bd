// Front matter: YAML between two lines of three hyphens, the first of them the file's first line.
// The package `yaml` reads it into nodes that know their place, so a value of the wrong type, an
// unknown stage or broken YAML is one problem at its line; everything else is read as it stands.
// Keys that are not ours are kept by never being rewritten.

import { isMap, isScalar, isSeq, parseDocument, type Pair, type YAMLMap } from 'yaml';
import { fileWords, problem, type Problem, type Span, type Wording } from '#lib/problem/index.ts';
import type { ProblemCode } from '#lib/problem/index.ts';
import { linesText, lineText, splitLines, type Lines } from '#lib/text/index.ts';
import { orderStages, type StageDraft } from './stages.ts';
import type { FrontMatter } from './types.ts';

export interface FrontMatterRead {
  readonly frontMatter: FrontMatter;
  readonly problems: readonly Problem[];
}

/** The one stage of a sheet that declares none. */
const onlyStage = { id: 'design', title: 'Design', after: null, date: null, built: false, line: 1 };
const byteOrderMark = '\ufeff';
const mostCharacters = 100_000;
const mostLineCharacters = 2_000;
const stageId = /^[a-z][a-z0-9-]*$/;
const marker = /^---[ \t]*$/;

type Mutable = { -readonly [K in keyof FrontMatter]: FrontMatter[K] };

/** Reads the front matter of a file; a file without any gets what holds by default. */
export function readFrontMatter(lines: Lines): FrontMatterRead {
  const lineCount = frontMatterLines(lines);
  const problems: Problem[] = [];
  const result: Mutable = {
    text: lineCount === 0 && lines.text.startsWith(byteOrderMark) ? byteOrderMark : linesText(lines, 0, lineCount),
    lineCount, format: 1, title: null, summary: null, by: [], units: 'SI', digits: 4, money: null,
    headline: null, stages: [onlyStage]
  }; // prettier-ignore
  if (lineCount === 0) {
    const problemOfStart = openStart(lines);
    return { frontMatter: result, problems: problemOfStart ? [problemOfStart] : [] };
  }
  const yaml = linesText(lines, 1, lineCount - 1);
  const tooLarge = sizeProblem(yaml);
  if (tooLarge !== null) {
    problems.push(problem('file/front-matter', { line: 1, from: 1, to: 4 }, tooLarge));
    return { frontMatter: result, problems };
  }
  readYaml(yaml, result, problems);
  return { frontMatter: result, problems };
}

function isMarker(lines: Lines, index: number): boolean {
  const line = lineText(lines, index);
  return marker.test(index === 0 && line.startsWith(byteOrderMark) ? line.slice(1) : line);
}

function frontMatterLines(lines: Lines): number {
  if (lines.count === 0 || !isMarker(lines, 0)) return 0;
  for (let i = 1; i < lines.count; i++) {
    if (lines.text.startsWith('---', lines.starts[i]) && isMarker(lines, i)) return i + 1;
  }
  return 0;
}

// A first line of hyphens is a rule of CommonMark, unless what follows looks like keys.
function openStart(lines: Lines): Problem | null {
  if (lines.count < 2 || !isMarker(lines, 0)) return null;
  if (!/^[A-Za-z][A-Za-z-]{0,30}:(?: |$)/.test(lineText(lines, 1).slice(0, 40))) return null;
  const from = lines.text.startsWith(byteOrderMark) ? 2 : 1;
  return problem('file/front-matter', { line: 1, from, to: from + 3 }, fileWords.frontMatterOpen());
}

function sizeProblem(yaml: string): Wording | null {
  if (yaml.length > mostCharacters)
    return fileWords.frontMatterTooLarge(`${mostCharacters} characters`);
  const lines = splitLines(yaml);
  const long = lines.ends.some((end, i) => end - (lines.starts[i] ?? 0) > mostLineCharacters);
  return long ? fileWords.frontMatterTooLarge(`${mostLineCharacters} characters in a line`) : null;
}

function readYaml(yaml: string, result: Mutable, problems: Problem[]): void {
  const places = createPlaces(yaml);
  const document = parseDocument(yaml, { prettyErrors: false, logLevel: 'silent', version: '1.2' });
  const report = (code: ProblemCode, node: unknown, words: Wording): void => {
    problems.push(problem(code, places.ofNode(node), words));
  };
  for (const error of document.errors) {
    const at = places.ofOffsets(error.pos[0], error.pos[1]);
    problems.push(
      problem('file/front-matter', at, fileWords.frontMatterYaml(reasonOf(error.message)))
    );
  }
  const root: unknown = document.contents;
  if (root === null || (isScalar(root) && root.value === null)) return;
  if (!isMap(root)) {
    if (document.errors.length === 0) {
      report('file/front-matter', root, fileWords.frontMatterShape(shapeOf(root)));
    }
    return;
  }
  const wrong = (pair: Pair, key: string, expected: string): void => {
    const node = pair.value ?? pair.key;
    report(
      'file/front-matter',
      node,
      fileWords.frontMatterValue(key, shapeOf(pair.value), expected)
    );
  };
  for (const pair of root.items) {
    const key = textOf(pair.key);
    const words = textOf(pair.value);
    if (key === null || isEmpty(pair.value)) continue;
    switch (key) {
      case 'title': case 'summary': case 'headline':
        if (words === null) wrong(pair, key, key === 'headline' ? 'the name of an input' : 'a line of text');
        else result[key] = words;
        break;
      case 'by': {
        const names = isSeq(pair.value) ? pair.value.items.map(textOf) : [words];
        if (names.includes(null)) wrong(pair, key, 'a list of names, as in [A. Designer, B. Builder]');
        result.by = names.filter((name) => name !== null);
        break;
      }
      case 'format':
        if (words !== '1') {
          report('file/front-matter', pair.value, fileWords.formatUnknown(words ?? shapeOf(pair.value)));
        }
        break;
      case 'units':
        if (words === 'SI' || words === 'US') result.units = words;
        else wrong(pair, key, 'SI or US');
        break;
      case 'digits':
        if (words !== null && /^\d{1,2}$/.test(words) && Number(words) >= 2 && Number(words) <= 12) {
          result.digits = Number(words);
        } else wrong(pair, key, 'a whole number from 2 to 12');
        break;
      case 'money':
        if (words !== null && /^[A-Z]{3}$/.test(words)) result.money = words;
        else wrong(pair, key, 'a currency in three capital letters, as in EUR');
        break;
      case 'stages':
        if (isMap(pair.value)) readStages(pair.value, result, problems, places);
        else wrong(pair, key, 'one line a stage, as in sketch: First sketch');
        break;
    }
  } // prettier-ignore
}

function readStages(map: YAMLMap, result: Mutable, problems: Problem[], places: Places): void {
  const drafts: StageDraft[] = [];
  const declared = new Set<string>();
  for (const pair of map.items) {
    const id = textOf(pair.key);
    const at = places.ofNode(pair.key);
    if (id === null || !stageId.test(id)) {
      const found = id ?? shapeOf(pair.key);
      problems.push(problem('file/front-matter', at, fileWords.stageIdForm(found)));
      continue;
    }
    if (declared.has(id)) continue;
    declared.add(id);
    const draft: StageDraft = {
      id,
      title: id,
      after: null,
      afterAt: at,
      date: null,
      built: false,
      line: at.line
    };
    drafts.push(draft);
    const title = textOf(pair.value);
    if (isMap(pair.value)) readStage(pair.value, draft, problems, places);
    else if (title !== null) draft.title = title;
    else if (!isEmpty(pair.value)) {
      const expected = 'a title, or { title: …, after: …, date: …, built: … }';
      const words = fileWords.frontMatterValue(id, shapeOf(pair.value), expected);
      problems.push(problem('file/front-matter', places.ofNode(pair.value), words));
    }
  }
  if (drafts.length === 0) return;
  result.stages = orderStages(drafts, problems);
}

function readStage(map: YAMLMap, draft: StageDraft, problems: Problem[], places: Places): void {
  for (const pair of map.items) {
    const key = textOf(pair.key);
    const words = textOf(pair.value);
    if (key === null || isEmpty(pair.value)) continue;
    const wrong = (expected: string): void => {
      const value = fileWords.frontMatterValue(key, shapeOf(pair.value), expected);
      problems.push(problem('file/front-matter', places.ofNode(pair.value ?? pair.key), value));
    };
    if (key === 'title') {
      if (words === null) wrong('a line of text');
      else draft.title = words;
    } else if (key === 'after') {
      if (words === null) wrong('the id of another stage');
      else {
        draft.after = words;
        draft.afterAt = places.ofNode(pair.value);
      }
    } else if (key === 'date') {
      if (words !== null && /^\d{4}-\d{2}-\d{2}$/.test(words)) draft.date = words;
      else wrong('a date, as in 2026-03-14');
    } else if (key === 'built') {
      if (words === 'true' || words === 'false') draft.built = words === 'true';
      else wrong('true or false');
    }
  }
}

interface Places {
  ofOffsets(from: number, to: number): Span;
  ofNode(node: unknown): Span;
}

// Offsets in the YAML text to lines of the file; the opening line of hyphens is line 1.
function createPlaces(yaml: string): Places {
  const lines = splitLines(yaml);
  const ofOffsets = (from: number, to: number): Span => {
    let index = 0;
    while (index + 1 < lines.count && (lines.starts[index + 1] ?? Infinity) <= from) index++;
    const start = lines.starts[index] ?? 0;
    const end = lines.ends[index] ?? yaml.length;
    const first = Math.min(from, end);
    return {
      line: index + 2,
      from: first - start + 1,
      to: Math.max(first, Math.min(to, end)) - start + 1
    };
  };
  const ofNode = (node: unknown): Span => {
    const range = (node as { range?: readonly number[] | null } | null)?.range;
    return ofOffsets(range?.[0] ?? 0, range?.[1] ?? 0);
  };
  return { ofOffsets, ofNode };
}

// The words of a plain value as the file has them: 2026-03-14 and 1.10 keep their digits.
function textOf(node: unknown): string | null {
  if (!isScalar(node) || node.value === null) return null;
  if (typeof node.value === 'string') return node.value;
  return (
    node.source ??
    (typeof node.value === 'number' || typeof node.value === 'boolean' ? String(node.value) : null)
  );
}

function isEmpty(node: unknown): boolean {
  return node === null || node === undefined || (isScalar(node) && node.value === null);
}

function shapeOf(node: unknown): string {
  if (isMap(node)) return 'a set of keys';
  if (isSeq(node)) return 'a list';
  return textOf(node) ?? 'empty';
}

// The parser's own words: first line only, without its full stop, in small letters.
function reasonOf(message: string): string {
  const line = (message.split('\n', 1)[0] ?? '').replace(/[.:]$/, '');
  return line.charAt(0).toLowerCase() + line.slice(1);
}
