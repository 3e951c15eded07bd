// The bench's sheets: the belt drive of docs/numerics.md, and sheets of any number of definitions.

/** Name, value in SI units, value with unit as a worksheet writes it. */
export const benchInputs: readonly (readonly [string, number, string])[] = [
  ['R', 0.75, '0.75 m'],
  ['v', 80, '80 m/s'],
  ['rho', 1.2, '1.2 kg/m^3'],
  ['C_d', 1.1, '1.1'],
  ['d', 0.03, '0.03 m'],
  ['eta', 0.92, '0.92'],
  ['T_0', 0.8, '0.8 N m'],
  ['ratio', 1.6, '1.6'],
  ['D_p', 0.1, '0.1 m'],
  ['mu', 0.5, '0.5'],
  ['beta', 2.9, '2.9'],
  ['m_b', 0.11, '0.11 kg/m']
];

export const benchFormulas: readonly (readonly [string, string])[] = [
  ['omega', 'v/R'],
  ['P_drag', '2*rho*C_d*d*omega^3*R^4/8'],
  ['P_fric', 'T_0*omega'],
  ['P_shaft', '(P_drag + P_fric)/eta'],
  ['omega_m', 'omega*ratio'],
  ['v_belt', 'omega_m*D_p/2'],
  ['F_c', 'm_b*v_belt^2'],
  ['F_e', 'P_shaft/v_belt'],
  ['k', 'exp(mu*beta)'],
  ['T_1', 'F_c + F_e*k/(k - 1)']
];

const stages = 'stages:\n  one: One\n  two: Two\n  three: Three\n  four: Four\n';

/** A sheet of four stages with `definitions` calc lines in chains of 20, every tenth input revised. */
export function sheetOf(definitions: number): string {
  const chains = Math.ceil(definitions / 20);
  const inputs: string[] = [];
  const calc: string[] = [];
  for (let c = 0; c < chains; c++) {
    inputs.push(`a_${c} = ${1 + (c % 7)} m`);
    if (c % 10 === 0) inputs.push(`  at three: ${2 + (c % 5)} m`);
    const length = Math.min(20, definitions - 20 * c);
    for (let i = 0; i < length; i++) {
      const before = i === 0 ? `a_${c}` : `x_${c}_${i - 1}`;
      calc.push(`x_${c}_${i} = ${before}*1.01 + sqrt(${before}*a_${c})/3 to mm   # a length`);
    }
  }
  return [
    '---', 'format: 1', 'title: Bench', stages.trimEnd(), '---', '', '```inputs', ...inputs, '```',
    '', '```calc', ...calc, '```', ''
  ].join('\n'); // prettier-ignore
}
