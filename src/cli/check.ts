// `rigwright check FILE...`: one line per limit and stage, one per problem, and at the end what was
// counted, so that a look at the last lines tells how the sheet stands.

import type { Palette } from '#lib/render/index.ts';
import { checkText, jsonText, resultObject } from '#lib/render/index.ts';
import type { Call } from './args.ts';
import type { Status } from './output.ts';
import { deliver, highest, paletteFor, progress } from './output.ts';
import { computed, picked, readSource, statusOf, triesFit, valuesFit } from './sheet.ts';

/** @returns  the exit status */
export async function check(call: Call): Promise<Status> {
  const several = call.operands.length > 1;
  const palette: Palette = paletteFor(call.out);
  const objects: object[] = [];
  const texts: string[] = [];
  let status: Status = 0;
  for (const [index, file] of call.operands.entries()) {
    if (several) progress(`${index + 1} of ${call.operands.length}: ${file}`);
    const source = await readSource(file);
    const whole = source && computed(source, call.tries);
    if (several) progress('');
    const fits =
      source && whole && triesFit(whole, call.tries, file) && valuesFit(whole, source, call.tries);
    const results = fits ? picked(whole, call.stage, file) : null;
    if (!results) {
      status = 3;
      continue;
    }
    status = highest(status, statusOf(results));
    if (call.json)
      objects.push(several ? { file, ...resultObject(results) } : resultObject(results));
    else texts.push(checkText(results, file, palette));
  }
  if (call.json && (several || objects.length > 0))
    return highest(
      status,
      deliver(jsonText(several ? objects : objects[0]), call.out, call.operands)
    );
  if (texts.length === 0) return status;
  return highest(status, deliver(texts.join('\n'), call.out, call.operands));
}
