export * from './expression.ts';
export * from './functions.ts';
export * from './reserved.ts';
export * from './tex.ts';
export { texOfName } from './tex-name.ts';
export type { ShownValue } from './tex-piece.ts';
export * from './text.ts';
export * from './tree.ts';
export * from './walk.ts';
