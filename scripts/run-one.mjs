// Runs one bundled bench or soak: its title, the lines it prints, how long it took.
import { pathToFileURL } from 'node:url';

const { title, run } = await import(pathToFileURL(process.argv[2]).href);
console.log(`\n${title}`);
const start = performance.now();
await run((line) => console.log(`  ${line}`));
console.log(`  (${((performance.now() - start) / 1000).toFixed(1)} s)`);
