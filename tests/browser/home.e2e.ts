/** The list of worksheets: what it says of each, and that it opens them. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { axeViolations, openPage } from './page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('both worksheets are listed with title, summary and stages, and open', async () => {
  const { page, complaints, close } = await openPage(browser, '');
  const entries = page.locator('main li:has(h2)');
  expect(await entries.count()).toBeGreaterThanOrEqual(2);
  const story = entries.filter({ hasText: 'spray-arm-rig.md' });
  expect(await story.locator('h2').innerText()).toBe('Whirling-arm spray rig');
  expect(await story.locator('ol > li').count()).toBe(4);
  expect(await story.innerText()).toMatch(/Faired arms: \d+ checked, \d+ inside\./);
  expect(await entries.filter({ hasText: 'doubling-speed.md' }).count()).toBe(1);
  await story.locator('h2 a').click();
  await page.waitForURL('**/worksheets/spray-arm-rig');
  expect(await page.locator('h1').innerText()).toBe('Whirling-arm spray rig');
  expect(complaints).toEqual([]);
  await close();
});

describe('what cannot be read', () => {
  const bad = (name: string): string => join(inject('servedFolder'), name);
  beforeAll(() => {
    writeFileSync(bad('latin.md'), Buffer.from('# Br\xfccke\n', 'latin1'));
    mkdirSync(bad('folder.md'));
  });
  afterAll(() => {
    rmSync(bad('latin.md'));
    rmSync(bad('folder.md'), { recursive: true });
  });

  test('a file that is not UTF-8 is listed and says so, with its line; opening it says the same', async () => {
    const { page, close } = await openPage(browser, '');
    const entry = page.locator('main li').filter({ hasText: 'latin.md' });
    expect(await entry.innerText()).toContain('is not UTF-8 text');
    const response = await page.goto(`${inject('serverAddress')}worksheets/latin`);
    expect(response?.status()).toBe(422);
    expect(await page.locator('main').innerText()).toContain('line 1 belongs to another encoding');
    expect(await page.locator('main').innerText()).toContain('Nothing was changed in any file.');
    await close();
  });

  test.each([
    ['worksheets/gone', 404, 'There is no file gone.md'],
    ['worksheets/folder', 422, 'folder.md is not a file'],
    ['worksheets/..%2Fsecret', 422, 'not a file name that can be opened'],
    ['nowhere', 404, 'There is nothing at /nowhere']
  ])('%s answers %i with a sentence', async (path, status, words) => {
    const { page, close } = await openPage(browser, '');
    const response = await page.goto(inject('serverAddress') + path);
    expect(response?.status()).toBe(status);
    expect(await page.locator('main').innerText()).toContain(words);
    expect(await axeViolations(page)).toEqual([]);
    await close();
  });
});

test('light or dark is the reader’s choice, kept without scripts', async () => {
  const { page, close } = await openPage(browser, '', {
    javaScriptEnabled: false,
    colorScheme: 'light'
  });
  const ground = (): Promise<string> =>
    page.locator('html').evaluate((html) => getComputedStyle(html).backgroundColor);
  const light = await ground();
  await page.getByRole('button', { name: 'Dark' }).click();
  expect(await ground()).not.toBe(light);
  await page.goto(`${inject('serverAddress')}worksheets/doubling-speed`);
  expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
  await page.getByRole('button', { name: 'As the system' }).click();
  expect(new URL(page.url()).pathname).toBe('/worksheets/doubling-speed');
  expect(await ground()).toBe(light);
  await close();
});

test.each([
  ['wide', { viewport: { width: 1440, height: 900 } }],
  ['narrow', { viewport: { width: 390, height: 844 } }],
  ['dark', { colorScheme: 'dark' }]
] as const)('home has no violation in axe, %s', async (_, options) => {
  const { page, complaints, close } = await openPage(browser, '', options);
  expect(await axeViolations(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await close();
});
