/**
 * A page that is watched: whatever the console complains of, an uncaught error, a refused resource or
 * a dialogue is kept, so that a test can ask for none. Also axe, run by hand: the page's policy refuses
 * script elements, and an evaluation by the browser's driver is none.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { inject } from 'vitest';

export interface WatchedPage {
  readonly page: Page;
  readonly complaints: string[];
  readonly close: () => Promise<void>;
}

/** Opens a place of the server under test: '' is home. */
export async function openPage(
  browser: Browser,
  path: string,
  options: BrowserContextOptions = {}
): Promise<WatchedPage> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('requestfailed', (request) => complaints.push(`not loaded: ${request.url()}`));
  page.on('dialog', (dialog) => {
    complaints.push(`dialogue: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await page.goto(inject('serverAddress') + path, { waitUntil: 'networkidle' });
  return { page, complaints, close: () => context.close() };
}

const axeSource = readFileSync(
  createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  'utf8'
);

interface AxeViolation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Violations of WCAG 2.2 A and AA and of axe's best practices, a line each. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const violations = await page.evaluate<AxeViolation[]>(
    `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then((found) => found.violations)`
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary ?? ''}`)
  );
}
