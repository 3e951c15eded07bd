// Words for plane angle: where a formula counts radians, turns, or does not say which.

import type { Wording } from '../problem.ts';

export const countsRadians = (what: string): Wording => ({
  message: `${what} counts radians, not turns: without its angle it would be off by a factor 2π.`,
  hint: 'Divide by 1 rev for turns per second, or by 1 rad.'
});

export const alreadyCountsRadians = (what: string): Wording => ({
  message: `${what} already counts radians, and is multiplied by 2π once more.`,
  hint: 'Drop 2*pi.'
});

export const countsTurns = (what: string): Wording => ({
  message: `${what} counts turns per second, not radians.`,
  hint: 'Multiply by 1 rev.'
});

export const turnOrRadian = (what: string, unit: string): Wording => ({
  message: `${what} is a plain rate: it does not say whether it counts radians or turns, so it cannot be taken as ${unit}.`,
  hint: 'Multiply by 1 rad if it counts radians, by 1 rev if it counts turns.'
});

export const numberAsTurns = (what: string): Wording => ({
  message: `${what} is a plain number: it does not say that it counts turns.`,
  hint: 'Multiply by 1 rev for turns, or by 1 rad for radians.'
});

export const timePerRadian = (what: string): Wording => ({
  message: `${what} is a time per radian, not a time.`,
  hint: 'Write 1 rev/omega for the time of one turn, 1 rad/omega for a time constant.'
});

export const turnsOrRadians = (what: string): Wording => ({
  message: `${what} comes from revolutions: as a plain number it could mean turns or radians.`,
  hint: 'Divide by 1 rev for turns, or by 1 rad for radians.'
});

export const tipSpeedRatio = (what: string): Wording => ({
  message: `${what} is a rotating speed over a speed: 1 rev counted as 2π rad.`,
  hint: null
});

export const twiceTwoPi = (what: string): Wording => ({
  message: `${what} counts the factor 2π twice: its speed in revolutions already carries it.`,
  hint: 'Drop pi, or write the speed as a frequency in Hz or 1/s.'
});

export const rootInHertz = (what: string): Wording => ({
  message: `${what} is a square root that counts radians per second, not turns.`,
  hint: 'For Hz divide by 2*pi.'
});

export const revCountedAsRadians = (what: string): Wording => ({
  message: `${what}: 1 rev counted as 2π rad.`,
  hint: null
});

export const largeNumberAsAngle = (call: string, value: string): Wording => ({
  message: `${call} takes ${value} as radians.`,
  hint: `Write ${value} deg if degrees are meant.`
});
