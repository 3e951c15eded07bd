// Each rule for plane angle with its outcome. The rules are those of docs/worksheet-format.md, *Plane
// angle*; 36 formulas of textbooks are in tests/reference/angle.

import { describe, expect, test } from 'vitest';
import { angleOf } from './angle.ts';
import { checkLines } from './check.fixture.ts';

const given = [
  'omega = 60 rad/s', 'n = 600 rpm', 'f_0 = 10 Hz', 'rate = 10 s^-1', 'k = 4000 N/m', 'm_arm = 2 kg',
  'd = 0.2 m', 'R = 0.6 m', 'v_tip = 40 m/s', 'T_q = 12 N m', 'turns = 12 rev', 'swing = 30 deg',
  'share_0 = 0.5', 'F_c = 50 N', 'c_t = 3 N m s/rad', 'J_r = 0.05 kg m^2'
]; // prettier-ignore

/** What is said about one more line. */
const said = (line: string): readonly string[] => checkLines(...given, line).said;

type Case = readonly [line: string, outcome: readonly string[]];
const silent: readonly string[] = [];

describe('a rate shown without angle', () => {
  test.each<Case>([
    ['y = f_0 to 1/s', silent],
    ['y = rate to Hz', silent],
    ['y = v_tip / R to Hz', silent],
    ['y = omega / (2*pi) to Hz', silent],
    ['y = n / (2*pi) to Hz', silent],
    ['y = omega / (1 rev) to Hz', silent],
    ['y = omega / (1 rad) to 1/s', silent],
    ['y = T_q / c_t to 1/s', ['error angle/counts-radians']],
    ['y = omega to Hz', ['error angle/counts-radians']],
    ['y = n to Hz', ['error angle/counts-radians']],
    ['y = n to 1/s', ['error angle/counts-radians']],
    ['y = 2 * n to 1/min', ['error angle/counts-radians']],
    ['y = omega * pi to Hz', ['error angle/counts-radians']]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));

  test.each<Case>([
    ['y = sqrt(k / m_arm) to Hz', ['warning angle/root-in-hertz']],
    ['y = (k / m_arm)^(1/2) to Hz', ['warning angle/root-in-hertz']],
    ['y = 1.03 * sqrt(k / m_arm) to Hz', ['warning angle/root-in-hertz']],
    ['y = sqrt(k / m_arm) + sqrt(2 * k / m_arm) to Hz', ['warning angle/root-in-hertz']],
    ['y = sqrt(k / m_arm) / (2*pi) to Hz', silent],
    ['y = sqrt(k / m_arm) to 1/s', silent],
    ['y = sqrt(f_0^2 + rate^2) to Hz', silent]
  ])('a bare root: %s', (line, outcome) => expect(said(line)).toEqual(outcome));
});

describe('a rate shown with angle', () => {
  test.each<Case>([
    ['y = omega to rpm', silent],
    ['y = n to rad/s', silent],
    ['y = n to deg/s', silent],
    ['y = 2*pi * omega to rpm', ['error angle/twice-two-pi']],
    ['y = 2*pi * n to rad/s', ['error angle/twice-two-pi']],
    ['y = omega / (2*pi) to rpm', ['error angle/twice-two-pi']],
    ['y = 2*pi * f_0 to rad/s', silent],
    ['y = 2*pi * f_0 to rpm', silent],
    ['y = 2*pi * rate to rpm', silent],
    ['y = rate / (2*pi) to rpm', ['error angle/needs-turn-or-radian']],
    ['y = v_tip / R to rad/s', silent],
    ['y = v_tip / R to rpm', ['error angle/needs-turn-or-radian']],
    ['y = v_tip / R to deg/s', ['error angle/needs-turn-or-radian']],
    ['y = f_0 to rad/s', ['error angle/needs-turn-or-radian']],
    ['y = f_0 to rpm', ['error angle/needs-turn-or-radian']],
    ['y = f_0 * 1 rev to rpm', silent],
    ['y = v_tip / R * 1 rad to rpm', silent],
    ['y = sqrt(k / m_arm) to rad/s', silent]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));

  test('the error offers radians and turns', () => {
    const [found] = checkLines(...given, 'y = v_tip / R to rpm').problems;
    expect(found?.message).toBe(
      'v_tip / R is a plain rate: it does not say whether it counts radians or turns, so it cannot be taken as rpm.'
    );
    expect(found?.hint).toBe(
      'Multiply by 1 rad if it counts radians, by 1 rev if it counts turns.'
    );
  });
});

describe('a time shown without angle', () => {
  test.each<Case>([
    ['y = J_r * omega / T_q to s', silent],
    ['y = 1 / f_0 to s', silent],
    ['y = 2*pi / omega to s', silent],
    ['y = 1 rev / omega to s', silent],
    ['y = 1 rad / omega to ms', silent],
    ['y = 1 / omega to s', ['error angle/time-per-radian']],
    ['y = 1 / n to s', ['error angle/time-per-radian']],
    ['y = R / d / omega to ms', ['error angle/time-per-radian']]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));
});

describe('a plain number', () => {
  test.each<Case>([
    ['y = sin(swing) + 1', silent],
    ['y = swing * 2 to 1', silent],
    ['y = swing to %', silent],
    ['y = turns to 1', ['error angle/rev-as-radians']],
    ['y = turns to %', ['error angle/rev-as-radians']],
    ['y = turns / (1 rev) to 1', silent],
    ['y = omega * R / v_tip to 1', silent],
    ['y = n * R / v_tip to 1', ['note angle/rev-as-radians']],
    ['y = share_0 to rad', silent],
    ['y = share_0 to deg', silent],
    ['y = share_0 to rev', ['error angle/needs-turn-or-radian']],
    ['y = swing to rev', silent]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));
});

describe('anything else: angle drops out, 1 rad being 1', () => {
  test.each<Case>([
    ['y = omega * R to m/s', silent],
    ['y = T_q * omega to W', silent],
    ['y = m_arm * omega^2 * R to N', silent],
    ['y = n * R to m/s', ['note angle/rev-as-radians']],
    ['y = T_q * n to kW', ['note angle/rev-as-radians']],
    ['y = pi * d * n to m/s', ['warning angle/twice-two-pi']],
    ['y = 2*pi * n * T_q to kW', ['warning angle/twice-two-pi']],
    ['y = pi * d * f_0 to m/s', silent],
    ['y = 2*pi * f_0 * T_q to kW', silent],
    ['y = pi * d * omega to m/s', silent]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));
});

describe('sums and comparisons', () => {
  test.each<Case>([
    ['y = omega + n', silent],
    ['y = omega + 2*pi * f_0', silent],
    ['y = f_0 + rate', silent],
    ['y = omega + f_0', ['error angle/counts-radians']],
    ['y = f_0 - n', ['error angle/counts-radians']],
    ['y = omega + 2*pi * n', ['error angle/twice-two-pi']],
    ['y = omega > f_0', ['error angle/counts-radians']],
    ['y = omega > 0', silent],
    ['y = swing + share_0', silent],
    ['y = turns + share_0', ['error angle/rev-as-radians']],
    ['y = T_q * omega + 3 W', silent]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));
});

describe('at the end of a definition pi is settled into the exponent of angle', () => {
  test.each([
    ['y = omega / (2*pi)', 0],
    ['y = 2*pi * f_0', 1],
    ['y = 2*pi / omega', 0],
    ['y = omega', 1],
    ['y = 1 / omega', -1],
    ['y = v_tip / R to rad/s', 1]
  ])('%s', (line, exponent) => {
    expect(angleOf(checkLines(...given, line).quantity('y').dimension)).toBe(exponent);
  });
});

describe('chains over names', () => {
  test.each<readonly [lines: readonly string[], outcome: readonly string[]]>([
    [['w = 600 rpm', 'f = w / (2*pi)', 'y = f to Hz'], silent],
    [['w = 600 rpm', 'f = w / (2*pi)', 'y = f to rpm'], ['error angle/needs-turn-or-radian']],
    [['f = 10 Hz', 'w = 2*pi * f', 'y = w to rpm'], silent],
    [['f = 10 Hz', 'w = 2*pi * f', 'y = w to Hz'], ['error angle/counts-radians']],
    [['w = 40 m/s / (0.6 m) to rad/s', 'y = w to rpm'], silent],
    [['w = 40 m/s / (0.6 m)', 'y = w to rpm'], ['error angle/needs-turn-or-radian']],
    [['f = 10 Hz', 'g_1 = f * 2', 'y = g_1 to rad/s'], ['error angle/needs-turn-or-radian']],
    [['w = sqrt(4000 N/m / (2 kg))', 'y = w to Hz'], ['warning angle/root-in-hertz']],
    [['w = sqrt(4000 N/m / (2 kg)) to rad/s', 'y = w / (2*pi) to Hz'], silent],
    [['w = 60 rad/s to rpm', 'y = w * 0.3 m to m/s'], ['note angle/rev-as-radians']]
  ])('%j', (lines, outcome) => expect(checkLines(...lines).said).toEqual(outcome));
});

describe('trigonometric functions', () => {
  test.each<Case>([
    ['y = sin(swing)', silent],
    ['y = cos(0.5)', silent],
    ['y = tan(6.28)', silent],
    ['y = sin(6.29)', ['note angle/large-number']],
    ['y = cos(90)', ['note angle/large-number']],
    ['y = cos(90 deg)', silent],
    ['y = sin(turns)', silent]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));

  test.each(['asin(0.5)', 'acos(0.5)', 'atan(2)', 'atan2(1 m, 2 m)'])(
    '%s is in radians',
    (call) => {
      expect(angleOf(checkLines(`y = ${call}`).quantity('y').dimension)).toBe(1);
    }
  );
});

describe('units that count turns make screws, pumps and motors exact', () => {
  test.each<Case>([
    ['y = 5 mm/rev * n to mm/s', silent],
    ['y = 12 cm^3/rev * n to L/min', silent],
    ['y = 1000 rev^-1 * n to Hz', silent],
    ['y = 9 V/krpm * n to V', silent]
  ])('%s', (line, outcome) => expect(said(line)).toEqual(outcome));
});
