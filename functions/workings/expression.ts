/**
 * A formula, or a part of one, in standard spreadsheet functions only (the small group of OpenFormula, no array entry, nothing that an
 * older program lacks). Other cells of the call's row and the shared tables stand in it as marks, `⟨3⟩` and `⟨units.factor⟩`,
 * which become addresses where it is written.
 */
export type Expression = string

/** A column of the call's row. */
export const cell = (column: number): Expression => `⟨${column}⟩`

/** A block of a shared table. */
export const block = (table: string, name: string): Expression => `⟨${table}.${name}⟩`

/** The formula with each mark replaced by the address that `place` gives for it: a column's number, or a block's `table.name`. */
export const fillMarks = (formula: Expression, place: (mark: number | string) => string): string =>
  formula.replace(/⟨([^⟩]+)⟩/g, (_, mark: string) => place(/^\d+$/.test(mark) ? Number(mark) : mark))

/** A number as formulas take it, to the last digit; negative ones in brackets, since −2^2 is read differently by different programs. */
export const num = (value: number): Expression => {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot stand in a formula`)
  const text = String(value).toUpperCase()
  return value < 0 ? `(${text})` : text
}

/** A text in quotes. */
export const quoted = (text: string): Expression => `"${text.replace(/"/g, '""')}"`

/** The value where the condition holds, an error that spreads to the result where it does not. */
export const unless = (condition: Expression, value: Expression): Expression => `IF(${condition},${value},NA())`

/** One of several expressions by a name: the first case that fits, an error where none does. */
export const byName = (name: Expression, cases: Readonly<Record<string, Expression>>): Expression =>
  Object.entries(cases).reduceRight((rest, [key, value]) => `IF(${name}=${quoted(key)},${value},${rest})`, 'NA()')
