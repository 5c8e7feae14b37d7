/** An argument of a standard function, for the hint. */
export interface StandardArgument {
  readonly label: string
  readonly accepts: string
  readonly optional: boolean
}

/** A standard function of spreadsheets (OpenFormula), as far as the hint needs it. */
export interface StandardSignature {
  readonly name: string
  readonly gives: string
  readonly arguments: readonly StandardArgument[]
  /** The last argument may be given again and again. */
  readonly repeats: boolean
}

type Written = readonly [label: string, accepts: string]

/** A label in square brackets may be left out; "…" says that the last argument repeats. */
function standard(name: string, gives: string, ...written: readonly Written[]): StandardSignature {
  return {
    name, gives,
    repeats: written.at(-1)?.[0].includes('…') ?? false,
    arguments: written.map(([label, accepts]) => ({ label: label.replace(/[[\]…]/g, ''), accepts, optional: label.startsWith('[') })),
  }
}

const NUMBER = 'a number'
const ANGLE = 'an angle in radians'
const CELLS = 'numbers, or a range of cells'
const RANGE = 'a range of cells'
const CONDITION = 'TRUE or FALSE, or a comparison such as C5>10'
const CRITERION = 'a value, or a comparison in quotes such as ">=10"'
const PLACES: Written = ['digits', 'decimal places, a whole number; negative ones are left of the point']
const MORE_CELLS: Written = ['[more…]', CELLS]

/** Those of the standard functions that an engineer uses; the calculation knows more. */
export const standardSignatures: readonly StandardSignature[] = [
  standard('SUM', 'the sum', ['values', CELLS], MORE_CELLS),
  standard('SUMPRODUCT', 'the sum of the products, cell by cell', ['values', RANGE], ['[more…]', 'a range of the same size']),
  standard('SUMIF', 'the sum of the cells that meet a condition', ['tested', RANGE], ['condition', CRITERION], ['[summed]', 'a range of the same size; the tested one where omitted']),
  standard('SUMIFS', 'the sum of the cells that meet all conditions', ['summed', RANGE], ['tested', 'a range of the same size'], ['condition…', `${CRITERION}; then further pairs of range and condition`]),
  standard('SUMSQ', 'the sum of the squares', ['values', CELLS], MORE_CELLS),
  standard('AVERAGE', 'the mean', ['values', CELLS], MORE_CELLS),
  standard('AVERAGEIF', 'the mean of the cells that meet a condition', ['tested', RANGE], ['condition', CRITERION], ['[averaged]', 'a range of the same size; the tested one where omitted']),
  standard('MEDIAN', 'the value in the middle', ['values', CELLS], MORE_CELLS),
  standard('MIN', 'the smallest', ['values', CELLS], MORE_CELLS),
  standard('MAX', 'the largest', ['values', CELLS], MORE_CELLS),
  standard('COUNT', 'how many numbers there are', ['values', CELLS], MORE_CELLS),
  standard('COUNTA', 'how many cells are not empty', ['values', RANGE], MORE_CELLS),
  standard('COUNTIF', 'how many cells meet a condition', ['tested', RANGE], ['condition', CRITERION]),
  standard('COUNTIFS', 'how many rows meet all conditions', ['tested', RANGE], ['condition…', `${CRITERION}; then further pairs of range and condition`]),
  standard('ABS', 'the size of a number without its sign', ['number', NUMBER]),
  standard('SIGN', 'the sign: 1, 0 or -1', ['number', NUMBER]),
  standard('SQRT', 'the square root', ['number', 'a number of at least 0']),
  standard('POWER', 'a number raised to a power', ['base', NUMBER], ['exponent', NUMBER]),
  standard('EXP', 'e raised to a power', ['exponent', NUMBER]),
  standard('LN', 'the natural logarithm', ['number', 'a number above 0']),
  standard('LOG', 'the logarithm', ['number', 'a number above 0'], ['[base]', 'a number above 0; 10 where omitted']),
  standard('LOG10', 'the logarithm to the base 10', ['number', 'a number above 0']),
  standard('PI', 'the number π'),
  standard('SIN', 'the sine', ['angle', ANGLE]),
  standard('COS', 'the cosine', ['angle', ANGLE]),
  standard('TAN', 'the tangent', ['angle', ANGLE]),
  standard('ASIN', 'the angle in radians with that sine', ['number', 'a number from -1 to 1']),
  standard('ACOS', 'the angle in radians with that cosine', ['number', 'a number from -1 to 1']),
  standard('ATAN', 'the angle in radians with that tangent', ['number', NUMBER]),
  standard('RADIANS', 'an angle in radians', ['angle', 'an angle in degrees']),
  standard('DEGREES', 'an angle in degrees', ['angle', ANGLE]),
  standard('ROUND', 'the number rounded to so many digits', ['number', NUMBER], PLACES),
  standard('ROUNDUP', 'the number rounded away from zero', ['number', NUMBER], PLACES),
  standard('ROUNDDOWN', 'the number rounded towards zero', ['number', NUMBER], PLACES),
  standard('CEILING', 'the next multiple upwards', ['number', NUMBER], ['step', 'the size of a step']),
  standard('FLOOR', 'the next multiple downwards', ['number', NUMBER], ['step', 'the size of a step']),
  standard('INT', 'the whole number below', ['number', NUMBER]),
  standard('TRUNC', 'the number cut off after so many digits', ['number', NUMBER], ['[digits]', 'decimal places; 0 where omitted']),
  standard('MOD', 'the rest of a division', ['dividend', NUMBER], ['divisor', 'a number other than 0']),
  standard('QUOTIENT', 'the whole part of a division', ['dividend', NUMBER], ['divisor', 'a number other than 0']),
  standard('IF', 'one of two values', ['condition', CONDITION], ['then', 'the value where it is TRUE'], ['[else]', 'the value where it is FALSE; FALSE where omitted']),
  standard('IFS', 'the value of the first condition that is met', ['condition', CONDITION], ['value…', 'its value; then further pairs of condition and value']),
  standard('IFERROR', 'another value in place of an error', ['value', 'a value that may be an error'], ['instead', 'the value where it is one']),
  standard('AND', 'TRUE where all conditions are met', ['condition', CONDITION], ['[more…]', CONDITION]),
  standard('OR', 'TRUE where a condition is met', ['condition', CONDITION], ['[more…]', CONDITION]),
  standard('NOT', 'the opposite of a condition', ['condition', CONDITION]),
  standard('ISNUMBER', 'TRUE for a number', ['value', 'any value']),
  standard('ISBLANK', 'TRUE for an empty cell', ['value', 'a cell']),
  standard('ISERROR', 'TRUE for an error', ['value', 'any value']),
  standard('INDEX', 'the cell of a range at a row and a column', ['range', RANGE], ['row', 'which row of the range, from 1'], ['[column]', 'which column of the range, from 1']),
  standard('MATCH', 'at which place of a row or column a value stands', ['value', 'what to look for'], ['range', 'a single row or column'], ['[kind]', '0 for just this value, 1 for the largest not above it in a rising list (where omitted), -1 for the smallest not below it in a falling list']),
  standard('VLOOKUP', 'a value from a table, by its first column', ['value', 'what to look for in the first column'], ['table', RANGE], ['column', 'which column of the table to take, from 1'], ['[rising]', 'FALSE for just this value, TRUE for the nearest below in a rising list (where omitted)']),
  standard('HLOOKUP', 'a value from a table, by its first row', ['value', 'what to look for in the first row'], ['table', RANGE], ['row', 'which row of the table to take, from 1'], ['[rising]', 'FALSE for just this value, TRUE for the nearest below in a rising list (where omitted)']),
  standard('CHOOSE', 'one of several values by its number', ['which', 'a whole number from 1'], ['value…', 'any value']),
  standard('TEXT', 'a number as text in a format', ['number', NUMBER], ['format', 'a format in quotes such as "0.00"']),
  standard('CONCATENATE', 'texts joined into one', ['text', 'a text or a number'], ['[more…]', 'a text or a number']),
  standard('LEFT', 'the first characters of a text', ['text', 'a text'], ['[count]', 'how many; 1 where omitted']),
  standard('RIGHT', 'the last characters of a text', ['text', 'a text'], ['[count]', 'how many; 1 where omitted']),
  standard('LEN', 'how many characters a text has', ['text', 'a text']),
]

const byName = new Map(standardSignatures.map((one) => [one.name, one]))

export const standardByName = (name: string): StandardSignature | undefined => byName.get(name.toUpperCase())
