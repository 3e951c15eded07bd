// Words for the form of an expression: an operator that is missing, a bracket left open, a number
// written in a way the language does not read, and what belongs to other languages.

import type { Wording } from '../problem.ts';

// Missing operators -------------------------------------------------------------------------------

export const missingTimes = (left: string, right: string, product: string): Wording => ({
  message: `Between ${left} and ${right} an operator is missing.`,
  hint: `For ${left} times ${right} write ${product}.`,
  expected: 'an operator'
});

export const onePerUnit = (number: string, unit: string): Wording => ({
  message: `Between ${number} and 1 an operator is missing.`,
  hint: `For ${number} per ${unit} write ${number} ${unit}^-1.`,
  expected: `${number} ${unit}^-1`
});

export const missingAfterSlash = (
  left: string,
  right: string,
  both: [string, string]
): Wording => ({
  message: `After a slash, ${left} ${right} without an operator can be read in two ways.`,
  hint: `Write ${both[0]} or ${both[1]}.`,
  expected: 'an operator'
});

export const missingBeforeNot = (): Wording => ({
  message: 'Before "not" an operator is missing.',
  hint: 'Write and not (…), or not (…).',
  expected: 'and, or'
});

export const nameBesideUnit = (left: string, right: string): Wording => ({
  message: `Between ${left} and ${right} an operator is missing; a unit stands only right after a number.`,
  hint: `For a multiplication write ${left}*${right}; for the unit, write 1 ${right} and an operator before it.`,
  expected: 'an operator'
});

export const conversionByIn = (left: string): Wording => ({
  message: `"in" after ${left} is the inch, not a conversion.`,
  hint: 'The word for a conversion is "to".',
  expected: 'to'
});

export const remainderBySign = (example: string): Wording => ({
  message: '"%" is always one hundredth, never the remainder of a division.',
  hint: `For the remainder write ${example}.`
});

export const wordOperator = (word: string, example: string): Wording => ({
  message: `"${word}" is no operator here.`,
  hint: `Write ${example}.`
});

// Something where it does not belong --------------------------------------------------------------

export const emptyExpression = (): Wording => ({
  message: 'Here an expression is expected.',
  expected: 'an expression'
});

export const endsEarly = (last: string): Wording => ({
  message: `The expression ends after ${last}, where a value is expected.`,
  hint: `Write what comes after ${last}, or take it away.`,
  expected: 'a value'
});

export const valueExpected = (found: string, before: string | null): Wording => ({
  message: before
    ? `Between ${before} and ${found} a value is missing.`
    : `Before ${found} a value is missing.`,
  hint: `Write the value, or take ${found} away.`,
  found,
  expected: 'a value'
});

export const commaOutside = (): Wording => ({
  message: 'A comma stands only between the arguments of a function.',
  hint: 'For a decimal number write a point: 1.5.',
  found: ','
});

export const colonAlone = (): Wording => ({
  message: 'A colon belongs to a choice between two values, after its question mark.',
  hint: 'Write test ? value : other value.',
  found: ':'
});

export const choiceIncomplete = (): Wording => ({
  message: 'A choice needs a second value, after a colon.',
  hint: 'Write test ? value : other value.',
  expected: ':'
});

export const afterPower = (): Wording => ({
  message: 'Two raised powers stand one after the other.',
  hint: 'Write brackets or one power: x^6, (x^2)^3.'
});

export const powerAfterQuantity = (quantity: string, power: string): Wording => ({
  message: `A raised ${power} apart from ${quantity} can mean the unit or the whole quantity.`,
  hint: `Write (${quantity})^${power}, or the power right after the unit's name.`
});

export const strangeSign = (sign: string, write: string | null): Wording => ({
  message: `The sign ${sign} has no meaning in an expression.`,
  hint: write === null ? 'Take it away.' : `Write ${write}.`,
  found: sign
});

export const hiddenSign = (code: string): Wording => ({
  message: `An invisible character (${code}) stands here.`,
  hint: 'Take it away.',
  found: code
});

export const unitExpected = (): Wording => ({
  message: 'After "to" a unit is expected.',
  hint: 'Write the unit to show it in: to kW.',
  expected: 'a unit'
});

// Brackets ----------------------------------------------------------------------------------------

export const notClosed = (): Wording => ({
  message: 'This bracket is not closed.',
  hint: 'Write the closing bracket.',
  expected: ')'
});

export const notOpened = (): Wording => ({
  message: 'This closing bracket has no opening one.',
  hint: 'Take it away, or write the opening bracket.',
  found: ')'
});

export const emptyBrackets = (): Wording => ({
  message: 'There is nothing between these brackets.',
  expected: 'an expression'
});

export const notNeedsBrackets = (inner: string): Wording => ({
  message: '"not" takes only the name or bracket right after it.',
  hint: `Write not (${inner}).`
});

// Numbers -----------------------------------------------------------------------------------------

export const decimalComma = (found: string, write: string): Wording => ({
  message: `${found} is written with a comma.`,
  hint: `The decimal sign is a point: write ${write}.`,
  found,
  expected: write
});

export const commaOrGroup = (found: string, decimal: string, grouped: string): Wording => ({
  message: `${found} can be read as ${decimal} or as ${grouped}.`,
  hint: `Write ${decimal} or ${grouped}: a point before the decimals, nothing between groups of digits.`,
  found
});

export const digitGroups = (found: string, write: string): Wording => ({
  message: `${found} is written in groups of digits.`,
  hint: `Write ${write}.`,
  found,
  expected: write
});

export const mixedNumber = (found: string, write: string): Wording => ({
  message: `${found} is a whole number and a fraction side by side.`,
  hint: `Write ${write}.`,
  found,
  expected: write
});

export const mixedUnits = (found: string, write: string): Wording => ({
  message: `${found} is one quantity in two parts.`,
  hint: `Write the sum: ${write}.`,
  found,
  expected: write
});

export const otherBase = (found: string, write: string | null): Wording => ({
  message: `${found} is not written in decimal.`,
  hint: write === null ? 'Write the number in decimal.' : `Write ${write}.`,
  found
});

export const severalPoints = (found: string): Wording => ({
  message: `${found} has more than one decimal point.`,
  hint: 'Keep one point, before the decimals.',
  found
});

export const exponentNotWhole = (found: string): Wording => ({
  message: `The power of ten in ${found} is not a whole number.`,
  hint: 'Write a product: 2*10^1.5.',
  found
});

export const tooLarge = (found: string): Wording => ({
  message: `${found} is beyond the largest number that can be computed with (1.8e308).`,
  hint: 'Write the value in a larger unit.',
  found
});

export const unitAfterPower = (found: string, write: string): Wording => ({
  message: `In ${found} the number after ^ takes no unit.`,
  hint: `Write ${write}.`,
  found,
  expected: write
});

export const fractionSign = (found: string, write: string): Wording => ({
  message: `${found} is a fraction in one sign.`,
  hint: `Write ${write}.`,
  found,
  expected: write
});

// What the language does not have -----------------------------------------------------------------

export const noAssignment = (): Wording => ({
  message:
    'Inside an expression nothing is defined: "=" stands only after the name at the start of a line.',
  hint: 'To compare two values write ==.',
  found: '='
});

export const otherSpelling = (found: string, write: string): Wording => ({
  message: `"${found}" is written ${write} here.`,
  hint: `Write ${write}.`,
  found,
  expected: write
});

export const noText = (): Wording => ({
  message: 'Text in quotation marks stands only after "is", in a choice from a table.',
  hint: 'In an expression write a name or a number.'
});

export const feetAndInches = (found: string): Wording => ({
  message: `${found} after a number is not read as a unit.`,
  hint: 'Write ft for feet and in for inches, arcmin and arcsec for angles.',
  found
});

export const noMatrix = (): Wording => ({
  message: 'An expression has no lists or matrices in square brackets.',
  hint: 'Use round brackets; a list of values is a table block.'
});

export const noBraces = (): Wording => ({
  message: 'An expression has no braces.',
  hint: 'Use round brackets.'
});

export const noFactorial = (): Wording => ({
  message: '"!" is not in the language: there is no factorial.',
  hint: 'For "not equal" write !=, for the opposite of a condition not (…).',
  found: '!'
});

export const noPrime = (): Wording => ({
  message: 'A prime stands only after the name at the start of a line of a course.',
  hint: 'Use a name of letters, digits and _.',
  found: "'"
});

export const noBars = (): Wording => ({
  message: 'Bars do not give the absolute value.',
  hint: 'Write abs(…); for a choice of two conditions write or.',
  found: '|'
});

export const noProperty = (): Wording => ({
  message: 'A point stands only inside a number or between a block and one of its names.',
  hint: 'Write BLOCK.name without spaces.',
  found: '.'
});

export const oneStatement = (): Wording => ({
  message: 'One line holds one expression.',
  hint: 'Write the next one on a line of its own.',
  found: ';'
});

export const toleranceInside = (): Wording => ({
  message: 'A tolerance stands only after the value of an input, not inside an expression.',
  hint: 'Give each input its own tolerance.',
  found: '±'
});

export const rangeInside = (): Wording => ({
  message: 'Two points are no operator.',
  hint: 'A range stands only after within, outside and in sweeps.',
  found: '..'
});

export const percentAfterNumber = (): Wording => ({
  message: '"%" stands only right after a number.',
  hint: 'For the hundredth part write * 1 %, for the remainder of a division mod(a, b).',
  found: '%'
});

export const conversionInside = (hint: string): Wording => ({
  message: '"to" stands only at the end of a line or of its own pair of brackets.',
  hint,
  found: 'to'
});

// Limits of size ----------------------------------------------------------------------------------

export const lineTooLong = (length: number, most: number): Wording => ({
  message: `This line has ${length} characters, more than the ${most} that are read.`,
  hint: 'Split the formula with names for its parts.'
});

export const tooDeep = (most: number): Wording => ({
  message: `Here brackets stand more than ${most} deep.`,
  hint: 'Split the formula with names for its parts.'
});

export const tooManyNodes = (most: number): Wording => ({
  message: `This expression has more than ${most} names, numbers and operators.`,
  hint: 'Split the formula with names for its parts.'
});

export const callsTooDeep = (name: string, most: number): Wording => ({
  message: `${name} and the functions it calls stand for more than ${most} levels of terms in each other.`,
  hint: 'Give an intermediate result a line of its own.'
});
