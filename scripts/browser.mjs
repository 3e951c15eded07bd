// Finds a Chromium for the browser tests, or installs one where that can be done without asking.
// Order: CHROMIUM_PATH; the usual places of Chromium, Chrome and Edge; the one Playwright keeps;
// Debian's package when root; Playwright's own download. Places on macOS and Windows are from memory.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Stopped, run, tool } from './common.mjs';

const LINUX = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const MAC = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
const WINDOWS = ['Chromium', 'Google\\Chrome', 'Microsoft\\Edge'];

/** Program files to look for on this system, likeliest first. */
function usualPlaces() {
  if (process.platform === 'darwin') {
    return MAC.map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);
  }
  if (process.platform === 'win32') {
    const folders = [
      process.env.PROGRAMFILES,
      process.env['PROGRAMFILES(X86)'],
      process.env.LOCALAPPDATA
    ].filter((folder) => folder !== undefined);
    return folders.flatMap((folder) =>
      WINDOWS.map((name) =>
        join(folder, name, 'Application', name.endsWith('Edge') ? 'msedge.exe' : 'chrome.exe')
      )
    );
  }
  const names = [...LINUX, 'microsoft-edge'];
  return ['/usr/bin', '/usr/local/bin', '/snap/bin'].flatMap((folder) =>
    names.map((name) => join(folder, name))
  );
}

/** The program file of a browser that is already here, or null. */
export async function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (existsSync(named)) return named;
    throw new Stopped(`CHROMIUM_PATH is "${named}", and there is no such file.`);
  }
  const usual = usualPlaces().find((path) => existsSync(path));
  if (usual) return usual;
  const { chromium } = await import('playwright-core');
  const kept = chromium.executablePath();
  return kept && existsSync(kept) ? kept : null;
}

const isDebianRoot = () =>
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  existsSync('/usr/bin/apt-get') &&
  existsSync('/etc/os-release') &&
  /^ID(_LIKE)?=.*debian/m.test(readFileSync('/etc/os-release', 'utf8'));

/** A browser's program file, installed first if need be. */
export async function needChromium() {
  const found = await findChromium();
  if (found) return found;
  console.log('No Chromium found; installing one for the browser tests.');
  if (isDebianRoot()) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    // A failed update may still leave a usable list: the install decides.
    await run('apt-get', ['update', '-qq'], { env });
    await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { env });
  } else {
    await tool('playwright-core', ['install', 'chromium']);
  }
  const installed = await findChromium();
  if (installed) return installed;
  throw new Stopped(
    'No Chromium could be found or installed. Install Chromium, Chrome or Edge, or set CHROMIUM_PATH to its program file, then run npm test again.'
  );
}
