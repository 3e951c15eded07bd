// npm run problems: writes docs/problems.md from the catalogue of problems. The page's maker is
// bundled with the engine it asks, and runs as plain JavaScript.
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { install, main, root } from './common.mjs';

await main(async () => {
  await install();
  const outDir = join(root, 'node_modules', '.problems');
  rmSync(outDir, { recursive: true, force: true });
  const vite = await import('vite');
  await vite.build({
    root,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir,
      target: 'node20',
      rolldownOptions: {
        input: { page: join(root, 'tests', 'problems', 'page.ts') },
        output: { entryFileNames: '[name].mjs' }
      }
    }
  });
  const { problemsPage } = await import(pathToFileURL(join(outDir, 'page.mjs')).href);
  writeFileSync(join(root, 'docs', 'problems.md'), problemsPage());
  console.log('docs/problems.md is written.');
});
