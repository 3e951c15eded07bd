// The readings of temperature_scales in the file of unit conversions, each as a worksheet: a reading
// on one scale, shown on another.

import { describe, expect, it } from 'vitest';
import { block, reference, run } from '../worksheet.ts';

interface Reading {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly value: number;
  readonly result: number;
}

const { temperature_scales: readings } = reference<{ temperature_scales: Reading[] }>(
  import.meta.url,
  '../units/units.json'
);

describe('temperature scales', () => {
  it('have 20 readings', () => expect(readings.length).toBe(20));

  it.each(readings)('$id $value $from is $result $to', ({ from, to, value, result }) => {
    const sheet = run(
      block('inputs', [`T = ${value} ${from}`]) + block('calc', [`y = T to ${to}`])
    );
    expect(sheet.problems('y')).toEqual([]);
    // The scales' zeros are 273.15 K and 459.67 degR below: a reading near 0 keeps an absolute 1e-13 of them.
    expect(Math.abs(sheet.shown('y') - result)).toBeLessThan(
      2e-13 * Math.max(460, Math.abs(result))
    );
  });
});
