// Values that every sheet has without defining them.

export interface PredefinedValue {
  readonly value: number;
  readonly unit: string;
  readonly source: string;
}

export const predefinedValues: ReadonlyMap<string, PredefinedValue> = new Map([
  [
    'g_n',
    {
      value: 9.80665,
      unit: 'm/s^2',
      source: 'standard acceleration of free fall, exact: 3rd CGPM (1901), BIPM SI Brochure'
    }
  ]
]);
