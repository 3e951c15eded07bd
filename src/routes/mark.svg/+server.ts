import type { RequestHandler } from './$types';

const mark = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24"><circle cx="12" cy="12" r="11.5" fill="#fcfbf9"/><g stroke="#114c8f" fill="none"><circle cx="12" cy="12" r="10.4" stroke-width="1.8"/><path d="M5.6 15.7 18.4 8.3" stroke-width="2.4"/></g><circle cx="12" cy="12" r="2.8" fill="#114c8f"/></svg>`;

/** The mark of the page in the browser's tab. */
export const GET: RequestHandler = () =>
  new Response(mark, {
    headers: { 'content-type': 'image/svg+xml', 'cache-control': 'max-age=86400' }
  });
