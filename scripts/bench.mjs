// npm run bench: every tests/bench/*.bench.ts; `npm run bench -- NAME` only those with NAME in theirs.
import { main } from './common.mjs';
import { runAll } from './run-all.mjs';

await main(() => runAll('bench', process.argv.slice(2)));
