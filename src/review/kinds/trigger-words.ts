import type { CellPlace } from '../../workbook/cell-place.ts'
import { eachCell } from '../../workbook/cells.ts'
import type { Sheet } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { eachNode } from '../../workbook/formula/tree.ts'
import { isOrder, type Order } from '../comparisons.ts'
import type { FindingKind, Found, Mend } from '../finding.ts'
import { merge, type CellFound } from '../merge.ts'
import { shapesOf } from '../shapes.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { typedLimit } from '../typed-limits.ts'

/** Rules that begin "at or above" a quantity, applied as if they began above it, and the other way round. */
export const triggerWords: FindingKind = {
  kind: 'trigger-words',
  heading: 'Thresholds with the wrong word',
  about:
    'At exactly the threshold the rules differ: PSM, EPCRA, Directive 2012/18/EU and E2 apply at or above it, RMP only to more than it. Rows that name one such rule are held to its word, in the comparison with a typed limit of mass and in a cell that says “at or above” or “more than”.',
  find: (survey) => merge([...wrongComparisons(survey), ...wrongWords(survey)]),
}

type Word = 'at or above' | 'more than'

interface Rule {
  readonly name: string
  readonly words: RegExp
  readonly word: Word
}

/** 29 CFR 1910.119(a)(1)(i); 40 CFR 68.10(a), 68.115; 40 CFR 355 App. A, 370.10; 2012/18/EU Annex I; SOR/2019-51 Sch. 1. */
const RULES: readonly Rule[] = [
  { name: 'PSM, 29 CFR 1910.119', words: /\bPSM\b|1910\.119|process safety management/i, word: 'at or above' },
  { name: 'RMP, 40 CFR 68', words: /\bRMP\b|40 CFR (?:part )?68\b|risk management pro/i, word: 'more than' },
  { name: 'EPCRA, 40 CFR 355 and 370', words: /\bEPCRA 3(?:0[24]|12)\b|40 CFR (?:part )?3(?:55|70)\b/i, word: 'at or above' },
  { name: 'Directive 2012/18/EU', words: /\bSeveso\b|2012\/18\/EU|\bCOMAH\b/i, word: 'at or above' },
  { name: 'E2, SOR/2019-51', words: /SOR\/2019-51|\bE2\b.*emergenc|environmental emergenc/i, word: 'at or above' },
]

/** The one rule that a row speaks of; undefined where it names none, or several with different words. */
function ruleOf(sheet: Sheet, row: number): Rule | undefined {
  const texts = (sheet.rows[row] ?? []).flatMap((cell) => [cell === undefined ? undefined : meantText(cell.content), cell?.note])
  const named = RULES.filter(({ words }) => texts.some((text) => text !== undefined && words.test(text)))
  const [first] = named
  return first !== undefined && named.every(({ word }) => word === first.word) ? first : undefined
}

function wrongComparisons(survey: Survey): CellFound[] {
  return shapesOf(survey).flatMap(({ tree, cells }) => {
    const orders = tree === undefined ? [] : [...eachNode(tree)].filter(isOrder)
    // A formula with both words chooses between them by itself.
    const isOneWord = new Set(orders.map(({ operator }) => operator)).size === 1
    return isOneWord ? cells.flatMap((cell) => comparison(survey, cell)) : []
  })
}

function comparison(survey: Survey, cell: FormulaCell): CellFound[] {
  const rule = ruleOf(cell.sheet, cell.row)
  const tree = survey.tree(cell.formula)
  if (rule === undefined || tree === undefined) return []
  return [...eachNode(tree)].filter(isOrder).flatMap((order) => {
    const word = wordOf(survey, cell.sheet, order)
    return word === undefined || word === rule.word
      ? []
      : [made(cell.sheet, cell, `${order.operator} decides here as for a rule that begins ${word} its threshold; ${rule.name}, which its row names, begins ${rule.word} it.`, `${rule.name}: ${order.operator}`)]
  })
}

/** What a comparison says of an amount exactly at its limit: that the rule begins there, or only above. */
function wordOf(survey: Survey, home: Sheet, { left, right, operator }: Order): Word | undefined {
  const [isLeft, isRight] = [isMass(survey, home, left, right), isMass(survey, home, right, left)]
  if (isLeft === isRight) return undefined
  const amountFirst = isRight ? operator : FLIPPED[operator]
  return amountFirst === '>=' || amountFirst === '<' ? 'at or above' : 'more than'
}

const isMass = (survey: Survey, home: Sheet, side: Order['left'], other: Order['left']): boolean => typedLimit(survey, home, side, other)?.unit.dimension === 'mass'

const FLIPPED: Readonly<Record<Order['operator'], Order['operator']>> = { '<': '>', '>': '<', '<=': '>=', '>=': '<=' }

function wrongWords(survey: Survey): CellFound[] {
  const found: CellFound[] = []
  for (const sheet of survey.workbook.sheets) {
    eachCell(sheet, (cell, row, column) => {
      const text = meantText(cell.content)?.trim().toLowerCase()
      if (cell.role !== 'input' || (text !== 'at or above' && text !== 'more than')) return
      const rule = ruleOf(sheet, row)
      if (rule === undefined || rule.word === text) return
      const one = made(sheet, { row, column }, `“${text}”, but ${rule.name} begins ${rule.word} its threshold.`, `${rule.name}: ${text}`)
      const mend: Mend = { words: `Write “${rule.word}”`, edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: { ...cell, content: rule.word } }] }] }
      found.push({ ...one, found: { ...one.found, mend } })
    })
  }
  return found
}

function made(sheet: Sheet, { row, column }: Omit<CellPlace, 'sheet'>, reason: string, key: string): CellFound {
  const found: Found = { severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, reason, key }
  return { found, alike: key }
}
