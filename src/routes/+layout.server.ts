import { themeOf } from '#lib/ui/index.ts';
import type { LayoutServerLoad } from './$types';

export const load: LayoutServerLoad = ({ cookies }) => ({ theme: themeOf(cookies.get('theme')) });
