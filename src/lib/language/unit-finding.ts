// A fault of a unit's text as a finding at its place in the expression.

import type { UnitFault } from '#lib/units/index.ts';
import { finding, type Finding } from './finding.ts';

/** @param offset  where the unit's text begins in the cut */
export function unitFinding(fault: UnitFault, offset: number): Finding {
  const [from, to] = [fault.from + offset, fault.to + offset];
  const cure = fault.replacement === null ? null : { from, to, replacement: fault.replacement };
  return finding(fault.code, from, to, { message: fault.message, hint: fault.hint }, cure);
}
