// Units of electricity, magnetism, temperature, amount, light, radiation, and plain ratios.

import type { UnitRow } from './table-row.ts';
import { siBrochure, sp811, trade, unit } from './table-row.ts';

export const otherUnits: readonly UnitRow[] = [
  // Electricity and magnetism
  unit('A; amp ampere amps', '1', 'A', 'base unit', siBrochure, { prefixes: 'p n u m k M' }),
  unit('C; coulomb', '1', 'A s', 'A s', siBrochure, { prefixes: 'p n u m k' }),
  unit('Ah', '3600', 'A s', 'A h', trade, { prefixes: 'm k' }),
  unit('V; volt volts', '1', 'kg m^2 s^-3 A^-1', 'W/A', siBrochure, { prefixes: 'n u m k M' }),
  unit('ohm; ohms', '1', 'kg m^2 s^-3 A^-2', 'V/A', siBrochure, { prefixes: 'u m k M G' }),
  unit('S mho; siemens', '1', 'kg^-1 m^-2 s^3 A^2', '1/ohm', siBrochure, { prefixes: 'n u m k M' }),
  unit('F; farad', '1', 'kg^-1 m^-2 s^4 A^2', 'C/V', siBrochure, { prefixes: 'p n u m' }),
  unit('H; henry', '1', 'kg m^2 s^-2 A^-2', 'Wb/A', siBrochure, { prefixes: 'n u m' }),
  unit('Wb; weber', '1', 'kg m^2 s^-2 A^-1', 'V s', siBrochure, { prefixes: 'n u m' }),
  unit('T; tesla', '1', 'kg s^-2 A^-1', 'Wb/m^2', siBrochure, { prefixes: 'p n u m' }),
  unit('gauss; G', '1/10000', 'kg s^-2 A^-1', '1e-4 T', sp811, { prefixes: 'm k' }),
  unit('oersted Oe', '250 pi^-1', 'm^-1 A', '1000/(4 pi) A/m', sp811),
  unit('gilbert', '5/2 pi^-1', 'A', '10/(4 pi) A', sp811),
  unit('maxwell Mx', '1/100000000', 'kg m^2 s^-2 A^-1', '1e-8 Wb', sp811),
  unit('abA', '10', 'A', '10 A', sp811),
  // Temperature; alone after a number degC and degF are readings, elsewhere intervals
  unit('K; kelvin', '1', 'K', 'base unit', siBrochure, { prefixes: 'm u', marks: 'kelvin' }),
  unit('degC; celsius', '1', 'K', 'interval of 1 K; a reading t is (t + 273.15) K', siBrochure, {
    marks: 'reading',
    zero: '273.15'
  }),
  unit(
    'degF; fahrenheit',
    '5/9',
    'K',
    'interval of 5/9 K; a reading t is (t + 459.67) times 5/9 K',
    sp811,
    { marks: 'reading', zero: '459.67' }
  ),
  unit('degR; rankine', '5/9', 'K', 'degree Rankine, 5/9 K', sp811, { marks: 'kelvin' }),
  // Amount, light, radiation
  unit('mol; mole', '1', 'mol', 'base unit', siBrochure, { prefixes: 'n u m k' }),
  unit('kat; katal', '1', 's^-1 mol', 'mol/s', siBrochure, { prefixes: 'n u m' }),
  unit('cd; candela', '1', 'cd', 'base unit', siBrochure, { prefixes: 'm k' }),
  unit('sr; steradian', '1', '1', 'm^2/m^2, a plain number here', siBrochure, { prefixes: 'm' }),
  unit('lm; lumen', '1', 'cd', 'cd sr', siBrochure, { prefixes: 'm k' }),
  unit('lx; lux', '1', 'm^-2 cd', 'lm/m^2', siBrochure, { prefixes: 'm k' }),
  unit('Bq; becquerel', '1', 's^-1', 'decays per second', siBrochure, { prefixes: 'm k M G T' }),
  unit('Gy; gray', '1', 'm^2 s^-2', 'J/kg', siBrochure, { prefixes: 'n u m k' }),
  unit('Sv; sievert', '1', 'm^2 s^-2', 'J/kg', siBrochure, { prefixes: 'n u m' }),
  // Ratios
  unit('%; percent', '1/100', '1', '1/100', siBrochure),
  unit('permille', '1/1000', '1', '1/1000', trade),
  unit('ppm', '1/1000000', '1', '1e-6', sp811),
  unit('ppb', '1/1000000000', '1', '1e-9', sp811),
  unit('strain', '1', '1', 'length change per length', trade, { prefixes: 'u m' }),
  unit('microstrain', '1/1000000', '1', '1e-6', trade)
];
