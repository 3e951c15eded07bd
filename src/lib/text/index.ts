export * from './cut.ts';
export * from './lines.ts';
export * from './names.ts';
export * from './scan.ts';
export { placeholdersIn, type Placeholder } from './placeholders.ts';
