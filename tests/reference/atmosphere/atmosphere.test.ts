import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reference, relativeDifference, run, type Sheet } from '../worksheet.ts';

interface Row {
  readonly geometric_altitude_m: number;
  readonly geopotential_altitude_m: number;
  readonly temperature_K: number;
  readonly pressure_Pa: number;
  readonly density_kg_m3: number;
  readonly speed_of_sound_m_s: number;
  readonly dynamic_viscosity_Pa_s: number;
  readonly kinematic_viscosity_m2_s: number;
  readonly thermal_conductivity_W_mK: number;
  readonly gravity_m_s2: number;
}

interface HumidAir {
  readonly temperature_degC: number;
  readonly pressure_Pa: number;
  readonly relative_humidity: number;
  readonly co2_mole_fraction: number;
  readonly density_kg_m3: number;
  readonly saturation_pressure_Pa: number;
  readonly enhancement_factor: number;
  readonly water_mole_fraction: number;
  readonly compressibility: number;
}

interface Atmosphere {
  readonly computed: readonly Row[];
  readonly printed: readonly Partial<Row>[];
  readonly printed_geopotential: readonly Partial<Row>[];
  readonly altitude_from_pressure: readonly {
    pressure_Pa: number;
    geopotential_altitude_m: number;
    geometric_altitude_m: number;
  }[];
  readonly humid_air: readonly HumidAir[];
  readonly humid_air_printed: readonly (Omit<HumidAir, 'density_kg_m3'> & {
    printed: { density_kg_m3: number };
  })[];
}

const figures = reference<Atmosphere>(import.meta.url, 'atmosphere.json');

/** A sheet of this folder with other values for some of its inputs. */
function withInputs(path: string, inputs: Readonly<Record<string, string>>): Sheet {
  let text = readFileSync(new URL(path, import.meta.url), 'utf8');
  for (const [name, value] of Object.entries(inputs)) {
    const line = new RegExp(`^${name} = [^#\\n]*?(?=  +#| within)`, 'm');
    if (!line.test(text)) throw new RangeError(`${path} has no input ${name}`);
    text = text.replace(line, `${name} = ${value}`);
  }
  const sheet = run(text);
  const faults = sheet.results.problems.filter(({ severity }) => severity === 'error');
  expect(faults.map(({ at, message }) => `${at.line}: ${message}`)).toEqual([]);
  return sheet;
}

/** Name in the worksheet of each column of the file. */
const columns = {
  geopotential_altitude_m: 'H',
  temperature_K: 'T',
  pressure_Pa: 'p',
  density_kg_m3: 'rho',
  speed_of_sound_m_s: 'a',
  dynamic_viscosity_Pa_s: 'mu',
  kinematic_viscosity_m2_s: 'nu',
  thermal_conductivity_W_mK: 'k_t',
  gravity_m_s2: 'g'
} as const;

/**
 * A printed figure has five digits, a temperature three decimals; it is right when the computed one
 * rounds to it, a pressure when it is cut to it.
 */
function agreesWithPrint(column: string, computed: number, printed: number): boolean {
  const unit =
    column === 'temperature_K' ? 1e-3 : 10 ** (Math.floor(Math.log10(Math.abs(printed))) - 4);
  // What the decimal figures lose in binary.
  const slack = 1e-9 * unit;
  if (column !== 'pressure_Pa') return Math.abs(computed - printed) <= unit / 2 + slack;
  return computed > printed - slack && computed < printed + unit + slack;
}

describe('U.S. Standard Atmosphere, 1976, by a worksheet', () => {
  it('has 35 computed rows', () => expect(figures.computed.length).toBe(35));

  // The file has twelve figures.
  it.each(figures.computed)('$geometric_altitude_m m to 1e-11', (row) => {
    const sheet = withInputs('atmosphere.md', { Z: `${row.geometric_altitude_m} m` });
    for (const [column, name] of Object.entries(columns)) {
      const expected = row[column as keyof typeof columns];
      expect(relativeDifference(sheet.si(name), expected), name).toBeLessThan(1e-11);
    }
  });

  it.each(figures.printed)('$geometric_altitude_m m as printed', (row) => {
    const sheet = withInputs('atmosphere.md', { Z: `${row.geometric_altitude_m} m` });
    for (const [column, name] of Object.entries(columns)) {
      const printed = row[column as keyof typeof columns];
      if (printed === undefined) continue;
      expect(agreesWithPrint(column, sheet.si(name), printed), `${name} ${sheet.si(name)}`).toBe(true); // prettier-ignore
    }
  });

  it.each(figures.printed_geopotential)(
    '$geopotential_altitude_m m geopotential as printed',
    (row) => {
      const H = row.geopotential_altitude_m ?? NaN;
      const r_0 = 6356766;
      const sheet = withInputs('atmosphere.md', { Z: `${(r_0 * H) / (r_0 - H)} m` });
      for (const [column, name] of Object.entries(columns)) {
        const printed = row[column as keyof typeof columns];
        if (printed === undefined || name === 'H') continue;
        expect(agreesWithPrint(column, sheet.si(name), printed), `${name} ${sheet.si(name)}`).toBe(true); // prettier-ignore
      }
    }
  );

  it.each(figures.altitude_from_pressure)('the altitude of $pressure_Pa Pa by solve', (row) => {
    const sheet = withInputs('atmosphere.md', { p_q: `${row.pressure_Pa} Pa` });
    expect(relativeDifference(sheet.si('Z_q'), row.geometric_altitude_m)).toBeLessThan(1e-9);
    expect(relativeDifference(sheet.si('H_q'), row.geopotential_altitude_m)).toBeLessThan(1e-9);
  });
});

describe('moist air after CIPM-2007, by a worksheet', () => {
  const inputsOf = (air: Omit<HumidAir, 'density_kg_m3'>) => ({
    t_a: `${air.temperature_degC} degC`,
    p: `${air.pressure_Pa} Pa`,
    h: String(air.relative_humidity),
    x_CO2: String(air.co2_mole_fraction)
  });

  it.each(figures.humid_air)(
    '$temperature_degC degC, $pressure_Pa Pa, $relative_humidity to 1e-11',
    (air) => {
      const sheet = withInputs('humid-air.md', inputsOf(air));
      const expected = {
        p_sv: air.saturation_pressure_Pa,
        f: air.enhancement_factor,
        x_v: air.water_mole_fraction,
        Z: air.compressibility,
        rho: air.density_kg_m3
      };
      for (const [name, value] of Object.entries(expected)) {
        expect(relativeDifference(sheet.si(name), value), name).toBeLessThan(1e-11);
      }
    }
  );

  it.each(figures.humid_air_printed)('$temperature_degC degC as printed in IEC 61094-2', (air) => {
    const sheet = withInputs('humid-air.md', inputsOf(air));
    expect(Math.abs(sheet.si('rho') - air.printed.density_kg_m3)).toBeLessThanOrEqual(0.5e-7);
  });
});
