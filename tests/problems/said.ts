// What the engine says about a worksheet, as lines to read: code, severity, place with the text that
// stands there, message, hint. One way of writing it for the catalogue's test and for the page.

import type { Problem, RaisedProblem } from '#lib/problem/index.ts';
import { compute } from '#lib/sheet/index.ts';

/** Every problem of a worksheet, in file order. */
export function problemsOf(
  text: string,
  files: Readonly<Record<string, string>> = {}
): readonly Problem[] {
  const { problems } = compute(text, { files: new Map(Object.entries(files)) });
  return [...problems].sort((a, b) => a.at.line - b.at.line || a.at.from - b.at.from);
}

/** The text at a problem's place. */
export function markedText(text: string, found: Problem): string {
  const line = text.split(/\r\n|\r|\n/u)[found.at.line - 1] ?? '';
  return line.slice(found.at.from - 1, found.at.to - 1);
}

/** 'line 5, 11 to 27: T_shaft + P_drag' */
export function placeOf(text: string, found: Problem): string {
  const { line, from, to } = found.at;
  return `line ${line}, ${from} to ${to}: ${shortened(markedText(text, found))}`;
}

/** Everything said about a row's example. */
export function saidAbout(entry: RaisedProblem): string {
  const lines = problemsOf(entry.example, entry.files).flatMap((found) => [
    `${found.code}, ${found.severity}`,
    `  at    ${placeOf(entry.example, found)}`,
    `  says  ${found.message}`,
    `  hint  ${found.hint ?? '(none)'}`,
    ...(found.fix === null ? [] : [`  fix   ${found.fix.replacement}`])
  ]);
  return `${lines.join('\n')}\n`;
}

const shortened = (text: string): string => (text.length <= 80 ? text : `${text.slice(0, 77)}…`);
