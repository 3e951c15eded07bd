// Units of angle, rate, length, area, volume, time, speed, acceleration and volume flow.

import type { UnitRow } from './table-row.ts';
import { siBrochure, sp811, trade, unit, yardPound } from './table-row.ts';

export const spaceUnits: readonly UnitRow[] = [
  // Plane angle
  unit('rad; radian radians', '1', 'rad', 'm/m, counted as a base of its own here', siBrochure, {
    prefixes: 'u m'
  }),
  unit('deg; degree degrees', '1/180 pi', 'rad', 'pi/180 rad', siBrochure),
  unit('arcmin', '1/10800 pi', 'rad', '1/60 deg', siBrochure),
  unit('arcsec', '1/648000 pi', 'rad', '1/3600 deg', siBrochure, { prefixes: 'm' }),
  unit('grad gon', '1/200 pi', 'rad', 'pi/200 rad', sp811),
  unit('rev turn cycle; revolution revs turns', '2 pi', 'rad', 'one turn, 2 pi rad', sp811, {
    marks: 'rev'
  }),
  // Rates
  unit('Hz; hertz', '1', 's^-1', '1/s, with no angle in it', siBrochure, {
    prefixes: 'm k M G T',
    marks: 'hz'
  }),
  // Length
  unit('m; metre meter', '1', 'm', 'base unit', siBrochure, { prefixes: 'p n u m c d k' }),
  unit('micron; microns', '1/1000000', 'm', '1 um', sp811),
  unit('angstrom', '1/10000000000', 'm', '0.1 nm', sp811),
  unit('in; inch inches', '127/5000', 'm', '2.54 cm exactly', yardPound),
  unit('ft; foot feet', '381/1250', 'm', '12 in', yardPound),
  unit('yd; yard yards', '1143/1250', 'm', '3 ft', yardPound),
  unit('mi; mile miles', '201168/125', 'm', '5280 ft', yardPound),
  unit('nmi', '1852', 'm', 'international nautical mile, 1852 m exactly', sp811),
  unit('mil; mils thou', '127/5000000', 'm', '0.001 in', sp811),
  unit('uin microinch', '127/5000000000', 'm', '1e-6 in', sp811),
  unit(
    'ft_us',
    '1200/3937',
    'm',
    'US survey foot, 1200/3937 m exactly (retired after 2022)',
    sp811
  ),
  unit('fathom', '7200/3937', 'm', '6 US survey feet', sp811),
  unit('chain_us', '79200/3937', 'm', '66 US survey feet', sp811),
  unit('pica_c', '127/30000', 'm', 'computer pica, 1/6 in', sp811),
  // Area
  unit('ha; hectare', '10000', 'm^2', '1 hm^2', siBrochure),
  unit('acre; acres', '316160658/78125', 'm^2', '4840 international square yards', yardPound),
  unit('acre_us', '62726400000/15499969', 'm^2', '43 560 US survey square feet', sp811),
  unit('circmil cmil', '16129/100000000000000 pi', 'm^2', 'a circle 1 mil across', sp811),
  unit('kcmil MCM', '16129/100000000000 pi', 'm^2', '1000 circular mils, for cables', trade),
  // Volume
  unit('L l; litre liter litres liters', '1/1000', 'm^3', '1 dm^3', siBrochure, {
    prefixes: 'u m c d h k'
  }),
  unit('cc ccm', '1/1000000', 'm^3', '1 cm^3', trade),
  unit('gal', '473176473/125000000000', 'm^3', 'US gallon, 231 in^3', sp811),
  unit('qt; quart', '473176473/500000000000', 'm^3', 'US liquid quart', sp811),
  unit('pt; pint', '473176473/1000000000000', 'm^3', 'US liquid pint', sp811),
  unit('cup', '473176473/2000000000000', 'm^3', 'US cup', sp811),
  unit('floz', '473176473/16000000000000', 'm^3', 'US fluid ounce', sp811),
  unit('tbsp', '473176473/32000000000000', 'm^3', 'US tablespoon', sp811),
  unit('tsp', '157725491/32000000000000', 'm^3', 'US teaspoon', sp811),
  unit('gal_imp', '454609/100000000', 'm^3', 'imperial gallon, 4.54609 L', sp811),
  unit('bbl', '9936705933/62500000000', 'm^3', 'petroleum barrel, 42 US gallons', sp811),
  unit('bushel', '220244188543/6250000000000', 'm^3', 'US bushel, 2150.42 in^3', sp811),
  unit('bdft', '18435447/7812500000', 'm^3', 'board foot, 144 in^3', trade),
  // Time
  unit('s; sec second seconds', '1', 's', 'base unit', siBrochure, { prefixes: 'p n u m' }),
  unit('min; minute minutes', '60', 's', '60 s', siBrochure),
  unit('h hr; hour hours', '3600', 's', '60 min', siBrochure),
  unit('d day; days', '86400', 's', '24 h', siBrochure),
  unit('week; weeks', '604800', 's', '7 d', siBrochure),
  unit('year; yr years', '31557600', 's', 'Julian year, 365.25 d', sp811),
  unit('year_365', '31536000', 's', '365 d, as SP 811 lists it', sp811),
  // Rotating speed
  unit('rpm', '1/30 pi', 'rad s^-1', 'rev/min', trade, { prefixes: 'k', marks: 'rev' }),
  unit('rps', '2 pi', 'rad s^-1', 'rev/s', trade, { marks: 'rev' }),
  // Speed
  unit('mph', '1397/3125', 'm s^-1', 'mi/h', sp811),
  unit('kph kmh', '5/18', 'm s^-1', 'km/h', trade),
  unit('kn knot; knots', '463/900', 'm s^-1', 'nmi/h', sp811),
  unit('fps', '381/1250', 'm s^-1', 'ft/s', trade),
  unit('fpm', '127/25000', 'm s^-1', 'ft/min', trade),
  unit('ips', '127/5000', 'm s^-1', 'in/s', trade),
  // Acceleration
  unit(
    'gn',
    '196133/20000',
    'm s^-2',
    'standard acceleration of free fall, 9.80665 m/s^2 (3rd CGPM, 1901)',
    siBrochure
  ),
  unit('Gal', '1/100', 'm s^-2', 'cm/s^2', sp811),
  // Volume flow
  unit('cfm', '18435447/39062500000', 'm^3 s^-1', 'ft^3/min', trade),
  unit('cfs', '55306341/1953125000', 'm^3 s^-1', 'ft^3/s', trade),
  unit('gpm', '157725491/2500000000000', 'm^3 s^-1', 'US gal/min', trade),
  unit('gph', '157725491/150000000000000', 'm^3 s^-1', 'US gal/h', trade),
  unit('lpm', '1/60000', 'm^3 s^-1', 'L/min', trade),
  // Distance per volume
  unit('mpg', '48000000000/112903', 'm^-2', 'mi per US gallon', trade)
];
