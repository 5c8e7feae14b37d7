import { areaOf, parseReference } from '../../../src/workbook/address.ts'
import { childOf, childrenOf, type XmlElement } from './xml-tree.ts'

/** What the styles part offers. */
export interface Offered {
  readonly cellFormats: number
  readonly differentialFormats: number
}

const MOST = { rows: 1_048_576, columns: 16_384, text: 32_767, formula: 8192, heightPt: 409, widthInDigits: 255, headerText: 255 } as const

/** What of a worksheet part no reader could take as it is meant (ECMA-376, part 1, 18.3). */
export function sheetProblems(sheet: XmlElement, { cellFormats, differentialFormats }: Offered): readonly string[] {
  return [
    ...cellProblems(sheet, cellFormats), ...columnProblems(sheet), ...viewProblems(sheet), ...formulaProblems(sheet),
    ...childrenOf(sheet, 'conditionalFormatting').flatMap((one) => [
      ...(one.attributes.get('sqref') ?? '').split(' ').filter((text) => placeOf(text) === undefined).map((text) => `a conditional format of ${text}`),
      ...childrenOf(one, 'cfRule').filter((rule) => !(Number(rule.attributes.get('dxfId')) < differentialFormats)).map(() => 'a conditional format without a look'),
    ]),
    ...childOf(sheet, 'headerFooter')?.children.filter(({ text }) => text.length > MOST.headerText).map(({ text }) => `a header or footer of ${text.length} characters`) ?? [],
  ]
}

const placeOf = (text: string) => {
  const reference = parseReference(text)
  return reference && reference.sheet === null ? areaOf(reference) : undefined
}

function cellProblems(sheet: XmlElement, cellFormats: number): string[] {
  const problems: string[] = []
  let lastRow = 0
  for (const row of childrenOf(childOf(sheet, 'sheetData'), 'row')) {
    const number = Number(row.attributes.get('r'))
    if (!(number > lastRow && number <= MOST.rows)) problems.push(`row ${number} after row ${lastRow}`)
    lastRow = number
    if (Number(row.attributes.get('ht') ?? 15) > MOST.heightPt) problems.push(`row ${number} is ${row.attributes.get('ht')} pt high`)
    let lastColumn = -1
    for (const cell of row.children) {
      const address = cell.attributes.get('r') ?? ''
      const place = placeOf(address)
      if (place === undefined || place.top !== number - 1 || place.left <= lastColumn || place.left >= MOST.columns) problems.push(`${address} in row ${number}`)
      lastColumn = place?.left ?? lastColumn
      if (!(Number(cell.attributes.get('s') ?? 0) < cellFormats)) problems.push(`${address}: no cell format ${cell.attributes.get('s')}`)
      const wrong = valueProblem(cell)
      if (wrong !== undefined) problems.push(`${address}: ${wrong}`)
    }
  }
  return problems
}

/** Of a value, by the type of its cell (18.18.11). */
function valueProblem(cell: XmlElement): string | undefined {
  const [type, value, inline] = [cell.attributes.get('t') ?? 'n', childOf(cell, 'v')?.text, childOf(childOf(cell, 'is'), 't')?.text]
  if ((inline !== undefined) !== (type === 'inlineStr')) return 'an inline text in a cell of another type, or none'
  if (type === 'inlineStr') return childOf(cell, 'f') ? 'a formula beside an inline text' : tooLong(inline ?? '')
  if (type === 'str') return childOf(cell, 'f') ? tooLong(value ?? '') : 'a result without formula'
  if (value === undefined) return undefined
  if (type === 'b') return value === '0' || value === '1' ? undefined : `the truth value ${value}`
  if (type === 'e') return /^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A)$/.test(value) ? undefined : `the error ${value}`
  return type === 'n' && Number.isFinite(Number(value)) && value.trim() !== '' ? undefined : `the value ${value} of type ${type}`
}

const tooLong = (text: string): string | undefined => (text.length > MOST.text ? `a text of ${text.length} characters` : undefined)

function formulaProblems(sheet: XmlElement): string[] {
  const problems: string[] = []
  const shared = new Map<string, { readonly area: ReturnType<typeof placeOf>; readonly text: string }>()
  for (const row of childrenOf(childOf(sheet, 'sheetData'), 'row')) {
    for (const cell of row.children) {
      const formula = childOf(cell, 'f')
      if (formula === undefined) continue
      const address = cell.attributes.get('r') ?? ''
      const [type, ref, number] = [formula.attributes.get('t') ?? 'normal', formula.attributes.get('ref'), formula.attributes.get('si') ?? '']
      const [place, area] = [placeOf(address), placeOf(ref ?? '')]
      const isCorner = place !== undefined && area?.top === place.top && area.left === place.left
      if (formula.text.length > MOST.formula || formula.text.startsWith('=')) problems.push(`${address}: a formula of ${formula.text.length} characters, ${formula.text.slice(0, 20)}`)
      if (type === 'normal' && (formula.text === '' || ref !== undefined || number !== '')) problems.push(`${address}: a formula with nothing in it, or with a range`)
      if (type === 'array' && (!isCorner || formula.text === '')) problems.push(`${address}: an array formula of ${ref}`)
      if (type !== 'shared') continue
      if (ref !== undefined) {
        if (!isCorner || shared.has(number) || formula.text === '') problems.push(`${address}: a shared formula ${number} of ${ref}`)
        shared.set(number, { area, text: formula.text })
        continue
      }
      const range = shared.get(number)?.area
      const isInside = range !== undefined && place !== undefined && place.top >= range.top && place.top <= range.bottom && place.left >= range.left && place.left <= range.right
      if (!isInside || formula.text !== '') problems.push(`${address}: takes part in a shared formula ${number} that is not there`)
    }
  }
  return problems
}

function columnProblems(sheet: XmlElement): string[] {
  let last = 0
  return childrenOf(childOf(sheet, 'cols'), 'col').flatMap(({ attributes }) => {
    const [min, max, width] = [Number(attributes.get('min')), Number(attributes.get('max')), Number(attributes.get('width'))]
    const isRight = min > last && max >= min && max <= MOST.columns && width >= 0 && width <= MOST.widthInDigits
    last = max
    return isRight ? [] : [`columns ${min} to ${max}, ${width} wide`]
  })
}

/** Whether what is frozen, and the cell that comes after it, are the same. */
function viewProblems(sheet: XmlElement): string[] {
  return childrenOf(childOf(sheet, 'sheetViews'), 'sheetView').flatMap((view) => {
    const pane = childOf(view, 'pane')
    if (pane === undefined) return []
    const corner = placeOf(pane.attributes.get('topLeftCell') ?? '')
    const isRight = corner?.left === Number(pane.attributes.get('xSplit') ?? 0) && corner.top === Number(pane.attributes.get('ySplit') ?? 0) && pane.attributes.get('state') === 'frozen'
    const selected = childrenOf(view, 'selection').map(({ attributes }) => attributes.get('pane'))
    return isRight && selected.includes(pane.attributes.get('activePane')) ? [] : [`a view split at ${pane.attributes.get('topLeftCell')}`]
  })
}
