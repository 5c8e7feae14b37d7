import { upstreamOf } from '../../workbook/upstream.ts'
import { areaText } from './area-text.ts'
import { caseInWords, casesOf } from '../../workbook/cases.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { sheetByName, type Role } from '../../workbook/document.ts'
import type { Survey } from '../survey.ts'
import { ancestryOf, keyOfPlace } from './ancestry.ts'
import { cellName, cellWords, printedNumber, rangeHeading } from './cell-words.ts'
import type { Derivation, Step } from './derivation.ts'
import type { Saying } from './formula-lines.ts'
import type { Where } from './where.ts'
import { isOneCell, surveySource } from './formula-source.ts'
import { inOrder } from './in-order.ts'
import { rectangles } from './rectangles.ts'
import { bundled, type Bundle } from './row-runs.ts'
import { cellsOfBundle, makeStep } from './steps.ts'

/**
 * The whole ancestry of some results as ordered steps, from the inputs on. Links and conversions are no steps of their own, ranges and rows that are
 * computed alike are told as one, and of lookups and branches only what was taken is followed; all other cells that formulas refer to are listed.
 */
export function derive(survey: Survey, results: readonly CellPlace[]): Derivation {
  const { workbook } = survey
  const { nodes, links, cut } = ancestryOf(survey, results)
  const asked = new Set(results.map(keyOfPlace))
  const ordered = inOrder(workbook, bundled(nodes, asked))
  const numbers = new Map<string, number>()
  for (const [at, { bundle }] of ordered.entries()) {
    numbers.set(bundle.key, at + 1)
    for (const { key } of bundle.nodes) numbers.set(key, at + 1)
  }
  const source = new Map([...links].flatMap(([key, passing]) => passing.map((place) => [keyOfPlace(place), key] as const)))
  /** The number of the step that has what a cell passes on. */
  const numberOf = (key: string): number | undefined => {
    let at: string | undefined = key
    for (let turns = 0; at !== undefined && turns < MOST_LINKS; turns++) {
      const found = numbers.get(at)
      if (found !== undefined) return found
      at = source.get(at)
    }
    return undefined
  }
  const ranges = [...nodes.values()].filter(({ area }) => !isOneCell(area))
  /** The number of its own step, or else of the range that it is one of. */
  const numberAt = (place: CellPlace): number | undefined => {
    const own = numberOf(keyOfPlace(place))
    if (own !== undefined) return own
    const around = ranges.find(({ sheet, area }) => sheet.name === place.sheet && place.row >= area.top && place.row <= area.bottom && place.column >= area.left && place.column <= area.right)
    return around && numbers.get(around.key)
  }
  const say = (sheetName: string, row: number, column: number): Saying | undefined => {
    const home = sheetByName(workbook, sheetName)
    return home && {
      source: surveySource(survey, home, { row, column }),
      print: (value, place) => printedNumber(survey, value, place),
      nameOf: (place) => `${asName(nameAt(place))}${marked(numberAt(place))}`,
      rangeName: ({ sheet, area }) => `${rangeHeading(survey, sheet, area.top, area.left)} (${areaText({ sheet: sheet.name, area })})${marked(numbers.get(`${sheet.name}!${area.top}:${area.left}:${area.bottom}:${area.right}`))}`,
      about: (place) => conversionOf(place),
    }
  }
  const nameAt = ({ sheet: name, row, column }: CellPlace): string => {
    const sheet = sheetByName(workbook, name)
    return sheet === undefined ? '' : cellName(survey, sheet, row, column)
  }
  const wordsAt = ({ sheet: name, row, column }: CellPlace): string => {
    const sheet = sheetByName(workbook, name)
    return sheet === undefined ? '' : cellWords(survey, sheet, row, column)
  }
  /** Where a cell passes a value on in another unit, how the one becomes the other. */
  const conversionOf = (place: CellPlace): Where | undefined => {
    const from = source.get(keyOfPlace(place))
    if (from === undefined) return undefined
    const node = nodes.get(from)
    const [before, after] = [node && isOneCell(node.area) ? wordsAt({ sheet: node.sheet.name, row: node.area.top, column: node.area.left }) : undefined, wordsAt(place)]
    return before === undefined || before === after ? undefined : { what: before, comes: after }
  }

  const steps = ordered.map(({ bundle, isCircular }, at): Step => {
    const uses = [...new Set(bundle.uses.flatMap((key) => numberOf(key) ?? []))].toSorted((one, other) => one - other)
    const passing = bundle.nodes.flatMap(({ key }) => allPassing(links, key))
    const step = makeStep(survey, bundle, say, { number: at + 1, uses, passedOn: passing.map((place) => ({ place, value: wordsAt(place) })) })
    return isCircular ? { ...step, circular: true } : step
  })
  return {
    title: workbook.title,
    caseWords: casesOf(workbook).list.length === 0 ? undefined : caseInWords(workbook),
    results: results.flatMap((place) => numbers.get(keyOfPlace(place)) ?? []),
    steps,
    ...beside(survey, results, ordered.map(({ bundle }) => bundle), links),
    cut,
  }
}

const MOST_LINKS = 1000

const marked = (number: number | undefined): string => (number === undefined ? '' : ` [${number}]`)

/** A name that reads like an equation is set off from the equation it stands in. */
const asName = (label: string): string => (/ [=<>≤≥×/+−-] /.test(label) ? `“${label}”` : label)

/** What passes a cell's value on, and what passes that on. */
function allPassing(links: ReadonlyMap<string, readonly CellPlace[]>, key: string): CellPlace[] {
  const found = new Map<string, CellPlace>()
  const toAsk = [key]
  for (let next = toAsk.pop(); next !== undefined; next = toAsk.pop()) {
    for (const place of links.get(next) ?? []) {
      const own = keyOfPlace(place)
      if (found.has(own) || own === key) continue
      found.set(own, place)
      toAsk.push(own)
    }
  }
  return [...found.values()]
}

const WORDS: ReadonlySet<Role | undefined> = new Set(['unit', 'heading', 'title', 'label', 'note', 'text'])

/** The cells that formulas refer to beside the steps: units and words, and what had no part. */
function beside(survey: Survey, results: readonly CellPlace[], bundles: readonly Bundle[], links: ReadonlyMap<string, readonly CellPlace[]>): Pick<Derivation, 'noPart' | 'words'> {
  const told = new Set<string>()
  for (const place of [...links.values()].flat()) told.add(keyOfPlace(place))
  for (const bundle of bundles) {
    for (const { sheet, area } of cellsOfBundle(bundle)) {
      for (let row = area.top; row <= area.bottom; row++) {
        for (let column = area.left; column <= area.right; column++) {
          told.add(keyOfPlace({ sheet: sheet.name, row, column }))
        }
      }
    }
  }
  const [noPart, words]: [CellPlace[], CellPlace[]] = [[], []]
  for (const place of upstreamOf(survey.workbook, results).places()) {
    if (told.has(keyOfPlace(place))) continue
    const sheet = sheetByName(survey.workbook, place.sheet)
    const role = sheet?.rows[place.row]?.[place.column]?.role
    const isUnit = sheet !== undefined && WORDS.has(role)
    if (isUnit) words.push(place)
    else noPart.push(place)
  }
  return { noPart: rectangles(noPart), words: rectangles(words) }
}
