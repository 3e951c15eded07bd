export * from './cut.ts';
