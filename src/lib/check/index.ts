export * from './angle.ts';
export * from './exponent.ts';
export * from './expression.ts';
export * from './functions.ts';
export * from './names.ts';
export type { NodeCheck } from './node.ts';
export * from './quantity.ts';
export * from './sheet.ts';
export * from './type.ts';
