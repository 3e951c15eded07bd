// Units of mass, force, pressure, torque, energy, power, stiffness, density and viscosity.

import type { UnitRow } from './table-row.ts';
import { siBrochure, sp811, trade, unit, yardPound } from './table-row.ts';

export const mechanicalUnits: readonly UnitRow[] = [
  // Mass
  unit('g; gram grams', '1/1000', 'kg', '1/1000 of the base unit kg', siBrochure, {
    prefixes: 'n u m k M'
  }),
  unit('t tonne; tonnes', '1000', 'kg', '1000 kg', siBrochure),
  unit('carat', '1/5000', 'kg', '200 mg', sp811),
  unit(
    'lb lbm; pound pounds',
    '45359237/100000000',
    'kg',
    'avoirdupois pound, 0.45359237 kg exactly',
    yardPound
  ),
  unit('oz', '45359237/1600000000', 'kg', 'avoirdupois ounce, 1/16 lb; a mass', yardPound),
  unit('grain gr; grains', '6479891/100000000000', 'kg', '1/7000 lb', yardPound),
  unit('oz_troy ozt', '19439673/625000000', 'kg', '480 grains', sp811),
  unit('stone', '317514659/50000000', 'kg', '14 lb', sp811),
  unit('ton_short', '45359237/50000', 'kg', '2000 lb', sp811),
  unit('ton_long', '317514659/312500', 'kg', '2240 lb', sp811),
  // Force
  unit('N; newton newtons', '1', 'kg m s^-2', 'kg m/s^2', siBrochure, {
    prefixes: 'n u m da k M G'
  }),
  unit('dyn; dyne', '1/100000', 'kg m s^-2', '1e-5 N', sp811),
  unit('kgf kp', '196133/20000', 'kg m s^-2', 'kg times 9.80665 m/s^2', sp811),
  unit('gf', '196133/20000000', 'kg m s^-2', 'g times 9.80665 m/s^2', sp811),
  unit('lbf', '8896443230521/2000000000000', 'kg m s^-2', 'lb times 9.80665 m/s^2', sp811),
  unit('ozf', '8896443230521/32000000000000', 'kg m s^-2', '1/16 lbf; a force', sp811),
  unit('kip klbf', '8896443230521/2000000000', 'kg m s^-2', '1000 lbf', sp811),
  unit('tonf_short', '8896443230521/1000000000', 'kg m s^-2', '2000 lbf', sp811),
  unit('tonf_long', '62275102613647/6250000000', 'kg m s^-2', '2240 lbf', sp811),
  unit('poundal pdl', '17281869297/125000000000', 'kg m s^-2', 'lb ft/s^2', sp811),
  unit('slug; slugs', '8896443230521/609600000000', 'kg', 'lbf s^2/ft', sp811),
  unit('slinch', '8896443230521/50800000000', 'kg', 'lbf s^2/in, twelve slugs', trade),
  // Pressure and stress
  unit('Pa; pascal', '1', 'kg m^-1 s^-2', 'N/m^2', siBrochure, { prefixes: 'u m h k M G T' }),
  unit('bar', '100000', 'kg m^-1 s^-2', '100 kPa', sp811, { prefixes: 'm k' }),
  unit('atm', '101325', 'kg m^-1 s^-2', '101 325 Pa (10th CGPM, 1954)', sp811),
  unit('at_technical', '196133/2', 'kg m^-1 s^-2', 'kgf/cm^2', sp811),
  unit('psi', '8896443230521/1290320000', 'kg m^-1 s^-2', 'lbf/in^2', sp811),
  unit('ksi kpsi', '8896443230521/1290320', 'kg m^-1 s^-2', '1000 psi', sp811),
  unit('Mpsi', '222411080763025/32258', 'kg m^-1 s^-2', '1e6 psi', trade),
  unit('psf', '8896443230521/185806080000', 'kg m^-1 s^-2', 'lbf/ft^2', sp811),
  unit('ksf', '8896443230521/185806080', 'kg m^-1 s^-2', '1000 psf', trade),
  unit('torr Torr', '20265/152', 'kg m^-1 s^-2', '1/760 atm', sp811, { prefixes: 'm' }),
  unit(
    'mmHg',
    '26664477483/200000000',
    'kg m^-1 s^-2',
    'conventional mercury, 13 595.1 kg/m^3',
    sp811
  ),
  unit(
    'inHg',
    '3386388640341/1000000000',
    'kg m^-1 s^-2',
    'conventional mercury, 13 595.1 kg/m^3',
    sp811
  ),
  unit(
    'ftHg',
    '10159165921023/250000000',
    'kg m^-1 s^-2',
    'conventional mercury, 13 595.1 kg/m^3',
    sp811
  ),
  unit('mmH2O', '196133/20000', 'kg m^-1 s^-2', 'conventional water, 1000 kg/m^3', sp811),
  unit('cmH2O', '196133/2000', 'kg m^-1 s^-2', 'conventional water, 1000 kg/m^3', sp811),
  unit('inH2O', '24908891/100000', 'kg m^-1 s^-2', 'conventional water, 1000 kg/m^3', sp811),
  unit('ftH2O', '74726673/25000', 'kg m^-1 s^-2', 'conventional water, 1000 kg/m^3', sp811),
  // Torque, as one word; N m, lbf ft and the like do as well
  unit('Nm', '1', 'kg m^2 s^-2', 'N m', trade, { prefixes: 'm k M' }),
  unit('ftlbf lbfft', '3389544870828501/2500000000000000', 'kg m^2 s^-2', 'ft lbf', trade),
  unit('inlbf lbfin', '1129848290276167/10000000000000000', 'kg m^2 s^-2', 'in lbf', trade),
  unit('ozfin inozf', '1129848290276167/160000000000000000', 'kg m^2 s^-2', 'in ozf', trade),
  // Energy
  unit('J; joule joules', '1', 'kg m^2 s^-2', 'N m', siBrochure, { prefixes: 'n u m k M G T' }),
  unit('Wh', '3600', 'kg m^2 s^-2', 'W h', siBrochure, { prefixes: 'm k M G T' }),
  unit(
    'eV',
    '801088317/5000000000000000000000000000',
    'kg m^2 s^-2',
    'the elementary charge, exact since 2019, times 1 V',
    siBrochure,
    { prefixes: 'm k M G' }
  ),
  unit('cal_th', '523/125', 'kg m^2 s^-2', 'thermochemical calorie, 4.184 J', sp811, {
    prefixes: 'k'
  }),
  unit('cal_IT', '10467/2500', 'kg m^2 s^-2', 'International Table calorie, 4.1868 J', sp811, {
    prefixes: 'k'
  }),
  unit(
    'BTU Btu BTU_IT Btu_IT',
    '52752792631/50000000',
    'kg m^2 s^-2',
    'International Table Btu, 1055.05585262 J',
    sp811
  ),
  unit(
    'BTU_th Btu_th',
    '23722880951/22500000',
    'kg m^2 s^-2',
    'thermochemical Btu, from cal_th',
    sp811
  ),
  unit('erg', '1/10000000', 'kg m^2 s^-2', '1e-7 J', sp811),
  unit('tTNT', '4184000000', 'kg m^2 s^-2', 'ton of TNT, 4.184 GJ', sp811),
  // Power
  unit('W; watt watts', '1', 'kg m^2 s^-3', 'J/s', siBrochure, { prefixes: 'p n u m k M G T' }),
  unit('VA', '1', 'kg m^2 s^-3', 'apparent power, V A', siBrochure, { prefixes: 'm k M G' }),
  unit('var VAR', '1', 'kg m^2 s^-3', 'reactive power, V A', siBrochure, { prefixes: 'k M G' }),
  unit(
    'hp',
    '37284993579113511/50000000000000',
    'kg m^2 s^-3',
    'mechanical horsepower, 550 ft lbf/s',
    sp811
  ),
  unit('PS hp_metric', '588399/800', 'kg m^2 s^-3', 'metric horsepower, 75 kgf m/s', sp811),
  unit('hp_electric', '746', 'kg m^2 s^-3', 'electric horsepower, 746 W', sp811),
  unit('hp_boiler', '19619/2', 'kg m^2 s^-3', 'boiler horsepower, 9809.5 W', sp811),
  unit(
    'TR ton_refrigeration',
    '52752792631/15000000',
    'kg m^2 s^-3',
    'ton of refrigeration, 12 000 Btu/h',
    sp811
  ),
  // Stiffness and line load
  unit('plf', '8896443230521/609600000000', 'kg s^-2', 'lbf/ft', trade),
  unit('klf', '8896443230521/609600000', 'kg s^-2', 'kip/ft', trade),
  unit('pli', '8896443230521/50800000000', 'kg s^-2', 'lbf/in', trade),
  // Density and mass per length
  unit('pcf', '28349523125/1769802912', 'kg m^-3', 'lb/ft^3; a mass', trade),
  unit('tex', '1/1000000', 'kg m^-1', 'g/km', sp811, { prefixes: 'm d k' }),
  // Viscosity
  unit('P; poise', '1/10', 'kg m^-1 s^-1', '0.1 Pa s', sp811, { prefixes: 'm c' }),
  unit('reyn', '8896443230521/1290320000', 'kg m^-1 s^-1', 'lbf s/in^2', trade, { prefixes: 'u' }),
  unit('St; stokes', '1/10000', 'm^2 s^-1', 'cm^2/s', sp811, { prefixes: 'c' })
];
