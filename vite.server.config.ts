/**
 * Second build: the server's entry and the command line, each with everything it imports in it, so
 * that the command line starts without walking node_modules. It runs after the page's build, which
 * empties `build/`.
 */
import { chmodSync } from 'node:fs';
import { defineConfig } from 'vite';

export default defineConfig({
  publicDir: false,
  // `npx rigwright` runs the file itself.
  plugins: [{ name: 'executable', writeBundle: () => chmodSync('build/cli.js', 0o755) }],
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: 'build',
    emptyOutDir: false,
    target: 'node20',
    rolldownOptions: {
      input: { server: 'src/server.ts', cli: 'src/cli/main.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: 'own/[name]-[hash].js' }
    }
  }
});
