// Problems of plane angle: turns, radians, and formulas that do not say which they count.

import { block, raised, type CatalogueEntry } from './entry.ts';

export const angleProblems: readonly CatalogueEntry[] = [
  raised({
    code: 'angle/counts-radians',
    meaning: 'A rotating speed is taken as a frequency without its angle, which would be off by 2π.',
    example: block('calc', 'n = 600 rpm', 'f = n to Hz'),
    cure: block('calc', 'n = 600 rpm', 'f = n / (1 rev) to Hz')
  }),
  raised({
    code: 'angle/needs-turn-or-radian',
    meaning: 'A plain rate or number is taken as a rotating speed or as turns, and does not say what it counts.',
    example: block('calc', 'f = 10 Hz', 'n = f to rpm'),
    cure: block('calc', 'f = 10 Hz', 'n = f * 1 rev to rpm')
  }),
  raised({
    code: 'angle/time-per-radian',
    meaning: 'One over a rotating speed is taken as a time; it is a time per radian.',
    example: block('calc', 'omega = 60 rad/s', 'T = 1 / omega to s'),
    cure: block('calc', 'omega = 60 rad/s', 'T = 1 rev / omega to s')
  }),
  raised({
    code: 'angle/twice-two-pi',
    meaning: 'The factor 2π is in the unit already and is multiplied in once more; as a warning where only the units hint at it.',
    severity: 'warning',
    example: block('calc', 'd = 0.2 m', 'n = 600 rpm', 'v = pi * d * n to m/s'),
    cure: block('calc', 'd = 0.2 m', 'f = 10 Hz', 'v = pi * d * f to m/s')
  }),
  raised({
    code: 'angle/root-in-hertz',
    meaning: 'A bare square root of a stiffness over a mass counts radians per second, and is shown in Hz.',
    severity: 'warning',
    example: block('calc', 'k = 4000 N/m', 'm_arm = 2 kg', 'f = sqrt(k / m_arm) to Hz'),
    cure: block('calc', 'k = 4000 N/m', 'm_arm = 2 kg', 'f = sqrt(k / m_arm) / (2*pi) to Hz')
  }),
  raised({
    code: 'angle/rev-as-radians',
    meaning: 'Revolutions are taken as a plain number, which could mean turns or radians; as a note where 1 rev was counted as 2π rad.',
    example: block('calc', 'travel = 12 rev', 'count_of_turns = travel to 1'),
    cure: block('calc', 'travel = 12 rev', 'count_of_turns = travel / (1 rev) to 1')
  }),
  raised({
    code: 'angle/large-number',
    meaning: 'A sine, cosine or tangent takes a written number above 2π as radians; degrees may be meant.',
    severity: 'note',
    example: block('calc', 'share = sin(30)'),
    cure: block('calc', 'share = sin(30 deg)')
  })
]; // prettier-ignore
