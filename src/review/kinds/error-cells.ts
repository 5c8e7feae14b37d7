import { isFormula } from '../../workbook/document.ts'
import { ErrorCells, LOOP_ERROR, type ErrorCell } from '../error-cells.ts'
import type { FindingKind, Found } from '../finding.ts'
import { asSentence, cellsWords } from '../finding-words.ts'
import { grouped } from '../grouped.ts'
import { merge } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** Where an error begins; the cells that only hand it on are named with it. */
export const errorCells: FindingKind = {
  kind: 'error-cells',
  heading: 'Cells with errors',
  about: 'A cell without a value, where its error begins; cells that show it because they use that one are named with it. Formulas that depend on their own result are a kind of their own.',
  find(survey) {
    const errors = new ErrorCells(survey, (error) => error !== LOOP_ERROR)
    const users = grouped(errors.all, sourceFinder(survey, errors))
    return merge([...users].map(([source, using]) => ({ found: found(survey, source, using.filter((one) => one !== source)), alike: alikeOf(survey, source) })))
  },
}

/** Where an error comes from: through cells with the same one. An error of another sign is one that the formula makes of its own. */
function sourceFinder(survey: Survey, errors: ErrorCells): (cell: ErrorCell) => ErrorCell {
  const known = new Map<ErrorCell, ErrorCell>()
  const before = (cell: ErrorCell): ErrorCell | undefined => {
    for (const one of errors.usedBy(survey, cell)) if (one !== cell && one.value.error === cell.value.error) return one
    return undefined
  }
  return (cell) => {
    const way: ErrorCell[] = []
    let at: ErrorCell | undefined = cell
    let source = cell
    while (at !== undefined && !known.has(at)) {
      known.set(at, at)
      way.push(at)
      source = at
      at = before(at)
    }
    if (at !== undefined) source = known.get(at) ?? at
    for (const one of way) known.set(one, source)
    return source
  }
}

function found(survey: Survey, source: ErrorCell, using: readonly ErrorCell[]): Found {
  const { sheet, row, column, cell, home, value: { error, message } } = source
  const users = using.length === 0 ? '' : `${asSentence(message)} ${using.length === 1 ? 'A cell that uses it shows' : `${using.length} cells that use it show`} the error too: ${cellsWords(using, sheet)}.`
  const feeds = isFormula(cell.content) ? survey.referred(cell.content, home).flatMap(({ sheet: { name }, area: { top, left } }) => ({ sheet: name, row: top, column: left })) : []
  return {
    severity: 'error', sheet, area: { top: row, bottom: row, left: column, right: column },
    reason: `${error}: ${users === '' ? asSentence(message) : users}`,
    key: error, causes: feeds.slice(0, MOST_FEEDS),
  }
}

const MOST_FEEDS = 10

const alikeOf = (survey: Survey, { value: { error, message }, row, column, cell: { content } }: ErrorCell): string =>
  `${error}${message}${isFormula(content) ? survey.shape({ formula: content, row, column }) : ''}`
