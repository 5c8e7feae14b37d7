import { xml } from '../package/xml.ts'

const NAMESPACES = {
  office: 'office:1.0', style: 'style:1.0', text: 'text:1.0', table: 'table:1.0', fo: 'xsl-fo-compatible:1.0', svg: 'svg-compatible:1.0', number: 'datastyle:1.0',
  meta: 'meta:1.0', config: 'config:1.0', manifest: 'manifest:1.0', of: 'of:1.2',
} as const

export const OPEN_DECLARATION = '<?xml version="1.0" encoding="UTF-8"?>\n'

/** The declarations of namespaces (OpenDocument 1.3, part 3, 1.4) that a part begins with. */
export const namespaces = (...prefixes: readonly (keyof typeof NAMESPACES)[]): string =>
  prefixes.map((prefix) => ` xmlns:${prefix}="urn:oasis:names:tc:opendocument:xmlns:${NAMESPACES[prefix]}"`).join('')

/** A text inside an attribute, line ends and all. */
export const attributeText = (text: string): string => xml(text).replace(/[\n\r\t]/g, (sign) => `&#${sign.charCodeAt(0)};`)

/**
 * A text of a cell or a note: a paragraph a line, white space kept (OpenDocument 1.3, part 3, 6.1). Empty lines at the beginning are line
 * breaks, since a paragraph of nothing there is often passed over. All line ends are alike: the format knows one.
 */
export function paragraphs(text: string): string {
  const [, before = '', rest = ''] = /^(\n*)([\s\S]*)$/.exec(text.replace(/\r\n?/g, '\n')) ?? []
  const [first = '', ...others] = rest.split('\n')
  return `<text:p>${'<text:line-break/>'.repeat(before.length)}${spaced(first)}</text:p>${others.map((line) => (line === '' ? '<text:p/>' : `<text:p>${spaced(line)}</text:p>`)).join('')}`
}

/** White space that would come together to one blank, or to nothing at the ends, has elements of its own (6.1.2). */
const spaced = (line: string): string =>
  /^ | $| {2}|\t/.test(line)
    ? xml(line).replace(/^ +| +$| {2,}/g, (blanks) => `<text:s text:c="${blanks.length}"/>`).replaceAll('\t', '<text:tab/>')
    : xml(line)
