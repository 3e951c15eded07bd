/** A worksheet written to do harm runs nothing, and a wrong line is told under it. */
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser } from './browser.ts';
import { axeViolations, openPage } from './page.ts';

let browser: Browser;
const sheets = { 'hostile.md': '', 'wrong.md': '', 'empty.md': '', 'branches.md': '' };

const script = '<script>window.harmed = true; alert(1)</script>';
const image = '<img src=x onerror="window.harmed = true">';
sheets['hostile.md'] = `---
title: "T ${script.replaceAll('"', '\\"')}"
summary: '${image}'
by: ["${script.replaceAll('"', '\\"')}"]
stages:
  a: { title: 'A ${script}' }
  b: { title: '"><svg onload=alert(1)>' }
---

# Head ${image}

${script} ${image} [a](javascript:alert(1)) ![a](javascript:alert(1)) <javascript:alert(1)>
{x} {${script}} {__proto__} {constructor} {toString at a} $\\href{javascript:alert(1)}{x}$ $\\htmlStyle{position:fixed}{x}$

\`\`\`inputs ${script}
x = 2 m   # ${script}; measured ${image}
  at b: 3 m # ${image}
__proto__ = 1
constructor = 2 # ${script}
# ${script}
y = ${script}
\`\`\`

\`\`\`calc
z = x * 2 # ${image}
w = <img src=x onerror=alert(1)>
\`\`\`

\`\`\`limits
lab ${script}: x <= z
<b onclick=alert(1)>b</b>: z <= x
\`\`\`

\`\`\`table t${script}
name | v [${script}]
${script} | ${image}
\`\`\`

\`\`\`table rows
name | v [m]
${script} | 1
${image} | 2
\`\`\`

\`\`\`choose c from rows
least v
take "${script}"
\`\`\`

\`\`\`caution danger
${script} ${image} {x}
\`\`\`

\`\`\`sweep ${script}
${script}
\`\`\`

\`\`\`${script}
${script}
\`\`\`
`;
sheets['wrong.md'] = `---
title: Wrong lines
stages: { one: One, two: Two }
---

Shaft power is {P_nowhere} here.

\`\`\`inputs
P = 5 kW
T = 2 N m
u = ? m
\`\`\`

\`\`\`calc
S = P + T
V = 2 * S
L = 2 * u
good = 2 * P
\`\`\`

\`\`\`limits
shaft: S <= 10 kW
\`\`\`
`;
sheets['branches.md'] = `---
title: Many stages
stages:
${Array.from({ length: 9 }, (_, index) => `  s${index + 1}: { title: Stage number ${index + 1} }`).join('\n')}
---

\`\`\`inputs
x = 1 m
  at s4: 2 m # longer
\`\`\`

\`\`\`calc
y = 3 * x
\`\`\`
`;

const place = (name: string): string => join(inject('servedFolder'), name);
beforeAll(async () => {
  browser = await openBrowser();
  for (const [name, text] of Object.entries(sheets)) writeFileSync(place(name), text);
});
afterAll(async () => {
  for (const name of Object.keys(sheets)) rmSync(place(name));
  await browser.close();
});

test.each(['', 'worksheets/hostile'])('a hostile worksheet runs nothing at /%s', async (path) => {
  const { page, complaints, close } = await openPage(browser, path);
  expect(await page.evaluate(() => 'harmed' in window)).toBe(false);
  expect(complaints).toEqual([]);
  const made = await page.evaluate(() => ({
    scripts: [...document.scripts].map((element) => element.src || element.text),
    handlers: [...document.querySelectorAll('*')].flatMap((element) =>
      element.getAttributeNames().filter((name) => name.startsWith('on'))
    ),
    links: [...document.querySelectorAll('a')].map((link) => link.protocol)
  }));
  expect(made.scripts).toEqual([`${inject('serverAddress')}enhance.js`]);
  expect(made.handlers).toEqual([]);
  expect(made.links.filter((protocol) => !['http:', 'https:', ':'].includes(protocol))).toEqual([]);
  expect(await page.locator('body').innerText()).toContain('<script>');
  await close();
});

test('a wrong line has its sentence under it, what depends on it waits, the rest is computed', async () => {
  const { page, close } = await openPage(browser, 'worksheets/wrong', { javaScriptEnabled: false });
  const main = page.locator('main');
  expect(await main.innerText()).toContain('1 line has a mistake; the rest is computed.');
  const sum = page.locator('.problem[data-severity=error]');
  expect(await sum.count()).toBe(1);
  const text = await sum.innerText();
  expect(text).toContain('line 15');
  expect(text).toContain('S = P + T');
  expect(text).toMatch(/power/);
  expect(text).toMatch(/torque/);
  const cells = (id: string): Promise<string[]> => page.locator(`#${id} .cell`).allInnerTexts();
  expect(await cells('line-16')).toEqual(['waits for S', '–']);
  expect(await cells('line-11')).toEqual(['needs a value', '–']);
  expect(await cells('line-17')).toEqual(['waits for u', '–']);
  expect(await cells('line-18')).toEqual(['10', '10']);
  const waiting = await page.locator('.limit .cell').first().innerText();
  expect(waiting).toContain('unknown');
  expect(waiting).toContain('waits for S');
  await close();
});

test('a value in prose that names nothing stays as written, with a note', async () => {
  const { page, close } = await openPage(browser, 'worksheets/wrong');
  expect(await page.locator('.prose').first().innerText()).toContain('{P_nowhere}');
  expect(await page.locator('.problem[data-severity=warning]').first().innerText()).toContain(
    'P_nowhere'
  );
  await close();
});

test('of nine stages five are shown, and the others reached', async () => {
  const { page, close } = await openPage(browser, 'worksheets/branches');
  const heads = page.locator('nav[aria-label=Stages] a');
  expect(await heads.count()).toBe(5);
  expect(await heads.last().innerText()).toContain('Stage number 9');
  await page.getByRole('link', { name: '4 earlier' }).click();
  expect(await heads.filter({ hasText: 'Stage number 4' }).count()).toBe(1);
  await close();
});

test.each(['wrong', 'empty', 'branches', 'hostile'])('%s has no violation in axe', async (name) => {
  const { page, close } = await openPage(browser, `worksheets/${name}`);
  expect(await axeViolations(page)).toEqual([]);
  await close();
});
