import { describe, expect, test } from 'vitest';
import { canonicalName, isName, reservationOf } from './names.ts';

describe('names', () => {
  test.each(['a', '_x', 'P_shaft', 'Größe', 'ω', 'x2', 'm_Pb', '__proto__', 'constructor', 'ü'])(
    '%s is one',
    (name) => {
      expect(isName(name)).toBe(true);
    }
  );

  test.each(['', '2x', 'a b', 'a-b', 'a.b', 'x²', 'x₂', 'ⅷ', "x'", 'a\u0000', '½', 'a\n'])(
    '%j is none',
    (name) => {
      expect(isName(name)).toBe(false);
    }
  );

  test.each([
    ['ω', 'omega'],
    ['ω_tip', 'omega_tip'],
    ['Ω', 'Omega'],
    ['\u2126', 'Omega'], // the ohm sign, one with Ω in NFC
    ['μ_s', 'mu_s'],
    ['µ_s', 'mu_s'], // the micro sign
    ['Δp', 'Deltap'],
    ['φ', 'phi'],
    ['ϕ', 'phi'],
    ['ς', 'sigma'],
    ['π', 'pi'],
    ['e\u0301tat', 'état'],
    ['run1.ω', 'run1.omega'],
    ['plain', 'plain']
  ])('%s is known as %s', (written, known) => {
    expect(canonicalName(written)).toBe(known);
  });

  test.each([
    ['sqrt', 'function'],
    ['log', 'function'],
    ['interp_hold', 'function'],
    ['pi', 'constant'],
    ['π', 'constant'],
    ['g_n', 'constant'],
    ['within', 'word'],
    ['not', 'word'],
    ['none', 'word']
  ])('%s is reserved as a %s', (name, reservation) => {
    expect(reservationOf(name)).toBe(reservation);
  });

  test.each(['e', 'tau', 't', 'm', 'Sqrt', 'g', 'hasOwnProperty', '__proto__'])(
    '%s is free',
    (name) => {
      expect(reservationOf(name)).toBeNull();
    }
  );
});
