// The story's own Knock-on, and the rules by which a row is listed.

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compute } from '#lib/sheet/index.ts';
import { knockOn } from './knock-on.ts';

const story = compute(readFileSync('worksheets/spray-arm-rig.md', 'utf8'));
const upgrade = knockOn(story, 'first-run', story, 'upgrade');

describe('from the first run to the bigger motor', () => {
  // Source: the tables "ripple" beside the specification of the invented scenario, computed there with
  // Python and again with mathjs; figures as printed.
  it.each([
    ['w_top', 1.67], ['k_drag', 0.78], ['T_load', 2.13], ['P_top', 3.56], ['M_top', 2.13],
    ['T_N', 4.83], ['I_top', 0.83], ['S_in', 2.46], ['J_all', 1.05], ['E_kin', 2.93],
    ['t_coast', 1.26], ['t_stop', 0.23], ['T_des', 2.81], ['F_1', 2.81], ['T_pk', 6.97],
    ['p_k', 6.97], ['s_dead', 3.03], ['s_jolt', 2.93], ['F_rad', 2.81], ['E_c', 2.78],
    ['t_need', 1.98], ['F_root', 2.78], ['M_all', 1.31], ['f_mode', 0.87], ['v_vib', 10.85],
    ['dT_air', 3.66]
  ] as const)('%s moved by a factor of %f', (name, factor) => {
    const row = upgrade.moved.find((moved) => moved.name === name);
    expect(Number(row?.ratio?.toFixed(2))).toBe(factor);
  }); // prettier-ignore

  it('eleven of the twenty-seven limits give out, and the tip speed comes back', () => {
    const out = upgrade.flipped
      .filter(({ direction }) => direction === 'out')
      .map(({ label }) => label);
    expect(out).toEqual(
      expect.arrayContaining([
        'heaviest lift', 'outlet', 'noise', 'brake peak against breaker', 'motor pulley',
        'belt tension', 'key pressure', 'plate, jolt', 'bearing housing', 'guard thickness',
        'mode separation'
      ])
    ); // prettier-ignore
    expect(
      upgrade.flipped.filter(({ direction }) => direction === 'in').map(({ label }) => label)
    ).toEqual(['tip speed']);
  });

  it.each([
    ['floor area', 0.94, 0.99], ['heaviest lift', 0.73, 1.33], ['outlet', 0.68, 1.68],
    ['vibration', 0.05, 0.5], ['budget', 0.56, 0.85], ['build time', 0.67, 0.8],
    ['brake peak against breaker', 0, 1.25], ['motor pulley', 0.81, 2.26],
    ['belt tension', 0.73, 2.06], ['key pressure', 0.39, 2.74], ['plate, dead weight', 0.08, 0.25],
    ['plate, jolt', 0.45, 1.33], ['bearing housing', 0.54, 1.53], ['guard thickness', 0.69, 1.36],
    ['retention pin', 0.17, 0.49], ['mode separation', 0.53, 1.01], ['Mach number', 0.47, 0.77]
  ] as const)('the rating of %s stayed put while its use went from %f to %f', (label, before, after) => {
    const row = upgrade.stayedPut.find((stayed) => stayed.label === label);
    expect([Number(row?.before.toFixed(2)), Number(row?.after.toFixed(2))]).toEqual([before, after]);
  }); // prettier-ignore

  it('a use that grew from 0 is new, not a factor', () => {
    const row = upgrade.stayedPut.find(({ label }) => label === 'brake peak against breaker');
    expect(row?.grew).toBeNull();
  });

  it('safety limits stand first in both lists', () => {
    for (const list of [upgrade.flipped, upgrade.stayedPut]) {
      const safety = list.map(({ tags }) => tags.safety);
      expect(safety).toEqual([...safety].sort((a, b) => Number(b) - Number(a)));
    }
  });
});

describe('what is listed', () => {
  const sheet = (load: string, rating: string): string =>
    [
      '```inputs',
      `F = ${load}`,
      `F_max = ${rating}`,
      '```',
      '```calc',
      'G = 2*F',
      '```',
      '```limits',
      'hook: F <= F_max',
      '```',
      ''
    ].join('\n');
  const between = (a: [string, string], b: [string, string]): ReturnType<typeof knockOn> =>
    knockOn(compute(sheet(...a)), 'design', compute(sheet(...b)), 'design');

  it('a ratio off 1 by less than half a percent is no move', () => {
    expect(between(['1000 N', '2 kN'], ['1004.9 N', '2 kN']).moved).toEqual([]);
    expect(between(['1000 N', '2 kN'], ['1005.1 N', '2 kN']).moved.map(({ name }) => name)).toEqual(
      ['G']
    );
  });

  it('a capacity that moved by more than 1e-12 did not stay put', () => {
    expect(between(['1 kN', '2 kN'], ['1.1 kN', '2 kN']).stayedPut).toHaveLength(1);
    expect(between(['1 kN', '2 kN'], ['1.1 kN', '2.00001 kN']).stayedPut).toEqual([]);
  });

  it('a load that shrank outgrows nothing', () => {
    expect(between(['1 kN', '2 kN'], ['0.9 kN', '2 kN']).stayedPut).toEqual([]);
  });

  it('the same value in another unit is no change', () => {
    const same = between(['1 kN', '2 kN'], ['1000 N', '2000 N']);
    expect([same.changedInputs, same.moved, same.flipped, same.stayedPut]).toEqual([
      [],
      [],
      [],
      []
    ]);
  });

  it('names and labels of one side only are told', () => {
    const other = compute('```calc\nH = 3 N\n```\n');
    const { unmatched } = knockOn(compute(sheet('1 N', '2 N')), 'design', other, 'design');
    expect(unmatched).toEqual({ onlyBefore: ['F', 'F_max', 'G', 'hook'], onlyAfter: ['H'] });
  });
});
