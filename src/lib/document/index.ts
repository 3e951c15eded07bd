export * from './types.ts';
export { createReader, longestFile, readWorksheet, writeWorksheet, type Reader } from './read.ts';
export { readTableText } from './table.ts';
export { filesWanted, isOutside } from './files.ts';
export { longestLine } from './entries.ts';
export { sureWords } from './comment.ts';
export { readInputValue } from './blocks/inputs.ts';
export { readFormula } from './blocks/entry.ts';
export { kinds, type KindRow } from './blocks/kinds.ts';
export {
  editText,
  findInput,
  insertEntry,
  insertItem,
  rangeOfItem,
  replaceItem,
  setInputValue,
  type InputEdit,
  type TextChange
} from './edit.ts';
