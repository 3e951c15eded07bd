// A computed sheet as one HTML page that stands alone: no script, no style or font from elsewhere,
// formulas as MathML. A policy in its head forbids scripts besides, should a sheet ever get markup
// past the escaping.

import type { Problem } from '#lib/problem/index.ts';
import { unitLabel } from '#lib/units/index.ts';
import type { LimitResult, Results, ValueResult } from '#lib/sheet/index.ts';
import { printable, printableLine } from './columns.ts';
import { formulaTex } from './formula.ts';
import { pageStyle } from './html-style.ts';
import { labelText, stageHead } from './limit-lines.ts';
import type { BlockItem, OutlineRow } from './outline.ts';
import {
  outlineOf,
  ownTitle,
  partsWithoutCheck,
  problemsOutsideBlocks,
  titleOf,
  writtenVariants
} from './outline.ts';
import { mathHtml, proseHtml } from './prose-html.ts';
import { blockTitle, choiceLines } from './rows.ts';
import { cellText, nameText } from './text.ts';
import { countsText, sidesText, stopText, toneOf, toneSigns, verdictText } from './words.ts';

const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:";

/** The sheet as the text of an HTML file. */
export function htmlPage(results: Results): string {
  const title = escapedHtml(titleOf(results) ?? 'Worksheet');
  const { frontMatter } = results.worksheet;
  const head: string[] = [];
  if (ownTitle(results) !== null) head.push(`<h1>${title}</h1>`);
  if (frontMatter.summary !== null) head.push(`<p>${escapedHtml(frontMatter.summary)}</p>`);
  if (results.stages.length > 1)
    head.push(
      `<ol class="stages">${results.stages.map((stage) => `<li>${escapedHtml(stageHead(stage, results))}</li>`).join('')}</ol>`
    );
  head.push(...problemsOutsideBlocks(results).map(problemHtml));
  const body = outlineOf(results).map((item) =>
    item.kind === 'prose'
      ? `<div class="prose">${proseHtml(printable(item.text))}</div>`
      : blockHtml(item, results)
  );
  const foot =
    results.limits.size === 0
      ? ''
      : `<section class="block"><p class="kind">Counts</p>${countsHtml(results)}</section>`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${title}</title>
<style>${pageStyle}</style>
</head>
<body>
<main>
${[...head, ...body, foot].filter(Boolean).join('\n')}
</main>
</body>
</html>
`;
}

function countsHtml(results: Results): string {
  const without = partsWithoutCheck(results).length;
  const items = results.stages.map(
    (stage) =>
      `<li>${escapedHtml(`${stage.title}: ${countsText(stage, without)}. ${stopText(stage)}`)}</li>`
  );
  return `<ul>${items.join('')}</ul>`;
}

function blockHtml(item: BlockItem, results: Results): string {
  const parts: string[] = [`<p class="kind">${escapedHtml(blockTitle(item))}</p>`];
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
  const look = item.block === 'caution' ? ` caution ${item.signal ?? ''}`.trimEnd() : '';
  return `<section class="block${look}">${parts.join('\n')}</section>`;
}

function otherRow(row: OutlineRow, results: Results): string {
  switch (row.kind) {
    case 'heading':
      return `<h4>${escapedHtml(row.words)}</h4>`;
    case 'choice':
      return `<ul>${choiceLines(row.result, results)
        .map((line) => `<li>${escapedHtml(line)}</li>`)
        .join('')}</ul>`;
    case 'table':
      return `<table><thead>${rowHtml('th', row.columns)}</thead><tbody>${row.rows.map((cells) => rowHtml('td', cells)).join('')}</tbody></table>`;
    case 'lines':
      return `<pre>${escapedHtml(printable(row.text).trimEnd())}</pre>`;
    case 'words':
      return `<div class="prose">${proseHtml(printable(row.text))}</div>`;
    case 'problem':
      return problemHtml(row.problem);
    case 'value':
    case 'limit':
      return '';
  }
}

const rowHtml = (tag: 'th' | 'td', cells: readonly string[]): string =>
  `<tr>${cells.map((cell) => `<${tag}>${escapedHtml(cell)}</${tag}>`).join('')}</tr>`;

function stageHeads(results: Results): string {
  return results.stages
    .map((stage) => `<th class="number" scope="col">${escapedHtml(stage.title)}</th>`)
    .join('');
}

function valueTable(rows: readonly OutlineRow[], results: Results): string {
  const heads =
    results.stages.length > 1
      ? `<thead><tr><th></th>${stageHeads(results)}<th class="unit">unit</th></tr></thead>`
      : '';
  const body = rows.map((row) => (row.kind === 'value' ? valueRow(row.result) : ''));
  return `<table class="stages">${heads}<tbody>${body.join('')}</tbody></table>`;
}

function valueRow(value: ValueResult): string {
  const unit = value.unit === null ? '' : unitLabel(value.unit);
  const cells = value.at
    .map(
      (at) =>
        `<td class="number">${value.kind === 'function' ? '' : escapedHtml(cellText(at))}</td>`
    )
    .join('');
  const written = writtenVariants(value).map(({ stage, text, comment, variant }) => {
    const tex = formulaTex(value, variant);
    const formula =
      tex === null
        ? `<code>${escapedHtml(`${nameText(value)} = ${text}`)}</code>`
        : mathHtml(`\\displaystyle ${tex}`, false);
    const from = stage === null ? '' : `<span class="where">from ${escapedHtml(stage)} on: </span>`;
    const words =
      comment === null ? '' : `<span class="comment">${escapedHtml(comment.text)}</span>`;
    return `<span class="formula">${from}${formula}</span>${words}`;
  });
  const waits = [...new Set(value.at.flatMap((at) => at.waitsFor))];
  if (waits.length > 0)
    written.push(`<span class="comment close">waits for ${escapedHtml(waits.join(', '))}</span>`);
  return `<tr><td>${written.join('')}</td>${cells}<td class="unit">${escapedHtml(unit)}</td></tr>`;
}

function limitTable(rows: readonly OutlineRow[], results: Results): string {
  const body = rows.map((row) => (row.kind === 'limit' ? limitRow(row.result) : ''));
  return `<table class="stages"><thead><tr><th></th>${results.stages
    .map((stage) => `<th scope="col">${escapedHtml(stage.title)}</th>`)
    .join('')}</tr></thead><tbody>${body.join('')}</tbody></table>`;
}

function limitRow(limit: LimitResult): string {
  const comment = limit.comment?.text ?? '';
  const cells = limit.at.map((at) => {
    const tone = toneOf(at.status);
    const width = at.utilisation === null ? null : Math.min(100, (at.utilisation / 1.5) * 100);
    const bar =
      width === null
        ? ''
        : `<span class="bar ${tone}" aria-hidden="true"><i style="width:${width.toFixed(1)}%"></i><b></b></span>`;
    const verdict = `<span class="status ${tone}">${toneSigns[tone]} ${escapedHtml(verdictText(limit, at))}</span>`;
    return `<td>${verdict}${bar}<span class="where">${escapedHtml(sidesText(limit, at))}</span></td>`;
  });
  const words = comment === '' ? '' : `<br><span class="comment">${escapedHtml(comment)}</span>`;
  return `<tr><td>${escapedHtml(labelText(limit))}${words}</td>${cells.join('')}</tr>`;
}

function problemHtml(found: Problem): string {
  const hint = found.hint === null ? '' : ` ${escapedHtml(found.hint)}`;
  return `<p class="problem ${found.severity}">Line ${found.at.line}: ${escapedHtml(found.message)}${hint}</p>`;
}

/** Text that is no markup, in an element or a quoted attribute. */
export const escapedHtml = (text: string): string =>
  (text.includes('\n') ? printable(text) : printableLine(text)).replace(
    /[&<>"']/g,
    (sign) => `&#${sign.charCodeAt(0)};`
  );
