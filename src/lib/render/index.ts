export { checkText } from './check-text.ts';
export { plainPalette, printable, wrap } from './columns.ts';
export type { Palette } from './columns.ts';
export { compareObject } from './compare-json.ts';
export type { Comparison } from './compare-json.ts';
export { compareText } from './compare-text.ts';
export { sheetCsv } from './csv.ts';
export { jsonText, resultObject } from './json.ts';
export { sheetMarkdown } from './markdown.ts';
export { atStage } from './one-stage.ts';
export { sheetHtml, sheetLatex } from './pages.ts';
export { sheetText } from './text.ts';
export { mathematicsAt } from './mathematics.ts';
export { partsWithoutCheck, titleOf } from './outline.ts';
export {
  changeText,
  counted,
  countsText,
  listing,
  marginText,
  percentText,
  sidesText
} from './words.ts';
