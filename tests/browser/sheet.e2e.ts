/** The page of the story: every value on its line, limits in words, readable without scripts. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { axeViolations, openPage } from './page.ts';

const story = 'worksheets/spray-arm-rig';
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** The row of the formula that begins with this TeX, which is kept beside its MathML. */
const rowOf = (page: Page, tex: string) =>
  page.locator('.calc', { has: page.locator('annotation', { hasText: tex }) }).first();

const noScript = { javaScriptEnabled: false };

describe('without scripts', () => {
  test('a formula is typeset with MathML, and its four values stand level with it', async () => {
    const { page, complaints, close } = await openPage(browser, story);
    const row = rowOf(page, 'P_{\\mathrm{top}} =');
    expect(await row.locator('.form math').count()).toBeGreaterThan(0);
    const cells = row.locator('.cell');
    expect(await cells.count()).toBe(4);
    for (const text of await cells.allInnerTexts()) expect(text).toMatch(/^\d/);
    const equation = await row.locator('.form .katex-html').first().boundingBox();
    const number = await cells.first().locator('.number').boundingBox();
    const middle = (box: typeof equation): number => (box ? box.y + box.height / 2 : NaN);
    expect(Math.abs(middle(equation) - middle(number))).toBeLessThan(16);
    expect(await row.locator('.numbers').innerText()).toMatch(/=/);
    expect(complaints).toEqual([]);
    await close();
  });

  test('limits say percent, word and amounts; nothing is called safe', async () => {
    const { page, close } = await openPage(browser, story, noScript);
    const rows = page.locator('.limit');
    expect(await rows.count()).toBe(31);
    for (const row of await rows.all()) {
      const words = await row.locator('.cell .verdict').allInnerTexts();
      expect(words).toHaveLength(4);
      for (const word of words)
        expect(word.replace(/\s+/g, ' ')).toMatch(
          /within|close|over|met|short|fails|not shown to fail|at the limit|unknown/
        );
    }
    const text = await page.locator('main').innerText();
    expect(text).not.toMatch(/\ball (?:limits )?hold\b|\bis safe\b|permitted/i);
    await close();
  });

  test('cautions stand in the words of the standard, values filled in', async () => {
    const { page, close } = await openPage(browser, story, noScript);
    const cautions = page.locator('.caution:visible');
    expect(await cautions.count()).toBeGreaterThanOrEqual(4);
    expect(await cautions.first().locator('.signal').innerText()).toBe('Danger');
    expect(await cautions.first().innerText()).toMatch(/carries \d/);
    await close();
  });

  test('a stage gets the focus by a link, its numbers the line below the formula', async () => {
    const { page, close } = await openPage(browser, story, noScript);
    await page.locator('nav[aria-label=Stages] a', { hasText: 'First sketch' }).click();
    expect(new URL(page.url()).search).toBe('?stage=sketch');
    expect(await page.locator('.numbers .disc').first().innerText()).toContain('1');
    expect(await page.locator('nav[aria-label=Stages] a[aria-current=true]').innerText()).toContain(
      'First sketch'
    );
    await page.getByRole('link', { name: 'All side by side' }).click();
    expect(await page.locator('nav[aria-label=Stages] a[aria-current=true]').count()).toBe(0);
    expect(await page.locator('.numbers .disc').first().innerText()).toContain('1');
    await page.getByRole('switch', { name: 'With numbers' }).click();
    expect(await page.locator('.numbers').count()).toBe(0);
    await close();
  });

  test('a letter at a revised value leads to its reason', async () => {
    const { page, close } = await openPage(browser, story, noScript);
    const letter = page.locator('.input .letter').first();
    const id = (await letter.getAttribute('href'))?.slice(1) ?? '';
    expect(await page.locator(`#${id}`).innerText()).toMatch(/: .+ to .+\. .+/s);
    await close();
  });
});

describe('with scripts', () => {
  test('a change of stage keeps what is read in its place, and goes back', async () => {
    const { page, complaints, close } = await openPage(browser, story);
    const row = page.locator('.limit').nth(5);
    await row.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    const top = async (): Promise<number> => (await row.boundingBox())?.y ?? NaN;
    const before = await top();
    await page.keyboard.press('2');
    await page.waitForURL('**?stage=first-run');
    await page.locator('nav .head[data-focus]').waitFor();
    expect(Math.abs((await top()) - before)).toBeLessThan(3);
    await page.goBack();
    await page.locator('nav .head[data-focus]').waitFor({ state: 'detached' });
    await page.keyboard.press('n');
    await page.waitForURL('**?numbers=off');
    expect(complaints).toEqual([]);
    await close();
  });
});

test.each([1440, 1100, 900, 390, 320])('nothing reaches past a window of %i px', async (width) => {
  const { page, close } = await openPage(browser, story, { viewport: { width, height: 900 } });
  const past = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(past).toBeLessThanOrEqual(0);
  await close();
});

test.each([
  ['wide', '', { viewport: { width: 1440, height: 900 } }],
  ['wide, a stage in focus', '?stage=upgrade', { viewport: { width: 1440, height: 900 } }],
  ['narrow', '', { viewport: { width: 390, height: 844 } }],
  ['dark', '', { colorScheme: 'dark' }],
  ['dark, a stage in focus', '?stage=sketch', { colorScheme: 'dark' }]
] as const)('the story has no violation in axe, %s', async (_, query, options) => {
  const { page, complaints, close } = await openPage(browser, story + query, options);
  expect(await axeViolations(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await close();
});
