export * from './functions.ts';
export * from './parse.ts';
export * from './reserved.ts';
export * from './tree.ts';
export * from './walk.ts';
