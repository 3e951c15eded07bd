// What `check` prints of one sheet: its title, every stage's limits, every problem in place, and the
// sentence of counts last.

import type { Results } from '#lib/sheet/index.ts';
import type { Palette } from './columns.ts';
import { plainPalette, printableLine } from './columns.ts';
import { countLines, limitLines } from './limit-lines.ts';
import { titleOf } from './outline.ts';
import { problemLines } from './problem-lines.ts';
import { counted } from './words.ts';

/** @param file  how the sheet is called in the places of problems */
export function checkText(results: Results, file: string, palette: Palette = plainPalette): string {
  const title = titleOf(results);
  const name = palette.quiet(file === '-' ? 'standard input' : printableLine(file));
  const head = title === null ? name : `${palette.strong(printableLine(title))}  ${name}`;
  const sections = [[head], limitLines(results, palette), problemLines(results, file, palette)];
  sections.push([...countLines(results, palette), ...problemCounts(results, palette)]);
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => `${lines.join('\n')}\n`)
    .join('\n');
}

function problemCounts(results: Results, palette: Palette): string[] {
  const count = (severity: string): number =>
    results.problems.filter((found) => found.severity === severity).length;
  const [errors, warnings, notes] = [count('error'), count('warning'), count('note')];
  if (errors + warnings + notes === 0) return ['No line is in error.'];
  const rest: string[] = [];
  if (warnings > 0) rest.push(counted(warnings, 'warning'));
  if (notes > 0) rest.push(counted(notes, 'note'));
  const about = rest.length > 0 ? `; ${rest.join(', ')}` : '';
  return errors > 0
    ? [palette.over(`${counted(errors, 'error')}${about}.`)]
    : [`No line is in error${about}.`];
}
