// The unit behind a magnitude in an expression: `9.81 m/s^2`. A run goes on over a space, a tight `·`
// or a tight `/`, never over `*` or a spaced `/`, and stops before anything that is no unit. It never
// looks at which names a sheet defines, so the meaning of a line does not depend on other lines.

import type { UnitFactor } from './compose.ts';
import type { ScannedUnit } from './scan.ts';
import type { Dimension, Unit, UnitFault } from './types.ts';
import { composeUnit } from './compose.ts';
import { multiplyDimensions, plain, powerDimension } from './dimension.ts';
import {
  degreeFault,
  exponentFault,
  faultAt,
  inchAsWordFault,
  twoReadingsFault
} from './faults.ts';
import { isUnitFault } from './lookup.ts';
import { negateRational } from './rational.ts';
import { skipSpace, unitAt } from './scan.ts';

/** Where one unit name of a run stands, so that a notice can say it is read as a unit. */
export interface UnitRunAtom {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

export interface UnitRun {
  readonly unit: Unit;
  /** Just past the run. */
  readonly end: number;
  readonly atoms: readonly UnitRunAtom[];
}

interface Member {
  readonly scanned: ScannedUnit;
  readonly under: boolean;
  /** What stood before it. */
  readonly joint: 'first' | 'space' | 'dot' | 'stroke';
}

interface Reading {
  readonly members: readonly Member[];
  readonly end: number;
}

/**
 * The unit run at an offset.
 *
 * @param text   the whole expression
 * @param from   just past the magnitude; white space there is skipped
 * @param money  the sheet's ISO 4217 code, or null
 * @returns  null if no unit stands there; a fault, with offsets in `text`, if one was meant and is wrong
 *
 * A magnitude takes a stroke at once only before a turn: `2048/rev` is a quantity, `1/h` is not, since
 * h may be a name.
 */
export function readUnitRun(
  text: string,
  from: number,
  money: string | null
): UnitRun | { readonly fault: UnitFault } | null {
  const isPerTurn = text[from] === '/';
  const first = unitAt(text, isPerTurn ? from + 1 : skipSpace(text, from), money);
  if (first === null) return null;
  if (isUnitFault(first)) return isPerTurn ? null : { fault: first };
  if (isPerTurn && (first.match.marks !== 'rev' || first.match.dimension.key !== 'rad'))
    return null;
  const members: Member[] = [{ scanned: first, under: isPerTurn, joint: 'first' }];
  let end = first.end;
  for (;;) {
    const next = nextMembers(text, end, money, first.match.symbol === '%');
    if (next === null) break;
    if (isUnitFault(next)) return { fault: next };
    members.push(...next.members);
    end = next.end;
  }
  const fault = faultOf(text, members, end);
  if (fault) return { fault };
  const unit = composeUnit(members.map(factorOf));
  if (!unit) return { fault: faultAt(exponentFault(text.slice(first.from, end)), first.from, end) };
  const atoms = members.map(({ scanned }) => ({
    name: text.slice(scanned.from, scanned.nameEnd),
    from: scanned.from,
    to: scanned.nameEnd
  }));
  return { unit, end, atoms };
}

/** What continues a run at `end`: one unit, or a bracket group after a stroke. */
function nextMembers(
  text: string,
  end: number,
  money: string | null,
  onlyStroke: boolean
): Reading | UnitFault | null {
  const sign = text[end];
  if (sign === '/') {
    return text[end + 1] === '('
      ? groupAt(text, end + 1, money)
      : single(text, end + 1, money, 'stroke');
  }
  if (onlyStroke) return null;
  if (sign === '·' || sign === '⋅') return single(text, end + 1, money, 'dot');
  const after = skipSpace(text, end);
  return after === end ? null : single(text, after, money, 'space');
}

function single(
  text: string,
  from: number,
  money: string | null,
  joint: Member['joint']
): Reading | UnitFault | null {
  const scanned = unitAt(text, from, money);
  if (scanned === null || isUnitFault(scanned)) return scanned;
  if (scanned.match.symbol === '%') return null;
  return { members: [{ scanned, under: joint === 'stroke', joint }], end: scanned.end };
}

/** `(kg K)` under a stroke, taken only if every member is a unit. */
function groupAt(text: string, open: number, money: string | null): Reading | null {
  const members: Member[] = [];
  let at = open + 1;
  let joint: Member['joint'] = 'first';
  for (;;) {
    const scanned = unitAt(text, skipSpace(text, at), money);
    if (scanned === null || isUnitFault(scanned)) return null;
    members.push({ scanned, under: joint !== 'stroke', joint });
    at = skipSpace(text, scanned.end);
    const sign = text[at];
    if (sign === ')') return { members, end: at + 1 };
    if (sign === '/') joint = 'stroke';
    else if (sign === '*' || sign === '·' || sign === '⋅') joint = 'dot';
    else if (at > scanned.end) joint = 'space';
    else return null;
    if (joint !== 'space') at += 1;
  }
}

function faultOf(text: string, members: readonly Member[], end: number): UnitFault | null {
  const start = members[0]?.scanned.from ?? end;
  const after = skipSpace(text, end);
  if (text[after] === '^') {
    return faultAt(exponentFault(text.slice(start, after + 1)), start, after + 1);
  }
  for (const [index, member] of members.entries()) {
    const before = members[index - 1];
    if (!before) continue;
    const fault = degreesOf(text, before, member) ?? inchOf(members, index);
    if (fault) return fault;
    if (before.under && !member.under && member.joint !== 'stroke') {
      return readingsOf(text.slice(start, end), members, index, start, end);
    }
  }
  return null;
}

function degreesOf(text: string, before: Member, member: Member): UnitFault | null {
  const { symbol } = member.scanned.match;
  if (before.scanned.match.symbol !== 'deg' || member.joint !== 'space') return null;
  if (symbol !== 'C' && symbol !== 'F') return null;
  const { from } = before.scanned;
  const { end } = member.scanned;
  return faultAt(degreeFault(text.slice(from, end), symbol), from, end);
}

/** `5 kW in hp`: an inch between two units of one kind is the English word. */
function inchOf(members: readonly Member[], index: number): UnitFault | null {
  const member = members[index];
  if (member?.scanned.match.symbol !== 'in' || member.joint !== 'space') return null;
  const after = members.slice(index + 1);
  if (after[0]?.joint !== 'space') return null;
  if (dimensionOfAll(members.slice(0, index)) !== dimensionOfAll(after)) return null;
  return faultAt(inchAsWordFault(), member.scanned.from, member.scanned.end);
}

/** A space or dot after a stroke: offers what follows it below the stroke, and above. */
function readingsOf(
  written: string,
  members: readonly Member[],
  index: number,
  from: number,
  to: number
): UnitFault {
  const under = members.map((each, at) => ({ ...each, under: each.under || at >= index }));
  const texts = [under, members].map((each) => composeUnit(each.map(factorOf))?.text ?? written);
  return faultAt(twoReadingsFault(written, texts[0] ?? written, texts[1] ?? written), from, to);
}

function factorOf({ scanned, under }: Member): UnitFactor {
  return {
    match: scanned.match,
    text: scanned.match.symbol,
    exponent: scanned.exponent,
    under
  };
}

function dimensionOfAll(members: readonly Member[]): Dimension {
  let dimension = plain;
  for (const { scanned, under } of members) {
    const exponent = under ? negateRational(scanned.exponent) : scanned.exponent;
    dimension = multiplyDimensions(dimension, powerDimension(scanned.match.dimension, exponent));
  }
  return dimension;
}
