// The expression tree of the worksheet language. Every node knows where it stands in the cut it was
// read from (`from`, `to`: offsets in the cut's text), so that each problem can be shown in place.

import type { Unit } from '#lib/units/index.ts';

interface Node {
  readonly from: number;
  readonly to: number;
}

export interface NumberNode extends Node {
  readonly kind: 'number';
  readonly value: number;
  /** As written: '1e-6', '0.75'. */
  readonly text: string;
}

/** A number with a unit, one atom: `9.81 m/s^2`, `3/4 in`, `5 %`. */
export interface QuantityNode extends Node {
  readonly kind: 'quantity';
  /** In `unit`, a sign in front not included (a temperature reading takes its sign in the check). */
  readonly magnitude: number;
  readonly magnitudeText: string;
  readonly unit: Unit;
}

/** A defined name, dotted names of blocks included: `omega`, `motor.P_rated`, `pi`, `true`, `inf`. */
export interface NameNode extends Node {
  readonly kind: 'name';
  readonly name: string;
}

export interface SignNode extends Node {
  readonly kind: 'sign';
  readonly op: '-' | '+';
  readonly operand: Expression;
}

export interface NotNode extends Node {
  readonly kind: 'not';
  readonly operand: Expression;
}

export interface BinaryNode extends Node {
  readonly kind: 'binary';
  readonly op: '+' | '-' | '*' | '/' | '^';
  readonly left: Expression;
  readonly right: Expression;
  /** `2 pi`, `2(3 + 4)`: no `*` was written. */
  readonly implicit: boolean;
}

export type RelationOperator = '<' | '<=' | '>' | '>=' | '==' | '!=';

/** `a < b`, `a <= b < c`: operators.length + 1 operands. */
export interface RelationNode extends Node {
  readonly kind: 'relation';
  readonly operators: readonly RelationOperator[];
  readonly operands: readonly Expression[];
}

export interface LogicNode extends Node {
  readonly kind: 'logic';
  readonly op: 'and' | 'or';
  readonly left: Expression;
  readonly right: Expression;
}

export interface ConditionalNode extends Node {
  readonly kind: 'conditional';
  readonly test: Expression;
  readonly yes: Expression;
  readonly no: Expression;
}

export interface CallNode extends Node {
  readonly kind: 'call';
  readonly callee: string;
  readonly args: readonly Expression[];
  /** Where the function's name stands. */
  readonly calleeTo: number;
}

/** `(inner)` or `(inner to unit)`. */
export interface GroupNode extends Node {
  readonly kind: 'group';
  readonly inner: Expression;
  readonly unit: Unit | null;
}

export type Expression =
  | NumberNode
  | QuantityNode
  | NameNode
  | SignNode
  | NotNode
  | BinaryNode
  | RelationNode
  | LogicNode
  | ConditionalNode
  | CallNode
  | GroupNode;
