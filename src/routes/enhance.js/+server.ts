import script from '#lib/ui/enhance/enhance.js?raw';
import type { RequestHandler } from './$types';

/** The page's one script, from a file of its own so that the policy needs no inline script. */
export const GET: RequestHandler = () =>
  new Response(script, {
    headers: { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-cache' }
  });
