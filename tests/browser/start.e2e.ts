/** The built server answers, and its page loads without a script error or a refused resource. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser } from './browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('the first page has a heading and no error on its console', async () => {
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(inject('serverAddress'), { waitUntil: 'networkidle' });
  expect(await page.locator('h1').count()).toBe(1);
  expect(complaints).toEqual([]);
  await page.close();
});
