// What an edit costs, and a cold start, on sheets of four stages; and how both grow with the sheet.

import { Session } from '#lib/sheet/index.ts';
import { sheetOf } from './bench-sheet.ts';

export const title = 'edits and cold runs, four stages';

export function run(print: (line: string) => void): void {
  const cold: number[] = [];
  for (let i = 0; i < 7; i++) cold.push(timed(() => new Session().update(sheetOf(1000))));
  print(
    `cold read, check and run of 1,000 definitions: first ${(cold[0] ?? NaN).toFixed(0)} ms (aim: 200), then ${median(cold.slice(1)).toFixed(0)} ms`
  );

  const session = new Session();
  const text = sheetOf(1000);
  session.update(text);
  const edits: number[] = [];
  for (let i = 0; i < 400; i++) {
    const chain = (i * 7) % 50;
    const edited = text.replace(`a_${chain} = `, `a_${chain} = 1.${i}`);
    const took = timed(() => session.update(edited));
    if (i >= 50) edits.push(took);
  }
  print(
    `one input changed in 1,000 definitions: median ${median(edits).toFixed(2)} ms, 95th percentile ${quantile(edits, 0.95).toFixed(2)} ms (aim: 2)`
  );

  const sizes = [100, 300, 1000, 3000, 10_000];
  const times = sizes.map((size) => {
    const sheet = sheetOf(size);
    const samples = Array.from({ length: size < 3000 ? 9 : 3 }, () =>
      timed(() => new Session().update(sheet))
    );
    return Math.min(...samples);
  });
  const slope = slopeOfLogs(sizes, times);
  print(
    `cold run of ${sizes.join(', ')} definitions: ${times.map((t) => t.toFixed(1)).join(', ')} ms; slope on log axes ${slope.toFixed(2)} (aim: at most 1.1)`
  );
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const median = (values: readonly number[]): number => quantile(values, 0.5);

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/** Slope of log y over log x by least squares. */
function slopeOfLogs(x: readonly number[], y: readonly number[]): number {
  const [u, v] = [x.map(Math.log), y.map(Math.log)];
  const [mu, mv] = [u, v].map((each) => each.reduce((a, b) => a + b, 0) / each.length) as [
    number,
    number
  ];
  const top = u.reduce((sum, value, i) => sum + (value - mu) * ((v[i] ?? 0) - mv), 0);
  return top / u.reduce((sum, value) => sum + (value - mu) ** 2, 0);
}
