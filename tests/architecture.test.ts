/**
 * The order of the folders, held by a test. Every folder of `src` has a rank; it imports only from
 * lower ranks and only through the other folder's list of exports. The engine (ranks 0 to 7) knows
 * no page, no Node and no library but the two that read text; each large library has one home.
 * Import lines are read with TypeScript's own parser, so a commented-out line does not count.
 */
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, normalize, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');

/** Folder of `src/lib` or `src`, to its rank. */
const RANKS: Readonly<Record<string, number>> = {
  problem: 0,
  numeric: 0,
  text: 0,
  units: 1,
  document: 1,
  language: 2,
  model: 3,
  check: 4,
  lanes: 5,
  sheet: 6,
  analysis: 7,
  render: 8,
  share: 8,
  shelf: 8,
  worker: 8,
  ui: 9,
  cli: 9,
  routes: 10,
  server: 10,
  single: 10
};
const HIGHEST_ENGINE_RANK = 7;

/** Imports that go sideways or up, each with its reason. */
const EXCEPTIONS: Readonly<Record<string, string>> = {
  'text -> problem': 'a cut of text answers with the span that a problem carries',
  'cli -> server': 'the command `serve` starts the server'
};

/** The one home of each library; a prefix of the path of the files that may import it. */
const HOMES: readonly { readonly library: RegExp; readonly homes: readonly string[] }[] = [
  { library: /^mathjs(\/|$)/, homes: ['src/lib/language/parse.ts'] },
  { library: /^yaml$/, homes: ['src/lib/document/'] },
  { library: /^markdown-it(\/|$)/, homes: ['src/lib/document/', 'src/lib/render/', 'src/lib/ui/'] },
  { library: /^katex(\/|$)/, homes: ['src/lib/ui/equation/', 'src/lib/render/'] },
  { library: /^plotly/, homes: ['src/lib/ui/chart/'] },
  { library: /^(yjs|y-protocols|lib0)(\/|$)/, homes: ['src/lib/share/'] }
];

interface Import {
  readonly from: string;
  readonly isTypeOnly: boolean;
}

/** The scripts of a component, or the file itself, as TypeScript. */
function scriptOf(path: string, text: string): string {
  if (!path.endsWith('.svelte')) return text;
  return [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)]
    .map((match) => match[1] ?? '')
    .join('\n');
}

/** Every import, export-from and dynamic import with a fixed text in a source text. */
function importsOf(path: string, text: string): readonly Import[] {
  const found: Import[] = [];
  const source = ts.createSourceFile(path, scriptOf(path, text), ts.ScriptTarget.ES2022, true);
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      const named = node.importClause?.namedBindings;
      const isTypeOnly =
        node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword ||
        (named !== undefined &&
          ts.isNamedImports(named) &&
          node.importClause?.name === undefined &&
          named.elements.length > 0 &&
          named.elements.every((element) => element.isTypeOnly));
      found.push({ from: node.moduleSpecifier.text, isTypeOnly });
    } else if (
      ts.isExportDeclaration(node) &&
      node.moduleSpecifier &&
      ts.isStringLiteral(node.moduleSpecifier)
    ) {
      found.push({ from: node.moduleSpecifier.text, isTypeOnly: node.isTypeOnly });
    } else if (
      ts.isCallExpression(node) &&
      node.expression.kind === ts.SyntaxKind.ImportKeyword &&
      node.arguments[0] &&
      ts.isStringLiteralLike(node.arguments[0])
    ) {
      found.push({ from: node.arguments[0].text, isTypeOnly: false });
    } else if (
      ts.isImportTypeNode(node) &&
      ts.isLiteralTypeNode(node.argument) &&
      ts.isStringLiteral(node.argument.literal)
    ) {
      found.push({ from: node.argument.literal.text, isTypeOnly: true });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The ranked folder a path of `src` lies in, or null for the few files outside any. */
function folderOf(path: string): string | null {
  const inLib = /^src\/lib\/([^/]+)\//.exec(path);
  if (inLib) return inLib[1] ?? null;
  const inSrc = /^src\/([^/.]+)(?:\/|\.ts$)/.exec(path);
  return inSrc?.[1] ?? null;
}

const isTest = (path: string): boolean => /\.test\.ts$/.test(path);
const isBuiltin = (name: string): boolean =>
  name.startsWith('node:') || builtinModules.includes(name);

/** The project path an import leads to, or null where it names a package. */
function targetOf(path: string, from: string): string | null {
  const bare = from.replace(/\?.*$/, '');
  if (bare.startsWith('#lib/')) return `src/lib/${bare.slice('#lib/'.length)}`;
  if (bare.startsWith('.')) return normalize(join(dirname(path), bare)).replaceAll('\\', '/');
  return null;
}

/** Through what a folder may be entered: its list of exports, a style sheet, a script as text. */
const isDoor = (target: string, from: string): boolean =>
  (/^src\/lib\/ui\//.test(target) && from.endsWith('?raw')) ||
  /^src\/lib\/[^/]+\/index\.ts$/.test(target) ||
  /^src\/lib\/ui\/[^/]+\/index\.ts$/.test(target) ||
  /^src\/lib\/ui\/.*\.css$/.test(target);

/** What is wrong with one import, as a sentence, or null. */
function faultOf(path: string, from: string): string | null {
  const folder = folderOf(path);
  const rank = folder === null ? undefined : RANKS[folder];
  const target = targetOf(path, from);

  if (target === null) {
    if (isTest(path)) return null;
    if (from.startsWith('$lib')) return `imports ${from}; write #lib/… instead`;
    const home = HOMES.find(({ library }) => library.test(from));
    if (home) {
      return home.homes.some((place) => path.startsWith(place))
        ? null
        : `imports ${from}, which belongs in ${home.homes.join(' and ')}`;
    }
    if (rank !== undefined && rank <= HIGHEST_ENGINE_RANK) {
      return `imports ${from}, but the engine knows ${isBuiltin(from) ? 'no Node' : 'no such library'}`;
    }
    return null;
  }

  const other = folderOf(target);
  if (other === folder || other === null) {
    return from.startsWith('#lib/') && folder !== 'ui' && !isTest(path)
      ? `imports ${from} from inside that folder; write a path beginning with ./ or ../`
      : null;
  }
  if (folder === null || rank === undefined) return null; // hooks and type files beside the folders
  const otherRank = RANKS[other];
  if (otherRank === undefined) return `imports ${from}; the folder ${other} has no rank`;
  if (`${folder} -> ${other}` in EXCEPTIONS) return null;
  if (otherRank >= rank) {
    return `imports ${from}: ${folder} (rank ${rank}) may not know ${other} (rank ${otherRank})`;
  }
  if (target.startsWith('src/lib/')) {
    if (!from.startsWith('#lib/')) return `imports ${from}; write #lib/${other}/index.ts`;
    if (!isDoor(target, from)) return `imports ${from}, past the list of exports of ${other}`;
  }
  return null;
}

const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .map((path) => `src/${path.replaceAll('\\', '/')}`)
  // A route may be a folder with such an ending.
  .filter((path) => /\.(ts|js|svelte)$/.test(path) && statSync(join(root, path)).isFile())
  .sort();
const textOf = (path: string): string => readFileSync(join(root, path), 'utf8');

describe('the reader of import lines', () => {
  test('finds every form of import and leaves comments and strings alone', () => {
    const text = `
      import type { A } from './a.ts';
      import { type B, type C } from './b.ts';
      import d, { type E } from './d.ts';
      import './style.css';
      export * from './f.ts';
      export type { G } from './g.ts';
      // import h from './h.ts';
      const note = "import i from './i.ts'";
      const j = await import('./j.ts');
      let k: import('./k.ts').K;`;
    expect(importsOf('x.ts', text)).toEqual([
      { from: './a.ts', isTypeOnly: true },
      { from: './b.ts', isTypeOnly: true },
      { from: './d.ts', isTypeOnly: false },
      { from: './style.css', isTypeOnly: false },
      { from: './f.ts', isTypeOnly: false },
      { from: './g.ts', isTypeOnly: true },
      { from: './j.ts', isTypeOnly: false },
      { from: './k.ts', isTypeOnly: true }
    ]);
  });

  test('reads both scripts of a component', () => {
    const text = `<script module lang="ts">import a from 'a';</script>\n<p>import</p>\n<script lang="ts">import b from 'b';</script>`;
    expect(importsOf('X.svelte', text).map(({ from }) => from)).toEqual(['a', 'b']);
  });

  test.each([
    ['src/lib/sheet/run.ts', '#lib/units/index.ts', null],
    ['src/lib/sheet/run.ts', '#lib/units/table.ts', /past the list of exports/],
    ['src/lib/sheet/run.ts', '../units/index.ts', /write #lib\/units/],
    ['src/lib/units/table.ts', '#lib/sheet/index.ts', /may not know sheet/],
    ['src/lib/units/table.ts', '#lib/document/index.ts', /may not know document/],
    ['src/lib/units/table.ts', './convert.ts', null],
    ['src/lib/document/blocks/inputs.ts', '../types.ts', null],
    ['src/lib/units/table.ts', '#lib/units/convert.ts', /write a path beginning/],
    ['src/lib/text/cut.ts', '#lib/problem/index.ts', null],
    ['src/lib/units/table.ts', 'node:fs', /no Node/],
    ['src/lib/units/table.ts', 'fs', /no Node/],
    ['src/lib/units/table.ts', 'svelte', /no such library/],
    ['src/lib/units/table.test.ts', 'fast-check', null],
    ['src/lib/language/parse.ts', 'mathjs', null],
    ['src/lib/language/lexer.ts', 'mathjs', /belongs in/],
    ['src/lib/ui/blocks/Limit.svelte', 'katex', /belongs in/],
    ['src/lib/ui/equation/Equation.svelte', 'katex/dist/katex.min.css', null],
    ['src/lib/ui/chart/Plot.svelte', 'plotly.js-dist-min', null],
    ['src/routes/+page.svelte', '#lib/ui/blocks/index.ts', null],
    ['src/routes/+page.svelte', '#lib/ui/blocks/Limit.svelte', /past the list of exports/],
    ['src/routes/x.js/+server.ts', '#lib/ui/x/x.js?raw', null],
    ['src/routes/+page.svelte', '$lib/ui/index.ts', /write #lib/],
    ['src/cli/main.ts', '../server.ts', null],
    ['src/cli/check.ts', '#lib/ui/index.ts', /may not know ui/],
    ['src/cli/check.ts', 'node:fs', null]
  ])('%s importing %s', (path, from, fault) => {
    if (fault === null) expect(faultOf(path, from)).toBeNull();
    else expect(faultOf(path, from)).toMatch(fault);
  });
});

test('every folder of src has a rank', () => {
  const folders = new Set(sources.map(folderOf).filter((folder) => folder !== null));
  const unranked = [...folders].filter(
    (folder) => !(folder in RANKS) && !/^(app|hooks)$/.test(folder)
  );
  expect(unranked).toEqual([]);
});

test('a folder imports only from lower ranks, through the list of exports', () => {
  const faults = sources.flatMap((path) =>
    importsOf(path, textOf(path)).flatMap(({ from }) => {
      const fault = faultOf(path, from);
      return fault === null ? [] : [`${path} ${fault}`];
    })
  );
  expect(faults).toEqual([]);
});

test('an index.ts in a folder of src/lib is a bare list of exports', () => {
  const faults = sources
    .filter((path) => /^src\/lib\/.*\/index\.ts$/.test(path))
    .filter((path) => {
      const source = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.ES2022);
      return !source.statements.every((statement) => ts.isExportDeclaration(statement));
    });
  expect(faults).toEqual([]);
});

test('files import each other in a circle by their types only', () => {
  const edges = new Map(
    sources.map((path) => [
      path,
      importsOf(path, textOf(path))
        .filter(({ isTypeOnly }) => !isTypeOnly)
        .map(({ from }) => targetOf(path, from))
        .filter((target) => target !== null)
    ])
  );
  const circles: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'done') return;
    if (state.get(path) === 'open') {
      circles.push([...trail.slice(trail.indexOf(path)), path].join(' -> '));
      return;
    }
    state.set(path, 'open');
    for (const target of edges.get(path) ?? []) {
      if (edges.has(target)) visit(target, [...trail, path]);
    }
    state.set(path, 'done');
  };
  for (const path of sources) visit(path, []);
  expect(circles).toEqual([]);
});

test('modules export by name only', () => {
  // SvelteKit's own files (routes, hooks, parameters) follow its rules.
  const faults = sources
    .filter((path) => /^src\/(lib|cli|server)/.test(path) && path.endsWith('.ts'))
    .filter((path) => /^export default /m.test(textOf(path)));
  expect(faults).toEqual([]);
});

const LONG = 600;
const UNUSUAL = 500;
/** A head comment that gives a reason for the length says so in one of these ways. */
const REASON = /\b(one file|in one place|kept whole|long because|length|data table|table of)\b/i;

/** The comment lines a file begins with. */
function headComment(text: string): string {
  const match = /^(?:#!.*\n)?((?:\s*(?:\/\/.*|\/\*[\s\S]*?\*\/)\s*?\n)+)/.exec(text);
  return match?.[1] ?? '';
}

describe('length of files', () => {
  const lengths = sources.map((path) => ({ path, lines: textOf(path).split('\n').length - 1 }));

  test(`a file above ${LONG} lines says in its head comment why`, () => {
    const faults = lengths
      .filter(({ path, lines }) => lines > LONG && !REASON.test(headComment(textOf(path))))
      .map(({ path, lines }) => `${path}: ${lines} lines`);
    expect(faults).toEqual([]);
  });

  test('every source file begins with a comment on what it is', () => {
    const faults = sources
      .filter((path) => path.endsWith('.ts') && !/\/index\.ts$|\.d\.ts$|\.test\.ts$/.test(path))
      .filter((path) => /^src\/(lib|cli|server)/.test(path))
      .filter((path) => headComment(textOf(path)).trim() === '');
    expect(faults).toEqual([]);
  });

  test('a component stays short', () => {
    const faults = lengths
      .filter(({ path, lines }) => path.endsWith('.svelte') && lines > UNUSUAL)
      .map(({ path, lines }) => `${path}: ${lines} lines`);
    expect(faults).toEqual([]);
  });
});
