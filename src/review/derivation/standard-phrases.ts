type Phrase = (given: readonly string[]) => string

const listed = (words: string): Phrase => (given) => `${words} (${given.join('; ')})`
const decimals = (count: string | undefined): string => (count === undefined || count === '0' ? 'a whole number' : count === '1' ? '1 decimal' : `${count} decimals`)

const PHRASES: Readonly<Record<string, Phrase>> = {
  MIN: listed('smallest of'), MAX: listed('largest of'), SUM: listed('sum of'), PRODUCT: listed('product of'), AVERAGE: listed('mean of'),
  COUNT: listed('how many numbers in'), COUNTA: listed('how many filled in'), AND: listed('all of'), OR: listed('any of'), NOT: listed('not'),
  ABS: ([given]) => `|${given ?? ''}|`,
  SQRT: ([given]) => `√(${given ?? ''})`,
  EXP: ([given]) => `e^(${given ?? ''})`,
  LN: ([given]) => `ln(${given ?? ''})`,
  LOG10: ([given]) => `log10(${given ?? ''})`,
  PI: () => 'π',
  ROUND: ([given, digits]) => `${given ?? ''} rounded to ${decimals(digits)}`,
  ROUNDUP: ([given, digits]) => `${given ?? ''} rounded up to ${decimals(digits)}`,
  ROUNDDOWN: ([given, digits]) => `${given ?? ''} rounded down to ${decimals(digits)}`,
  ISNUMBER: ([given]) => `${given ?? ''} is a number`,
  ISERROR: ([given]) => `${given ?? ''} is an error`,
  ISTEXT: ([given]) => `${given ?? ''} is a text`,
  ROWS: ([given]) => `how many rows in (${given ?? ''})`,
  N: ([given]) => `number in (${given ?? ''})`,
  IF: ([condition, whenTrue, whenFalse]) => `(if ${condition ?? ''}: ${whenTrue ?? ''}; else: ${whenFalse ?? 'FALSE'})`,
  IFERROR: ([given, otherwise]) => `(${given ?? ''}; if that is an error: ${otherwise ?? ''})`,
  MATCH: ([wanted, range]) => `place of (${wanted ?? ''}) in (${range ?? ''})`,
  SUMIFS: ([sum, ...criteria]) => `sum of (${sum ?? ''}) where ${pairs(criteria)}`,
  COUNTIF: (criteria) => `how many where ${pairs(criteria)}`,
  COUNTIFS: (criteria) => `how many where ${pairs(criteria)}`,
}

const pairs = (criteria: readonly string[]): string =>
  `(${Array.from({ length: Math.ceil(criteria.length / 2) }, (_, at) => `${criteria[2 * at] ?? ''} is ${criteria[2 * at + 1] ?? ''}`).join('; ')})`

/** A standard function in words; undefined where its name says as much. */
export const standardPhrase = (name: string, given: readonly string[]): string | undefined => PHRASES[name]?.(given)
