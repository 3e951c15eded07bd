export type { LaneFunction } from './lane-function.ts';
export {
  integralStatus,
  integrateLanes,
  type IntegralOptions,
  type Integrals
} from './quadrature.ts';
export { rootStatus, rootsLanes, type RootOptions, type Roots } from './roots.ts';
export {
  interpolant,
  interpolate,
  interpolateAt,
  naturalCubicSpline,
  segmentOf,
  type Interpolant,
  type Interpolation,
  type InterpolationKind,
  type InterpolationStatus
} from './interpolation.ts';
export { mean, compensatedSum, standardDeviation } from './summation.ts';
