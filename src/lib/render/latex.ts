// A computed sheet as a LaTeX article that compiles with pdfLaTeX, XeLaTeX and LuaLaTeX and needs
// only packages of every distribution (amsmath, longtable, geometry, hyperref). Formulas come from
// the checked trees; everything else from the sheet is escaped.

import type { Problem } from '#lib/problem/index.ts';
import { unitTex } from '#lib/units/index.ts';
import type { LimitResult, Results, ValueResult } from '#lib/sheet/index.ts';
import { formulaTex } from './formula.ts';
import { escapedLatex, proseLatex, verbatimLatex } from './latex-text.ts';
import { labelText, stageHead } from './limit-lines.ts';
import type { BlockItem, OutlineRow } from './outline.ts';
import {
  outlineOf,
  ownTitle,
  partsWithoutCheck,
  problemsOutsideBlocks,
  writtenVariants
} from './outline.ts';
import { blockTitle, choiceLines } from './rows.ts';
import { cellText, nameText } from './text.ts';
import { countsText, sidesText, stopText, verdictText } from './words.ts';

const preamble = String.raw`\documentclass[a4paper,10pt]{article}
\usepackage{iftex}
\ifPDFTeX\usepackage[utf8]{inputenc}\usepackage[T1]{fontenc}\usepackage{textcomp}\else\usepackage{fontspec}\fi
\usepackage[margin=20mm]{geometry}
\usepackage{amsmath,amssymb,longtable,array}
\usepackage[hidelinks]{hyperref}
\setlength{\parindent}{0pt}\setlength{\parskip}{4pt}
\setcounter{secnumdepth}{0}
`;

/** The sheet as the text of a .tex file. */
export function latexArticle(results: Results): string {
  const { summary } = results.worksheet.frontMatter;
  const title = ownTitle(results);
  const parts: string[] = [];
  if (title !== null) parts.push(`\\section*{${escapedLatex(title)}}`);
  if (summary !== null) parts.push(escapedLatex(summary));
  if (results.stages.length > 1)
    parts.push(itemize(results.stages.map((stage) => stageHead(stage, results))));
  parts.push(...problemsOutsideBlocks(results).map(problemLatex));
  for (const item of outlineOf(results))
    parts.push(item.kind === 'prose' ? proseLatex(item.text) : blockLatex(item, results));
  if (results.limits.size > 0) {
    const without = partsWithoutCheck(results).length;
    parts.push(
      itemize(
        results.stages.map(
          (stage) => `${stage.title}: ${countsText(stage, without)}. ${stopText(stage)}`
        )
      )
    );
  }
  return `${preamble}\\begin{document}\n\n${parts.join('\n\n')}\n\n\\end{document}\n`;
}

const itemize = (lines: readonly string[]): string =>
  lines.length === 0
    ? ''
    : `\\begin{itemize}\n${lines.map((line) => `\\item ${escapedLatex(line)}`).join('\n')}\n\\end{itemize}`;

function blockLatex(item: BlockItem, results: Results): string {
  const parts: string[] = [`\\paragraph{${escapedLatex(blockTitle(item))}}`];
  let rows: OutlineRow[] = [];
  const flush = (): void => {
    if (rows[0]?.kind === 'limit') parts.push(limitTable(rows, results));
    else if (rows.length > 0) parts.push(valueTable(rows, results));
    rows = [];
  };
  for (const row of item.rows) {
    if (row.kind === 'value' || row.kind === 'limit') {
      if (rows[0] && rows[0].kind !== row.kind) flush();
      rows.push(row);
    } else {
      flush();
      parts.push(otherRow(row, results));
    }
  }
  flush();
  return parts.join('\n\n');
}

function otherRow(row: OutlineRow, results: Results): string {
  switch (row.kind) {
    case 'heading':
      return `\\textbf{${escapedLatex(row.words)}}`;
    case 'choice':
      return itemize(choiceLines(row.result, results));
    case 'table': {
      const cells = [row.columns, ...row.rows].map((line) =>
        row.columns.map((_, index) => escapedLatex(line[index] ?? ''))
      );
      return longtable('l'.repeat(row.columns.length), cells);
    }
    case 'lines':
      return verbatimLatex(row.text);
    case 'words':
      return `\\begin{quote}\n${proseLatex(row.text)}\n\\end{quote}`;
    case 'problem':
      return problemLatex(row.problem);
    case 'value':
    case 'limit':
      return '';
  }
}

function valueTable(rows: readonly OutlineRow[], results: Results): string {
  const lines = rows.flatMap((row) => (row.kind === 'value' ? valueRows(row.result) : []));
  const head = ['', ...results.stages.map((stage) => escapedLatex(stage.title)), ''];
  const columns = `p{0.42\\linewidth}${'r'.repeat(results.stages.length)}l`;
  return longtable(columns, results.stages.length > 1 ? [head, ...lines] : [null, ...lines]);
}

function valueRows(value: ValueResult): string[][] {
  const unit = value.unit === null || value.unit.text === '1' ? '' : `$${unitTex(value.unit)}$`;
  return writtenVariants(value).map(({ stage, text, comment, variant }, index) => {
    const tex = formulaTex(value, variant);
    const formula =
      tex === null ? `\\texttt{${escapedLatex(`${nameText(value)} = ${text}`)}}` : `$${tex}$`;
    const from = stage === null ? '' : `from ${escapedLatex(stage)}: `;
    const words =
      comment === null ? '' : ` \\newline {\\footnotesize ${escapedLatex(comment.text)}}`;
    const cells = value.at.map((at) =>
      index === 0 && value.kind !== 'function' ? escapedLatex(cellText(at)) : ''
    );
    return [`${from}${formula}${words}`, ...cells, index === 0 ? unit : ''];
  });
}

function limitTable(rows: readonly OutlineRow[], results: Results): string {
  const lines = rows.flatMap((row) => (row.kind === 'limit' ? [limitCells(row.result)] : []));
  const share = (0.7 / Math.max(1, results.stages.length)).toFixed(3);
  const columns = `p{0.22\\linewidth}${`>{\\raggedright\\arraybackslash}p{${share}\\linewidth}`.repeat(results.stages.length)}`;
  return longtable(columns, [
    ['', ...results.stages.map((stage) => escapedLatex(stage.title))],
    ...lines
  ]);
}

const limitCells = (limit: LimitResult): string[] => [
  escapedLatex(labelText(limit)),
  ...limit.at.map((at) => {
    const sides = sidesText(limit, at);
    const verdict = escapedLatex(verdictText(limit, at));
    return sides === '' ? verdict : `${verdict} \\newline {\\footnotesize ${escapedLatex(sides)}}`;
  })
];

/** The first row is the head; null for none. */
function longtable(columns: string, rows: readonly (readonly string[] | null)[]): string {
  const [head, ...body] = rows;
  const line = (cells: readonly string[]): string => `${cells.join(' & ')} \\\\`;
  const top = head ? `\\hline\n${line(head)}\n\\hline\n\\endhead\n` : '\\hline\n';
  const lines = body.map((cells) => line(cells ?? [])).join('\n');
  return `\\begin{longtable}{${columns}}\n${top}${lines}\n\\hline\n\\end{longtable}`;
}

function problemLatex(found: Problem): string {
  const hint = found.hint === null ? '' : ` ${found.hint}`;
  return `\\textbf{Line ${found.at.line}:} ${escapedLatex(`${found.message}${hint}`)}`;
}
