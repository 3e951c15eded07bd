import { redirect } from '@sveltejs/kit';
import { themeOf } from '#lib/ui/index.ts';
import type { RequestHandler } from './$types';

/** Keeps the reader's choice of light or dark for a year, or forgets it, and goes back. */
export const POST: RequestHandler = async ({ request, cookies }) => {
  const form = await request.formData();
  const [wanted, back] = [form.get('theme'), form.get('back')];
  const theme = themeOf(typeof wanted === 'string' ? wanted : null);
  const options = { path: '/', httpOnly: true, sameSite: 'strict', secure: false } as const;
  if (theme) cookies.set('theme', theme, { ...options, maxAge: 60 * 60 * 24 * 365 });
  else cookies.delete('theme', options);
  // Only places of this server: '//host' and '/\host' lead elsewhere.
  const isOurs = typeof back === 'string' && /^\/(?![/\\])/.test(back);
  redirect(303, isOurs ? back : '/');
};
