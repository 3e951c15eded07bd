/**
 * Vite for the page (`vite dev`, `vite build`) and Vitest for every test. Two test projects:
 * `unit` runs in Node without a server; `e2e` drives Chromium against the built server, one file
 * at a time because the files share that server.
 */
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';
import { katexWoff2 } from './vite.katex.config.ts';

export default defineConfig({
  plugins: [katexWoff2(), sveltekit()],
  worker: { format: 'es' },
  test: {
    reporters: ['default', './scripts/plain-reporter.mjs'],
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['src/**/*.test.ts', 'tests/**/*.test.ts'],
          testTimeout: 20_000
        }
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['tests/browser/**/*.e2e.ts'],
          globalSetup: ['./tests/browser/server.setup.ts'],
          fileParallelism: false,
          testTimeout: 30_000,
          hookTimeout: 60_000
        }
      }
    ]
  }
});
