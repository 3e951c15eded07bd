export { filesWanted } from './files.ts';
export type { InputFigures } from './inputs.ts';
export type { Override } from './overrides.ts';
export * from './results.ts';
export { compute, Session, type ComputeOptions } from './session.ts';
export {
  coverageFactor95,
  judge,
  normalProbability,
  type LimitFigures,
  type Verdict
} from './verdict.ts';
