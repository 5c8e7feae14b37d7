import { quoteSheetName } from '../../workbook/address.ts'

/**
 * A formula in OpenFormula (OpenDocument 1.3, part 4) in A1 form without "=": references out of their brackets, "," between arguments and
 * columns of an array, ";" between its rows. Undefined where it cannot be taken apart.
 */
export function fromOpenFormula(text: string): string | undefined {
  const head = /^([a-z]+):=?|^=/i.exec(text)
  const dialect = head?.[1]?.toLowerCase()
  const body = text.slice(head?.[0].length ?? 0).replace(/^=/, '')
  // Dialects in A1 form already; others with brackets are taken for OpenFormula, which succeeded them.
  if (dialect !== undefined && !BRACKETED.has(dialect)) return body
  let [formula, at, depth] = ['', 0, 0]
  while (at < body.length) {
    const sign = body.charAt(at)
    if (sign === '"') {
      const end = quoteEnd(body, at, '"')
      if (end === undefined) return undefined
      formula += body.slice(at, end)
      at = end
    } else if (sign === '[') {
      const end = bracketEnd(body, at)
      const reference = end === undefined ? undefined : fromBrackets(body.slice(at + 1, end - 1))
      if (end === undefined || reference === undefined) return undefined
      formula += reference
      at = end
    } else {
      if (sign === '{') depth++
      if (sign === '}') depth--
      formula += depth > 0 ? (IN_ARRAY.get(sign) ?? sign) : (OUTSIDE.get(sign) ?? sign)
      at++
    }
  }
  // Functions of a maker's own carry a domain's name turned round (part 4, 5.6).
  return formula.replace(/\b(?:COM|ORG)\.[A-Z]+\.(?=[A-Z][A-Z0-9._]*\()/g, '').trim()
}

/** What a name stands for: an address such as `$Duty.$C$5:.$D$9` (part 3, 19.608). */
export const fromCellRange = (text: string): string | undefined => fromBrackets(/^[.$']|\./.test(text) ? text : `.${text}`)

const BRACKETED: ReadonlySet<string> = new Set(['of', 'oooc'])
const IN_ARRAY: ReadonlyMap<string, string> = new Map([[';', ','], ['|', ';']])
const OUTSIDE: ReadonlyMap<string, string> = new Map([[';', ','], ['~', ','], ['!', ' ']])

/** Where a quoted text ends, the quote doubled inside it. */
function quoteEnd(text: string, from: number, quote: string): number | undefined {
  let at = text.indexOf(quote, from + 1)
  while (at >= 0 && text.charAt(at + 1) === quote) at = text.indexOf(quote, at + 2)
  return at < 0 ? undefined : at + 1
}

function bracketEnd(text: string, from: number): number | undefined {
  for (let at = from + 1; at < text.length; at++) {
    const sign = text.charAt(at)
    if (sign === ']') return at + 1
    if (sign === "'") {
      const end = quoteEnd(text, at, "'")
      if (end === undefined) return undefined
      at = end - 1
    }
  }
  return undefined
}

/** `.A1`, `.A1:.B2`, `$Sheet.A1`, `'My sheet'.A1:'My sheet'.B2`, `'file:///other'#Sheet.A1` (part 4, 5.8). */
function fromBrackets(text: string): string | undefined {
  if (text === '#REF!') return text
  const source = /^'(?:[^']|'')*'#/.exec(text)?.[0] ?? ''
  const match = CORNERS.exec(text.slice(source.length))
  if (match === null) return /#REF!/.test(text) ? '#REF!' : undefined
  const [, sheet, from = '', toSheet, to] = match
  if (to !== undefined && toSheet !== undefined && bare(toSheet) !== bare(sheet ?? '')) {
    return sheet === undefined ? undefined : `${source}${quoted(sheet)}:${quoted(toSheet)}!${from}:${to}`
  }
  return `${source}${sheet === undefined ? '' : `${quoted(sheet)}!`}${from}${to === undefined ? '' : `:${to}`}`
}

const NAME = String.raw`(\$?'(?:[^']|'')*'|\$?[^.:'$#\s\][]+)?`
const CORNER = String.raw`\.(\$?[A-Za-z]{1,3}\$?\d{1,7}|\$?[A-Za-z]{1,3}|\$?\d{1,7})`
const CORNERS = new RegExp(`^${NAME}${CORNER}(?::${NAME}${CORNER.replace('\\.', '\\.?')})?$`)

const bare = (sheet: string): string => {
  const name = sheet.replace(/^\$/, '')
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name
}
const quoted = (sheet: string): string => quoteSheetName(bare(sheet))
