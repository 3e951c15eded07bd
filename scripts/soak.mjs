// npm run soak: every tests/soak/*.soak.ts; `npm run soak -- NAME` only those with NAME in theirs.
import { main } from './common.mjs';
import { runAll } from './run-all.mjs';

await main(() => runAll('soak', process.argv.slice(2)));
