// Names that the trades use for several units, for gauge readings or for levels. They are refused
// with the offers that settle them, because to guess would be wrong in silence for somebody.
// The meanings listed are common practice; no source is claimed.

export interface Refusal {
  /** One sentence, without the full stop: what is unclear about the name. */
  readonly reason: string;
  /** What can be done. */
  readonly hint: string;
  /** What can stand in its place, if one offer is the plain one. */
  readonly replacement: string | null;
}

const gauge = (name: string, unit: string): readonly [string, Refusal] => [
  name,
  {
    reason: `"${name}" is a pressure above that of the air, and pressures here are absolute or differences`,
    hint: `Write ${unit}, and add an air pressure of your own, such as p_atm, where the absolute pressure counts.`,
    replacement: unit
  }
];

const absolute = (name: string, unit: string): readonly [string, Refusal] => [
  name,
  {
    reason: `"${name}" is not a unit of its own`,
    hint: `Write ${unit}; say in the name of the value that it is absolute.`,
    replacement: unit
  }
];

const level = (name: string): readonly [string, Refusal] => [
  name,
  {
    reason: `"${name}" is a level, not a unit that can be added and multiplied`,
    hint: 'Write the level as a plain number, and tag its limit with [level].',
    replacement: null
  }
];

const scale = (name: string, what: string): readonly [string, Refusal] => [
  name,
  {
    reason: `"${name}" counts on a scale of ${what}, it is not a unit`,
    hint: 'Write the measure itself, or look it up from a table in the sheet.',
    replacement: null
  }
];

const massTorque = (name: string, unit: string): readonly [string, Refusal] => [
  name,
  {
    reason: `"${name}" leaves open whether the pound or ounce is a force or a mass`,
    hint: `For a torque or an energy write ${unit}.`,
    replacement: unit
  }
];

const standardFlow = (name: string, unit: string): readonly [string, Refusal] => [
  name,
  {
    reason: `"${name}" is a volume at a standard state, and there are several standard states`,
    hint: `Write ${unit} at the state you mean, or a mass flow in kg/s.`,
    replacement: null
  }
];

const choice = (name: string, reason: string, hint: string): readonly [string, Refusal] => [
  name,
  { reason: `"${name}" ${reason}`, hint, replacement: null }
];

const tons = 'Write ton_short (2000 lb), t (1000 kg) or ton_long (2240 lb); TR for refrigeration.';
const tonForces = 'Write tonf_short (2000 lbf), tonf_long (2240 lbf) or 1000 kgf.';
const horsepowers =
  'Write hp (550 ft lbf/s, 745.7 W), PS (metric, 735.5 W), hp_electric or hp_boiler.';
const calories =
  'Write cal_th (4.184 J) or cal_IT (4.1868 J), with k in front for the kilocalorie.';

/** Refused names, by name. */
export const refusedUnits: ReadonlyMap<string, Refusal> = new Map([
  choice('ton', 'can be a mass of 2000 lb, 1000 kg or 2240 lb, or a cooling power', tons),
  choice('tons', 'can be a mass of 2000 lb, 1000 kg or 2240 lb, or a cooling power', tons),
  choice('tonf', 'can be 2000 lbf, 2240 lbf or 1000 kgf', tonForces),
  choice('horsepower', 'can be one of several horsepowers', horsepowers),
  choice('HP', 'can be one of several horsepowers', horsepowers),
  choice('cal', 'can be the thermochemical or the International Table calorie', calories),
  choice('kcal', 'can be the thermochemical or the International Table calorie', calories),
  choice('Cal', 'can be the thermochemical or the International Table kilocalorie', calories),
  choice('kt', 'can be a knot or a thousand tonnes', 'Write kn (knot), or 1000 t.'),
  choice(
    'cycles',
    'can count turns or mere repeats',
    'Write rev for turns; a count of repeats is a plain number.'
  ),
  choice('cps', 'can be cycles per second or counts per second', 'Write Hz, rev/s or 1/s.'),
  choice('month', 'has no fixed length', 'Write it in days, such as 30 day.'),
  choice('months', 'has no fixed length', 'Write it in days, such as 30 day.'),
  choice(
    'quarter',
    'is not a unit here',
    'Write the length of time in days, or the fraction itself.'
  ),
  gauge('psig', 'psi'),
  gauge('barg', 'bar'),
  gauge('kPag', 'kPa'),
  gauge('MPag', 'MPa'),
  gauge('mbarg', 'mbar'),
  absolute('psia', 'psi'),
  absolute('psid', 'psi'),
  absolute('bara', 'bar'),
  absolute('kPaa', 'kPa'),
  level('dB'),
  level('dBA'),
  level('dBC'),
  level('dBm'),
  level('dBu'),
  level('dBV'),
  level('pH'),
  scale('AWG', 'wire sizes'),
  scale('SWG', 'wire sizes'),
  scale('gauge', 'wire or sheet sizes'),
  scale('HRC', 'hardness'),
  scale('HRB', 'hardness'),
  massTorque('ftlb', 'ft lbf'),
  massTorque('ftlbs', 'ft lbf'),
  massTorque('lbft', 'lbf ft'),
  massTorque('inlb', 'in lbf'),
  massTorque('inlbs', 'in lbf'),
  massTorque('lbin', 'lbf in'),
  massTorque('ozin', 'ozf in'),
  massTorque('inoz', 'in ozf'),
  standardFlow('scfm', 'cfm'),
  standardFlow('SCFM', 'cfm'),
  standardFlow('slpm', 'L/min'),
  standardFlow('Nm3', 'm^3')
]);
