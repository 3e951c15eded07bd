import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import {
  limit,
  limitAt,
  results,
  rig,
  stage,
  stageValue,
  unit,
  value,
  waiting
} from './results.fixture.ts';
import { jsonText, resultObject } from './json.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../../docs/schemas/result.schema.json', import.meta.url), 'utf8')
) as object;
const isResult = new Ajv2020({ allErrors: true }).compile(schema);

/** The object as other programs read it, held to the schema. */
function read(sheet: Parameters<typeof resultObject>[0]): ReturnType<typeof resultObject> {
  const object = JSON.parse(jsonText(resultObject(sheet))) as ReturnType<typeof resultObject>;
  expect(isResult(object), JSON.stringify(isResult.errors)).toBe(true);
  return object;
}

describe('the result object', () => {
  test('of a sheet with every status keeps to its schema', () => {
    const object = read(rig);
    expect(object.title).toBe('A rig');
    expect(object.stages[1]).toEqual({ id: 'upgrade', title: 'Bigger motor', after: 'sketch' });
    expect(object.stopsTheRun).toEqual({ sketch: [], upgrade: ['guard, whole arm'] });
    expect(object.limits[0]?.at.upgrade).toEqual({
      left: 1,
      right: 2,
      utilisation: 3.333,
      margin: 1,
      status: 'over',
      atLimit: false
    });
    expect(object.limits[2]?.at.upgrade).toMatchObject({
      status: 'unknown',
      waitsFor: ['L_motor']
    });
    expect(object.errors[0]).toMatchObject({
      code: 'units/mismatch',
      line: 4,
      column: 5,
      endColumn: 22
    });
    expect(object.notices).toEqual([]);
  });

  test('gives a value in its unit and in SI, with uncertainty only where a tolerance reaches it', () => {
    const power = value('P_shaft', {
      unit: unit('kW'),
      dimension: unit('kW').dimension,
      at: [
        stageValue({ value: 0.8123, si: 812.3, text: '0.8123 kW', standardUncertainty: 0.021, coverage: [0.77, 0.85] }), // prettier-ignore
        stageValue({ value: 1.02, si: 1020, text: '1.020 kW' })
      ]
    });
    const object = read(results({ stages: [stage('a'), stage('b')], values: [power] }));
    expect(object.values.P_shaft).toEqual({
      line: 1,
      kind: 'calc',
      dimension: 'kg m^2 s^-3',
      unit: 'kW',
      at: {
        a: { value: 0.8123, si: 812.3, text: '0.8123 kW', standardUncertainty: 0.021, coverage: [0.77, 0.85] }, // prettier-ignore
        b: { value: 1.02, si: 1020, text: '1.020 kW' }
      }
    });
  });

  test('puts a code or names in place of a value that could not be computed', () => {
    const object = read(
      results({
        values: [
          value('a', { at: [waiting('b', 'c')] }),
          value('b', { at: [stageValue({ state: 'error', value: null, error: 'names/circle' })] }),
          value('c', { at: [stageValue({ state: 'unknown', value: null })] }),
          value('d', { unit: null, at: [stageValue({ value: true, si: null, text: 'yes' })] }),
          value('e', { unit: null, at: [stageValue({ value: 'B 40', si: null, text: 'B 40' })] }),
          value('f', { at: [stageValue({ value: [1, NaN], si: [1, NaN], text: '2 values' })] })
        ]
      })
    );
    const at = (name: string): unknown => object.values[name]?.at.design;
    expect(at('a')).toEqual({ waitsFor: ['b', 'c'] });
    expect(at('b')).toEqual({ error: 'names/circle' });
    expect(at('c')).toEqual({ error: 'value/needs-a-value' });
    expect(at('d')).toEqual({ value: true, text: 'yes' });
    expect(at('e')).toEqual({ value: 'B 40', text: 'B 40' });
    expect(at('f')).toMatchObject({ value: [1, null] });
  });

  test('takes __proto__ for a name like any other', () => {
    const object = read(results({ values: [value('__proto__')] }));
    expect(Object.keys(object.values)).toEqual(['__proto__']);
  });

  test('written as text cannot steer a terminal', () => {
    const text = jsonText(
      resultObject(results({ limits: [limit('\u009b31m \u001b[2J', { at: [limitAt()] })] }))
    );
    expect(text).not.toMatch(/(?!\n)\p{Cc}/u);
    expect(text).toContain('\\u009b31m');
  });
});
