export * from './functions.ts';
export * from './expression.ts';
export * from './reserved.ts';
export * from './tree.ts';
export * from './walk.ts';
