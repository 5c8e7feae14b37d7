import type { Role } from '../../workbook/document.ts'
import { DECLARATION, xml } from './xml.ts'

/** What a cell of a file is for: a role of the workbook, or a part of the workings. */
export type Look = Role | 'header' | 'header unit' | 'given' | 'step' | 'outcome' | 'table'

export interface CellStyle {
  readonly look: Look
  /** A number format's code; General where absent. */
  readonly format?: string
  readonly wrap?: boolean
}

interface LookParts {
  readonly font?: string
  readonly fill?: string
  readonly border?: string
  readonly align?: string
  readonly unlocked?: true
}

const font = ({ size = 10, color = 'FF1F2933', bold = false, italic = false }): string =>
  `<font>${bold ? '<b/>' : ''}${italic ? '<i/>' : ''}<sz val="${size}"/><color rgb="${color}"/><name val="Arial"/><family val="2"/></font>`
const solid = (color: string): string => `<fill><patternFill patternType="solid"><fgColor rgb="${color}"/><bgColor indexed="64"/></patternFill></fill>`
const line = (side: string, style: string, color: string): string => `<${side} style="${style}"><color rgb="${color}"/></${side}>`
const bottomLine = `<border><left/><right/><top/>${line('bottom', 'thin', 'FF8A97A6')}<diagonal/></border>`
const box = `<border>${['left', 'right', 'top', 'bottom'].map((side) => line(side, 'thin', 'FFB9A15A')).join('')}<diagonal/></border>`

/** Print first: pale fills, no colour that alone carries a meaning. */
const LOOKS: Readonly<Record<Look, LookParts>> = {
  title: { font: font({ size: 14, bold: true }) },
  heading: { font: font({ bold: true }), border: bottomLine },
  label: {},
  input: { font: font({ color: 'FF123A7A' }), fill: solid('FFFFF7DC'), border: box, unlocked: true },
  unit: { font: font({ color: 'FF5A6675' }) },
  result: { font: font({ bold: true }) },
  check: { fill: solid('FFEEF3EC') },
  note: { font: font({ italic: true, color: 'FF5A6675' }) },
  text: {},
  header: { font: font({ bold: true }), fill: solid('FFE8ECF1'), align: 'vertical="bottom" wrapText="1"' },
  'header unit': { font: font({ color: 'FF5A6675' }), fill: solid('FFE8ECF1'), border: bottomLine },
  given: { fill: solid('FFF6F8FA') },
  step: {},
  outcome: { font: font({ bold: true }), fill: solid('FFEEF3EC') },
  table: {},
}

const BUILT_IN_FORMATS: Readonly<Record<string, number>> = { General: 0, '0': 1, '0.00': 2 }
const FIRST_OWN_FORMAT = 164

/** Gives out numbers of cell formats, and the styles part of a file that has them. */
export class StyleBook {
  readonly #xfs = new Map<string, number>()
  readonly #fonts = new Map([[font({}), 0]])
  // The first two are fixed by the format.
  readonly #fills = new Map([['<fill><patternFill patternType="none"/></fill>', 0], ['<fill><patternFill patternType="gray125"/></fill>', 1]])
  readonly #borders = new Map([['<border><left/><right/><top/><bottom/><diagonal/></border>', 0]])
  readonly #formats = new Map<string, number>()
  readonly #known = new Map<string, number>()

  constructor() {
    this.number({ look: 'text' })
  }

  number({ look, format = 'General', wrap = false }: CellStyle): number {
    const key = `${look}|${format}|${wrap}`
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const parts = LOOKS[look]
    const align = parts.align ?? (wrap ? 'vertical="top" wrapText="1"' : '')
    const inside = `${align === '' ? '' : `<alignment ${align}/>`}${parts.unlocked ? '<protection locked="0"/>' : ''}`
    const ids = `numFmtId="${this.#format(format)}" fontId="${put(this.#fonts, parts.font)}" fillId="${put(this.#fills, parts.fill)}" borderId="${put(this.#borders, parts.border)}"`
    const applied = `applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1"${align === '' ? '' : ' applyAlignment="1"'}${parts.unlocked ? ' applyProtection="1"' : ''}`
    const number = put(this.#xfs, `<xf ${ids} xfId="0" ${applied}${inside === '' ? '/>' : `>${inside}</xf>`}`)
    this.#known.set(key, number)
    return number
  }

  part(): string {
    const list = (name: string, items: Iterable<string>): string => {
      const all = [...items]
      return `<${name} count="${all.length}">${all.join('')}</${name}>`
    }
    const formats = [...this.#formats].map(([code, id]) => `<numFmt numFmtId="${id}" formatCode="${xml(code)}"/>`)
    return (
      `${DECLARATION}<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">` +
      (formats.length === 0 ? '' : list('numFmts', formats)) +
      list('fonts', this.#fonts.keys()) + list('fills', this.#fills.keys()) + list('borders', this.#borders.keys()) +
      '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
      list('cellXfs', this.#xfs.keys()) +
      '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
      `<dxfs count="1"><dxf><font><b/><color rgb="FF8A1C1C"/></font><fill><patternFill><bgColor rgb="FFFBE3E0"/></patternFill></fill></dxf></dxfs>` +
      '</styleSheet>'
    )
  }

  #format(code: string): number {
    const builtIn = BUILT_IN_FORMATS[code]
    if (builtIn !== undefined) return builtIn
    const id = this.#formats.get(code) ?? FIRST_OWN_FORMAT + this.#formats.size
    this.#formats.set(code, id)
    return id
  }
}

function put(list: Map<string, number>, item: string | undefined): number {
  if (item === undefined) return 0
  const at = list.get(item) ?? list.size
  list.set(item, at)
  return at
}
