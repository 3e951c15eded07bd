export * from './folder.ts';
export * from './decode.ts';
