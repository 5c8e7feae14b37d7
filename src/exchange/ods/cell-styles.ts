import { BORDERS, LOOKS, NOT_MET, PLAIN_FONT, type CellStyle, type FontParts, type Look, type LookParts } from '../package/looks.ts'
import { numberStyle } from './number-style.ts'

const NOT_MET_STYLE = 'Lowside_20_check_20_not_20_met'
const styleName = (look: Look): string => `Lowside_20_${look.replaceAll(' ', '_20_')}`

/** The styles of cells by what they are for, which the automatic ones of the cells build upon: whoever changes one there changes all its cells. */
export const commonCellStyles = (): string =>
  `<style:default-style style:family="table-cell"><style:text-properties${fontAttributes(PLAIN_FONT)}/></style:default-style>` +
  '<style:style style:name="Default" style:family="table-cell"/>' +
  (Object.keys(LOOKS) as Look[]).map((look) => common(styleName(look), `Lowside ${look}`, LOOKS[look])).join('') +
  common(NOT_MET_STYLE, 'Lowside check not met', NOT_MET)

const common = (name: string, words: string, parts: LookParts): string =>
  `<style:style style:name="${name}" style:display-name="${words}" style:family="table-cell" style:parent-style-name="Default">${properties(parts)}</style:style>`

/** The one font that the looks have (part 3, 3.14). */
export const FONTS =
  `<office:font-face-decls><style:font-face style:name="${PLAIN_FONT.name}" svg:font-family="${PLAIN_FONT.name}" style:font-family-generic="swiss"/></office:font-face-decls>`

/** Gives out names of the styles of cells, and the styles themselves (OpenDocument 1.3, part 3, 16.2). */
export class CellStyleBook {
  readonly #names = new Map<string, string>()
  readonly #formats = new Map<string, string>()
  readonly #texts: string[] = []
  readonly #base: string

  /** @param base the cell that conditions are written for, as an attribute has it: relative to it they are meant for any cell */
  constructor(base: string) {
    this.#base = base
  }

  /** Every style that a cell will have is made here before any cell is written; `checked` where the cell says "not met" in words. */
  add(style: CellStyle, checked = false): void {
    const key = keyOf(style, checked)
    if (this.#names.has(key)) return
    const name = `ce${this.#names.size + 1}`
    this.#names.set(key, name)
    const { look, format = 'General', wrap } = style
    const data = this.#format(format)
    this.#texts.push(
      `<style:style style:name="${name}" style:family="table-cell" style:parent-style-name="${styleName(look)}"${data === undefined ? '' : ` style:data-style-name="${data}"`}>` +
      (wrap ? '<style:table-cell-properties fo:wrap-option="wrap" style:vertical-align="top"/>' : '') +
      (look === 'check' ? map(this.#base, IS_FALSE) : '') + (checked ? map(this.#base, IS_NOT_MET) : '') + '</style:style>',
    )
  }

  name(style: CellStyle, checked = false): string {
    const name = this.#names.get(keyOf(style, checked))
    if (name === undefined) throw new Error(`the style ${keyOf(style, checked)} was not told before the cells were written`)
    return name
  }

  /** Number styles, then the styles of cells that use them. */
  text(): string {
    return [...this.#formats].map(([format, name]) => numberStyle(format, name) ?? '').join('') + this.#texts.join('')
  }

  #format(format: string): string | undefined {
    if (format === 'General') return undefined
    const name = this.#formats.get(format) ?? `N${this.#formats.size + 1}`
    this.#formats.set(format, name)
    return name
  }
}

const keyOf = ({ look, format = 'General', wrap = false }: CellStyle, checked: boolean): string => `${look}|${format}|${wrap}|${checked}`

/** A FALSE is marked, nothing else: an empty cell counts as one in a comparison (part 3, 16.3 and 19.469). */
const IS_FALSE = 'is-true-formula(AND(ISLOGICAL([.A1]);NOT([.A1])))'
const IS_NOT_MET = 'cell-content()=&quot;not met&quot;'

const map = (base: string, condition: string): string => `<style:map style:condition="${condition}" style:apply-style-name="${NOT_MET_STYLE}" style:base-cell-address="${base}"/>`

function properties({ font, fill, border, header, unlocked }: LookParts): string {
  const cell = [
    fill === undefined ? '' : ` fo:background-color="#${fill}"`,
    border === undefined ? '' : BORDERS[border].sides.map((side) => ` fo:border-${side}="0.5pt solid #${BORDERS[border].color}"`).join(''),
    header ? ' fo:wrap-option="wrap" style:vertical-align="bottom"' : '',
    unlocked ? ' style:cell-protect="none"' : '',
  ].join('')
  return (cell === '' ? '' : `<style:table-cell-properties${cell}/>`) + (font === undefined ? '' : `<style:text-properties${fontAttributes(font)}/>`)
}

const fontAttributes = ({ name, size, color, bold, italic }: FontParts & { readonly name?: string }): string =>
  (name === undefined ? '' : ` style:font-name="${name}"`) + (size === undefined ? '' : ` fo:font-size="${size}pt"`) + (color === undefined ? '' : ` fo:color="#${color}"`) +
  (bold ? ' fo:font-weight="bold"' : '') + (italic ? ' fo:font-style="italic"' : '')
