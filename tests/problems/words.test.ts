// No word of the program judges for the one who reads it. What a sheet finds is said in the statuses of
// its limits; nothing ever says that a machine may run. Texts are read from the source with TypeScript's
// own parser, so names and comments of the code do not count.

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');

/** Folders whose texts reach a reader. */
const folders = [
  'src/lib/problem', 'src/lib/render', 'src/cli', 'src/lib/ui', 'src/routes', 'src/lib/sheet', 'src/lib/units',
  'src/lib/document', 'src/lib/language', 'src/lib/analysis', 'src/lib/check'
]; // prettier-ignore

/** Words of a judgement that is not ours to make. */
const judging =
  /\b(safe(ly)?|unsafe|fit for|fits? to run|permit(s|ted)?|allowed|allowable|ok(ay)?|all clear|approved)\b/iu;
/** What a problem never does: blame, beg, or leave it at "invalid"; and terms that the house keeps out. */
const unkind =
  /\b(please|invalid|illegal|oops|sorry|wrongly|you (must|should|forgot)|bad (value|input)|NaN|undefined|null|AST|token|parser|parse error|exception|stack)\b/u;

/** Words and signs of other kinds of program; this one has its own. */
const borrowed = /\b(notebooks?|spreadsheets?|workbooks?|kernel)\b|:=|\b(in|out)\[/iu;

/** Texts in which such a word is a name, not a judgement. ("Safety" names a kind of limit and judges nothing.) */
const names: readonly RegExp[] = [
  /'unsafe-inline'/u, // of a Content-Security-Policy
  /^:=$/u // a sign that is looked for, to say what is written here
];

interface Text {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(root, folder)).flatMap((name) => {
    const path = `${folder}/${name}`;
    if (name === 'node_modules') return [];
    if (statSync(join(root, path)).isDirectory()) return filesUnder(path);
    return /\.(ts|svelte)$/u.test(name) && !/\.(test|fixture)\.ts$/u.test(name) ? [path] : [];
  });
}

/** Every text of a file that may be shown: string and template literals, and the markup of a component. */
function textsOf(file: string): readonly Text[] {
  const whole = readFileSync(join(root, file), 'utf8');
  const script = file.endsWith('.svelte')
    ? [...whole.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/gu)]
        .map(([, inner]) => inner ?? '')
        .join('\n')
    : whole;
  const texts: Text[] = [];
  const source = ts.createSourceFile(file, script, ts.ScriptTarget.ES2022, true);
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node))
      return;
    const isText = ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) ||
      ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node); // prettier-ignore
    if (isText) {
      const line = source.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      texts.push({ file, line, text: node.text });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  if (file.endsWith('.svelte')) {
    const markup = whole.replace(
      /<(script|style)[^>]*>[\s\S]*?<\/\1>|<!--[\s\S]*?-->|\{[^{}]*\}|<[^>]*>/gu,
      ' '
    );
    texts.push({ file, line: 0, text: markup });
  }
  return texts;
}

const all = folders.flatMap(filesUnder).flatMap(textsOf);
const found = (words: RegExp, texts: readonly Text[]): readonly string[] =>
  texts
    .filter(({ text }) => words.test(text) && !names.some((name) => name.test(text)))
    .map(({ file, line, text }) => `${file}:${line}: ${text.trim().slice(0, 120)}`);

describe('texts that reach a reader', () => {
  test('there are many of them', () => expect(all.length).toBeGreaterThan(1000));

  test('none says safe, permitted, allowed, OK', () => expect(found(judging, all)).toEqual([]));

  test('none borrows the words of another kind of program', () => {
    expect(found(borrowed, all)).toEqual([]);
  });

  test('none of the wording blames, begs or speaks of the inside', () => {
    expect(
      found(
        unkind,
        all.filter(({ file }) => file.startsWith('src/lib/problem/wording'))
      )
    ).toEqual([]);
  });
});

describe('the wording tables', () => {
  const wording = all.filter(({ file }) => file.startsWith('src/lib/problem/wording'));

  test('"!" shouts nowhere: it stands only as a sign of the language', () => {
    const shouted = wording.filter(({ text }) => /\w!(\s|$)/u.test(text));
    expect(shouted.map(({ file, line }) => `${file}:${line}`)).toEqual([]);
  });

  test('no text says "see the documentation"', () => {
    expect(found(/see the (docs|documentation|manual)/iu, wording)).toEqual([]);
  });
});

test('every wording is used', () => {
  const sources = ['src/lib', 'src/cli']
    .flatMap(filesUnder)
    .map((file) => readFileSync(join(root, file), 'utf8'));
  const unused = filesUnder('src/lib/problem/wording').flatMap((file) => {
    const text = readFileSync(join(root, file), 'utf8');
    return [...text.matchAll(/^export const (\w+)/gmu)].flatMap(([, name = '']) => {
      const isUsed = sources.some((source) => source.includes(`Words.${name}`));
      return isUsed ? [] : [`${file}: ${name}`];
    });
  });
  expect(unused).toEqual([]);
});

test('what the words look for is found where it stands', () => {
  const text = (words: string): readonly Text[] => [{ file: 'x', line: 1, text: words }];
  expect(found(judging, text('The machine is safe to run.'))).toHaveLength(1);
  expect(found(judging, text('This is allowed'))).toHaveLength(1);
  expect(found(judging, text('All OK'))).toHaveLength(1);
  expect(found(judging, text('This fits to run'))).toHaveLength(1);
  expect(found(judging, text('[safety] limits are judged at the unfavourable end'))).toHaveLength(
    0
  );
  expect(found(unkind, text('invalid number'))).toHaveLength(1);
});
