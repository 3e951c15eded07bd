export * from './knock-on.ts';
