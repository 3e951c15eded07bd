/** The objects for other programs, held to their documented schemas. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  block,
  drive,
  inside,
  needCommand,
  projectFolder,
  rigwright,
  sheetFolder
} from './rigwright.ts';

beforeAll(needCommand, 60_000);
const folder = sheetFolder();
afterAll(() => folder.remove());
folder.put('drive.md', drive);
folder.put('inside.md', inside);

const schemaOf = (name: string): object =>
  JSON.parse(
    readFileSync(join(projectFolder, 'docs', 'schemas', `${name}.schema.json`), 'utf8')
  ) as object;
const ajv = new Ajv2020({ allErrors: true, schemas: [schemaOf('result')] });
const validators = {
  result: ajv.compile({ $ref: 'rigwright:result' }),
  results: ajv.compile(schemaOf('results')),
  compare: ajv.compile(schemaOf('compare'))
};

/** The output of a call, parsed whole and held to a schema. */
async function read(schema: keyof typeof validators, ...args: string[]): Promise<unknown> {
  const { out, err } = await rigwright([...args, '--json'], { folder: folder.path });
  expect(err).toBe('');
  const object: unknown = JSON.parse(out);
  const validate = validators[schema];
  expect(validate(object), JSON.stringify(validate.errors)).toBe(true);
  return object;
}

describe('the result object', () => {
  test('of check and show is the same, and keeps to its schema', async () => {
    const checked = await read('result', 'check', 'drive.md');
    expect(await read('result', 'show', 'drive.md')).toEqual(checked);
    expect(checked).toMatchObject({
      title: 'Belt drive',
      stages: [
        { id: 'sketch', title: 'First sketch', after: null },
        { id: 'upgrade', title: 'Bigger motor', after: 'sketch' }
      ],
      stopsTheRun: { sketch: [], upgrade: [] },
      errors: []
    });
  });

  test('gives values in their unit and in SI', async () => {
    const object = (await read('result', 'check', 'drive.md')) as {
      values: Record<string, { unit: string; at: Record<string, { value: number; si: number }> }>;
      limits: { label: string; at: Record<string, { utilisation: number; status: string }> }[];
    };
    // 8 N m at 1200 rpm: 8 * 2 pi * 1200/60 W, the definition of power at a shaft.
    const power = 8 * 2 * Math.PI * 20;
    expect(object.values.P_shaft?.unit).toBe('kW');
    expect(object.values.P_shaft?.at.sketch?.si).toBeCloseTo(power, 9);
    expect(object.values.P_shaft?.at.sketch?.value).toBeCloseTo(power / 1000, 12);
    const belt = object.limits.find(({ label }) => label === 'belt');
    expect(belt?.at.sketch?.utilisation).toBeCloseTo(power / 1500, 12);
    expect(belt?.at.upgrade).toMatchObject({ status: 'over' });
  });

  test('of several files is an array, each with its file', async () => {
    const objects = await read('results', 'check', 'drive.md', 'inside.md');
    expect(objects).toMatchObject([{ file: 'drive.md' }, { file: 'inside.md' }]);
  });

  test('leaves out a file that cannot be read, which standard error names', async () => {
    const ended = await rigwright(['check', 'drive.md', 'none.md', '--json'], {
      folder: folder.path
    });
    expect(ended.status).toBe(3);
    expect(ended.err).toBe('rigwright: none.md does not exist.\n');
    expect(JSON.parse(ended.out)).toMatchObject([{ file: 'drive.md' }]);
  });

  test('of one stage has that stage only', async () => {
    const object = (await read('result', 'check', 'drive.md', '--stage', 'upgrade')) as {
      stages: object[];
      values: Record<string, { at: object }>;
    };
    expect(object.stages).toHaveLength(1);
    expect(Object.keys(object.values.P_shaft?.at ?? {})).toEqual(['upgrade']);
  });

  test('keeps to its schema with every kind of value, mistake and odd name', async () => {
    folder.put(
      'odd.md',
      block('inputs', '__proto__ = 2 m', 'constructor = 3 m', 'q = ? kg', 'd = 5 mm ± 0.1 mm', 't = 20 degC') +
        block('calc', 'is_long = constructor > __proto__', 'w = q*2', 'bad = 2 kg + 3 m', '__proto__*2', 'f(x) = x^2', 'y = f(d)', 'dd = 2*d') +
        block('table motors', 'name, P [kW]', 'A, 1.1', 'B,') +
        block('calc', 'P_sum = sum(motors.P)') +
        block('limits', 'a [safety]: w <= 1 kg', 'b: 1 m <= __proto__ <= 5 m', 'c: d <= none', 'e: t <= 80 degC', 'c2 [screen]: d <= 1 mm') +
        block('sweep', 'y over d from 1 mm to 9 mm')
    ); // prettier-ignore
    const object = (await read('result', 'check', 'odd.md')) as {
      values: Record<string, { at: { design: object } }>;
      errors: { line: number }[];
      stopsTheRun: { design: string[] };
    };
    expect(Object.keys(object.values)).toContain('__proto__');
    expect(object.values.w?.at.design).toEqual({ waitsFor: ['q'] });
    expect(object.values.bad?.at.design).toEqual({ error: 'units/mismatch' });
    expect(object.values.is_long?.at.design).toEqual({ value: true, text: 'yes' });
    expect(object.stopsTheRun.design).toEqual(['a']);
    expect(object.errors.length).toBeGreaterThan(0);
  });

  test('of every worksheet of the project keeps to its schema', async () => {
    for (const name of ['spray-arm-rig.md', 'doubling-speed.md'])
      await read('result', 'check', join(projectFolder, 'worksheets', name));
  });
});

describe('the compare object', () => {
  test('between stages, between files and with a try keeps to its schema', async () => {
    folder.put('later.md', drive.replace('T = 8 N m', 'T = 10 N m'));
    expect(await read('compare', 'compare', 'drive.md')).toMatchObject({
      compare: [{ from: { stage: 'sketch' }, to: { stage: 'upgrade' } }]
    });
    expect(await read('compare', 'compare', 'drive.md', 'later.md')).toMatchObject({
      compare: [
        { from: { file: 'drive.md', stage: 'sketch' }, to: { file: 'later.md', stage: 'sketch' } },
        {}
      ]
    });
    expect(await read('compare', 'compare', 'drive.md', '--try', 'n=1500 rpm')).toMatchObject({
      compare: [{ tries: [{ name: 'n', stage: null, value: '1500 rpm' }] }, {}]
    });
  });
});
