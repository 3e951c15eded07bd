/**
 * One Chromium for a browser test file. A test takes `openBrowser()` in `beforeAll`, a page in each
 * case, and closes it in `afterAll`.
 */
import { chromium, type Browser } from 'playwright-core';
import { needChromium } from '../../scripts/browser.mjs';

/** Starts the browser that `npm test` found, or finds one itself. */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] || (await needChromium())
  });
}
