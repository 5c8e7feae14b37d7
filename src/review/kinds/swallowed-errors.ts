import { isCellError } from '../../calc/values.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { Sheet } from '../../workbook/document.ts'
import { eachNode, type FormulaNode } from '../../workbook/formula/tree.ts'
import type { FindingKind } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import { holds, lookupsIn } from '../lookups.ts'
import { merge, type CellFound } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** Errors that a formula turns into a number, which goes on as if it were one. */
export const swallowedErrors: FindingKind = {
  kind: 'swallowed-errors',
  heading: 'Errors turned into numbers',
  about: 'IFERROR or IFNA puts a number in the place of an error that is there now: a name that a lookup does not find, a cell that shows an error. A text or a blank in its place is seen, and not meant.',
  find(survey) {
    return merge(survey.formulas.flatMap(({ sheet, row, column, formula }): CellFound[] => {
      if (!CATCHES.test(formula)) return []
      const tree = survey.tree(formula)
      const [fault] = tree === undefined ? [] : [...eachNode(tree)].flatMap((node) => swallowed(survey, node, sheet) ?? [])
      if (fault === undefined) return []
      const { number, why, cause } = fault
      return [{
        found: {
          severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
          reason: `Counts as ${number} what is an error: ${why}.`, key: `error as ${number}`, ...(cause && { causes: [cause] }),
        },
        alike: `${number}${why}`,
      }]
    }))
  },
}

const CATCHES = /\bIF(?:ERROR|NA)\(/i

interface Swallowed {
  readonly number: number
  readonly why: string
  readonly cause: CellPlace | undefined
}

function swallowed(survey: Survey, node: FormulaNode, home: Sheet): Swallowed | undefined {
  if (node.kind !== 'call' || (node.name !== 'IFERROR' && node.name !== 'IFNA')) return undefined
  const [tried, instead] = node.arguments
  if (tried === undefined || instead?.kind !== 'number') return undefined
  const why = notFound(survey, tried, home) ?? (node.name === 'IFERROR' ? errorIn(survey, tried, home) : undefined)
  return why && { number: instead.value, ...why }
}

/** A lookup for an exact value that is not in its list. */
function notFound(survey: Survey, node: FormulaNode, home: Sheet): Omit<Swallowed, 'number'> | undefined {
  for (const { sought, range, text, match } of lookupsIn(survey, node, home)) {
    const cause = placeOf(sought, home)
    const value = cause ? survey.value(cause.sheet, cause.row, cause.column) : sought?.kind === 'text' ? sought.text : undefined
    // An empty cell is looked up in lists that are not filled to their end.
    if (match !== 'exact' || value === undefined || value === null || value === '' || isCellError(value)) continue
    if (typeof value === 'string' && /[*?~]/.test(value)) continue
    if (!holds(survey, range, value)) return { why: `${typeof value === 'string' ? `“${value}”` : String(value)} is not in ${text}`, cause }
  }
  return undefined
}

function errorIn(survey: Survey, node: FormulaNode, home: Sheet): Omit<Swallowed, 'number'> | undefined {
  for (const one of eachNode(node)) {
    const cause = placeOf(one, home)
    const value = cause && survey.value(cause.sheet, cause.row, cause.column)
    if (cause && isCellError(value)) return { why: `${cellWords(cause, home.name)} shows ${value.error}`, cause }
  }
  return undefined
}

const placeOf = (node: FormulaNode | undefined, home: Sheet): CellPlace | undefined => {
  if (node?.kind !== 'reference' || node.reference.to !== null) return undefined
  const { sheet, from: { row, column } } = node.reference
  return row === null || column === null ? undefined : { sheet: sheet ?? home.name, row, column }
}
