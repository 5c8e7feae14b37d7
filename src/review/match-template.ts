import { eachCell } from '../workbook/cells.ts'
import { foldCase, isFormula, type Sheet, type Workbook } from '../workbook/document.ts'
import { sameFormula } from './plain-formula.ts'
import { lastingTexts } from './sheet-outline.ts'
import type { TemplateMatch } from './template-match.ts'
import type { SheetPair } from './sheet-layer.ts'
import { templateLayer } from './template-layer.ts'

/**
 * The template that a workbook came from, by what stays the same when one is filled in: its words and what its formulas do.
 * Undefined where it is like none.
 */
export function matchTemplate(workbook: Workbook, templates: readonly Workbook[]): TemplateMatch | undefined {
  const own = outlinesOf(workbook)
  let best: { readonly template: Workbook; readonly pairs: readonly SheetPair[]; readonly likeness: number } | undefined
  for (const template of templates) {
    const outlines = outlinesOf(template)
    const { pairs, shared } = pairSheets(own, outlines)
    const [all, theirs] = [sizeOf(own), sizeOf(outlines)]
    const likeness = (2 * shared) / (all + theirs)
    if (pairs.length > 0 && shared >= LEAST_OF_SMALLER * Math.min(all, theirs) && (best === undefined || likeness > best.likeness)) best = { template, pairs, likeness }
  }
  return best && likestLayer(workbook, best.template, best.pairs)
}

/**
 * Where two rows have changed their labels, or been sorted anew, they look as if they had changed places: whichever leaves fewer formulas
 * other than the template’s is taken.
 */
function likestLayer(workbook: Workbook, template: Workbook, pairs: readonly SheetPair[]): TemplateMatch {
  let best = templateLayer(template, pairs)
  if (best.shifted.length === 0) return best
  let [inPlace, others] = [new Set<Sheet>(), otherFormulas(workbook, best)]
  for (const sheet of best.shifted) {
    const tried = new Set([...inPlace, sheet])
    const layer = templateLayer(template, pairs, tried)
    const count = otherFormulas(workbook, layer)
    if (count < others) [best, inPlace, others] = [layer, tried, count]
  }
  return best
}

function otherFormulas({ sheets }: Workbook, match: TemplateMatch): number {
  let count = 0
  for (const sheet of sheets) {
    eachCell(sheet, ({ content }, row, column) => {
      if (!isFormula(content)) return
      const expected = match.cell({ sheet: sheet.name, row, column })?.content
      if (!isFormula(expected) || !sameFormula(expected, content, sheet.name)) count++
    })
  }
  return count
}

/** Of the one that has fewer words and formulas, the share that the other has too: the cautions and the basis that all templates have make less. */
const LEAST_OF_SMALLER = 0.35

interface Outline {
  readonly sheet: Sheet
  readonly texts: ReadonlySet<string>
}

const outlinesOf = ({ sheets }: Workbook): Outline[] => sheets.map((sheet) => ({ sheet, texts: lastingTexts(sheet) }))

const sizeOf = (outlines: readonly Outline[]): number => outlines.reduce((sum, { texts }) => sum + texts.size, 0)

/** Of the smaller of two sheets: of the same name, and of another. */
const LEAST_SAME_NAME = 0.25
const LEAST_OTHER_NAME = 0.5
/** A sheet of hardly any words is like any other such. */
const LEAST_TEXTS = 4

function pairSheets(own: readonly Outline[], theirs: readonly Outline[]): { readonly pairs: readonly SheetPair[]; readonly shared: number } {
  const [pairs, left, right]: [SheetPair[], Set<Outline>, Set<Outline>] = [[], new Set(own), new Set(theirs)]
  let shared = 0
  const take = (one: Outline, other: Outline, common: number): void => {
    pairs.push({ sheet: one.sheet, template: other.sheet })
    left.delete(one)
    right.delete(other)
    shared += common
  }
  for (const one of own) {
    const other = theirs.find(({ sheet }) => foldCase(sheet.name) === foldCase(one.sheet.name))
    const common = other === undefined ? 0 : commonTexts(one, other)
    if (other !== undefined && common >= LEAST_SAME_NAME * Math.min(one.texts.size, other.texts.size)) take(one, other, common)
  }
  const others = [...left].flatMap((one) => [...right].map((other) => ({ one, other, common: commonTexts(one, other) })))
  for (const { one, other, common } of others.toSorted((first, second) => second.common - first.common)) {
    const isAlike = common >= LEAST_TEXTS && common >= LEAST_OTHER_NAME * Math.min(one.texts.size, other.texts.size)
    if (isAlike && left.has(one) && right.has(other)) take(one, other, common)
  }
  return { pairs, shared }
}

function commonTexts({ texts: one }: Outline, { texts: other }: Outline): number {
  const [few, many] = one.size < other.size ? [one, other] : [other, one]
  let count = 0
  for (const text of few) if (many.has(text)) count++
  return count
}
