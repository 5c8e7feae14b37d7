import { MAX_STYLES } from './limits.ts'
import { tooLarge } from './refusal.ts'

/** What the styles of an OpenDocument file say of cells, columns and sheets (OpenDocument 1.3, part 3, 16). */
export class OdsStyles {
  readonly #codes = new Map<string, string>()
  readonly #styles = new Map<string, { readonly parent: string | undefined; readonly data: string | undefined }>()
  readonly #widths = new Map<string, number>()
  #count = 0
  readonly #hiddenTables = new Set<string>()
  #number: { readonly name: string; code: string; text: string | undefined } | undefined
  #style: { readonly family: string; readonly name: string } | undefined

  open(name: string, attributes: ReadonlyMap<string, string>): void {
    const own = attributes.get('style:name')
    if (this.#number) return this.#openNumberPart(name, attributes)
    if (own !== undefined && ++this.#count > MAX_STYLES) throw tooLarge(`it has more than ${MAX_STYLES} styles`, `up to ${MAX_STYLES}`)
    if (NUMBER_STYLES.has(name) && own !== undefined) this.#number = { name: own, code: '', text: undefined }
    else if (name === 'style' && own !== undefined) {
      const family = attributes.get('style:family') ?? ''
      this.#style = { family, name: own }
      if (family === 'table-cell') this.#styles.set(own, { parent: attributes.get('style:parent-style-name'), data: attributes.get('style:data-style-name') })
    } else if (name === 'table-column-properties' && this.#style) {
      const width = pixels(attributes.get('style:column-width'))
      if (width !== undefined) this.#widths.set(this.#style.name, width)
    } else if (name === 'table-properties' && this.#style && attributes.get('table:display') === 'false') this.#hiddenTables.add(this.#style.name)
  }

  text(text: string): void {
    if (this.#number?.text !== undefined && this.#number.text.length < 100) this.#number.text += text
  }

  close(name: string): void {
    if (name === 'style') this.#style = undefined
    const number = this.#number
    if (!number) return
    if (number.text !== undefined && (name === 'text' || name === 'currency-symbol')) {
      number.code += literal(number.text)
      number.text = undefined
    } else if (NUMBER_STYLES.has(name)) {
      if (number.code !== '' && number.code !== '0.############') this.#codes.set(number.name, number.code)
      this.#number = undefined
    }
  }

  /** The number format's code of a cell's style, or of the style that it takes after. */
  code(style: string | undefined): string | undefined {
    let name = style
    for (let step = 0; step < 20 && name !== undefined; step++) {
      const found = this.#styles.get(name)
      if (found?.data !== undefined) return this.#codes.get(found.data)
      name = found?.parent
    }
    return undefined
  }

  width(style: string | undefined): number | undefined {
    return style === undefined ? undefined : this.#widths.get(style)
  }

  isHiddenTable(style: string | undefined): boolean {
    return style !== undefined && this.#hiddenTables.has(style)
  }

  #openNumberPart(name: string, attributes: ReadonlyMap<string, string>): void {
    const number = this.#number
    if (!number || number.code.length > MAX_CODE) return
    const long = attributes.get('number:style') === 'long'
    switch (name) {
      case 'text': case 'currency-symbol': number.text = ''; return
      case 'number': number.code += numberPart(attributes); return
      case 'scientific-number': number.code += `${numberPart(attributes)}E+${'0'.repeat(count(attributes.get('number:min-exponent-digits'), 2))}`; return
      case 'fraction': number.code += `# ${'?'.repeat(count(attributes.get('number:min-numerator-digits'), 1))}/${'?'.repeat(count(attributes.get('number:min-denominator-digits'), 1))}`; return
      case 'text-content': number.code += '@'; return
      case 'year': number.code += long ? 'yyyy' : 'yy'; return
      case 'month': number.code += attributes.get('number:textual') === 'true' ? (long ? 'mmmm' : 'mmm') : long ? 'mm' : 'm'; return
      case 'day': number.code += long ? 'dd' : 'd'; return
      case 'day-of-week': number.code += long ? 'dddd' : 'ddd'; return
      case 'hours': number.code += long ? 'hh' : 'h'; return
      case 'minutes': number.code += long ? 'mm' : 'm'; return
      case 'seconds': {
        const decimals = count(attributes.get('number:decimal-places'), 0)
        number.code += (long ? 'ss' : 's') + (decimals > 0 ? `.${'0'.repeat(decimals)}` : '')
        return
      }
      case 'am-pm': number.code += 'AM/PM'; return
      default:
    }
  }
}

const NUMBER_STYLES: ReadonlySet<string> = new Set(['number-style', 'percentage-style', 'currency-style', 'date-style', 'time-style', 'text-style', 'boolean-style'])

/** Characters of a format's code: other programs stop at 255. */
const MAX_CODE = 1000

function numberPart(attributes: ReadonlyMap<string, string>): string {
  const [whole, places] = [Math.max(0, count(attributes.get('number:min-integer-digits'), 1)), attributes.get('number:decimal-places')]
  const integer = attributes.get('number:grouping') === 'true' ? `#,##${whole === 0 ? '#' : '0'}` : whole === 0 ? '#' : '0'.repeat(whole)
  // Without a number of places as many are shown as are needed.
  if (places === undefined) return `${integer}.############`
  const [most, least] = [count(places, 0), count(attributes.get('number:min-decimal-places'), count(places, 0))]
  return most === 0 ? integer : `${integer}.${'0'.repeat(Math.min(least, most))}${'#'.repeat(Math.max(0, most - least))}`
}

/** Digits in a format: no more than a number has. */
function count(text: string | undefined, otherwise: number): number {
  const number = Number(text ?? otherwise)
  return Number.isInteger(number) && number >= 0 ? Math.min(30, number) : otherwise
}

/** Signs that stand for themselves in a code as they are, others in quotes. */
const literal = (text: string): string => (/^[ \-/:().,%+$€£]*$/.test(text) ? text : `"${text.replaceAll('"', '')}"`)

/** A length at 96 px an inch (OpenDocument 1.3, part 3, 18.3.18). */
export function pixels(length: string | undefined): number | undefined {
  const found = /^(\d+(?:\.\d+)?)(cm|mm|in|pt|pc|px)$/.exec(length ?? '')
  const [, number, unit = ''] = found ?? []
  return number === undefined ? undefined : Math.min(4000, Math.round(Number(number) * (PX_PER.get(unit) ?? 1)))
}

const PX_PER: ReadonlyMap<string, number> = new Map([['cm', 96 / 2.54], ['mm', 96 / 25.4], ['in', 96], ['pt', 96 / 72], ['pc', 16], ['px', 1]])
