import { BORDERS, LOOKS, NOT_MET, PLAIN_FONT, type CellStyle, type FontParts, type LookParts, type Side } from './looks.ts'
import { DECLARATION, xml } from './xml.ts'

const font = ({ size = PLAIN_FONT.size, color = PLAIN_FONT.color, bold, italic }: FontParts): string =>
  `<font>${bold ? '<b/>' : ''}${italic ? '<i/>' : ''}<sz val="${size}"/><color rgb="FF${color}"/><name val="${PLAIN_FONT.name}"/><family val="2"/></font>`
const solid = (color: string): string => `<fill><patternFill patternType="solid"><fgColor rgb="FF${color}"/><bgColor indexed="64"/></patternFill></fill>`
const border = (name: keyof typeof BORDERS): string => {
  const { sides, color }: { readonly sides: readonly Side[]; readonly color: string } = BORDERS[name]
  const line = (side: Side): string => (sides.includes(side) ? `<${side} style="thin"><color rgb="FF${color}"/></${side}>` : `<${side}/>`)
  return `<border>${(['left', 'right', 'top', 'bottom'] as const).map(line).join('')}<diagonal/></border>`
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
    const parts: LookParts = LOOKS[look]
    // What stands beside a text of several lines stands at its first.
    const align = parts.header ? 'vertical="bottom" wrapText="1"' : `vertical="top"${wrap ? ' wrapText="1"' : ''}`
    const inside = `<alignment ${align}/>${parts.unlocked ? '<protection locked="0"/>' : ''}`
    const ids = `numFmtId="${this.#format(format)}" fontId="${put(this.#fonts, parts.font && font(parts.font))}" fillId="${put(this.#fills, parts.fill && solid(parts.fill))}" borderId="${put(this.#borders, parts.border && border(parts.border))}"`
    const applied = `applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1"${parts.unlocked ? ' applyProtection="1"' : ''}`
    const number = put(this.#xfs, `<xf ${ids} xfId="0" ${applied}>${inside}</xf>`)
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
      `<dxfs count="1"><dxf><font><b/><color rgb="FF${NOT_MET.font.color}"/></font><fill><patternFill><bgColor rgb="FF${NOT_MET.fill}"/></patternFill></fill></dxf></dxfs>` +
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
