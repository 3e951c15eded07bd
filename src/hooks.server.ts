// What every answer of the page carries: the reader's choice of light or dark in the first byte of
// the page (so that nothing flashes), and headers that keep foreign pages and types out. SvelteKit
// puts its nonce into script-src only; style-src gets the same one.
import { dev } from '$app/environment';
import { themeOf } from '#lib/ui/index.ts';
import type { Handle, HandleServerError } from '@sveltejs/kit';

export const handle: Handle = async ({ event, resolve }) => {
  const theme = themeOf(event.cookies.get('theme'));
  const response = await resolve(event, {
    transformPageChunk: ({ html }) =>
      html.replace('%rigwright.theme%', theme ? ` data-theme="${theme}"` : '')
  });
  response.headers.set('x-content-type-options', 'nosniff');
  response.headers.set('referrer-policy', 'same-origin');
  response.headers.set('cross-origin-opener-policy', 'same-origin');
  response.headers.set('cross-origin-resource-policy', 'same-origin');
  if (dev) return response; // in dev the kit adds 'unsafe-inline', which a nonce would cancel
  const policy = response.headers.get('content-security-policy');
  const nonce = policy === null ? null : /'nonce-[^']+'/.exec(policy)?.[0];
  if (policy && nonce) {
    const withStyles = policy.replace("style-src 'self'", `style-src 'self' ${nonce}`);
    response.headers.set('content-security-policy', withStyles);
  }
  return response;
};

/** A fault of the program is told plainly, and in full where the server was started. */
export const handleError: HandleServerError = ({ error, status, event }) => {
  if (status === 404) return { message: `There is nothing at ${event.url.pathname}.` };
  console.error(error);
  return { message: 'The page could not be made: a fault of this program, not of a worksheet.' };
};
