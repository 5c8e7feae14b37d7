/** An element with its namespace prefix as written. */
export interface XmlElement {
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: readonly (XmlElement | string)[]
}

const NAME = /[A-Za-z_][\w.-]*(?::[A-Za-z_][\w.-]*)?/y
const SPACE = /[ \t\r\n]+/y
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }
// What XML 1.0 can hold (2.2), by code units.
// oxlint-disable-next-line no-control-regex
const NO_CHARACTER = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/u

/**
 * The root of a well-formed XML 1.0 document with namespaces, without a document type. Anything else throws: a tag not closed, an attribute given
 * twice, a prefix that no ancestor declares, a bare "&" or "<", a character that XML has not, text outside the root.
 */
export function strictXml(text: string): XmlElement {
  const odd = NO_CHARACTER.exec(text)
  if (odd) throw new Error(`a character that XML has not, at ${odd.index}`)
  let at = 0
  const fail = (words: string): never => {
    throw new Error(`${words} at ${at}: ${text.slice(Math.max(0, at - 60), at + 60)}`)
  }
  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at
    const found = pattern.exec(text)?.[0]
    at += found?.length ?? 0
    return found
  }
  const expectText = (wanted: string): void => {
    if (!text.startsWith(wanted, at)) fail(`"${wanted}" expected`)
    at += wanted.length
  }
  const decoded = (raw: string): string => raw.replace(/&([^;&]{1,8});|&|<|\]\]>/g, (whole, entity: string | undefined) => {
    const code = /^#(?:x([0-9A-Fa-f]+)|(\d+))$/.exec(entity ?? '')
    if (code) return String.fromCodePoint(Number.parseInt(code[1] ?? code[2] ?? '', code[1] === undefined ? 10 : 16))
    return ENTITIES[entity ?? ''] ?? fail(`${whole} stands bare in ${raw.slice(0, 40)}`)
  })

  const element = (declared: ReadonlySet<string>): XmlElement => {
    expectText('<')
    const name = take(NAME) ?? fail('a name expected')
    const attributes = new Map<string, string>()
    for (;;) {
      const space = take(SPACE)
      if (text[at] === '/' || text[at] === '>') break
      if (space === undefined) fail('white space expected')
      const attribute = take(NAME) ?? fail('an attribute expected')
      if (attributes.has(attribute)) fail(`${attribute} given twice`)
      expectText('="')
      const end = text.indexOf('"', at)
      attributes.set(attribute, decoded(text.slice(at, end)).replace(/[\n\t]/g, (sign) => (text.slice(at, end).includes(sign) ? ' ' : sign)))
      at = end + 1
    }
    const prefixes = new Set([...declared, ...[...attributes.keys()].filter((key) => key.startsWith('xmlns:')).map((key) => key.slice(6))])
    for (const one of [name, ...attributes.keys()]) {
      const [prefix] = one.split(':')
      if (one.includes(':') && !prefixes.has(prefix ?? '')) fail(`no namespace ${prefix}`)
    }
    const children: (XmlElement | string)[] = []
    if (text[at] === '/') {
      expectText('/>')
      return { name, attributes, children }
    }
    expectText('>')
    for (;;) {
      const next = text.indexOf('<', at)
      if (next < 0) fail(`${name} is not closed`)
      if (next > at) children.push(decoded(text.slice(at, next)))
      at = next
      if (text[at + 1] === '/') break
      children.push(element(prefixes))
    }
    expectText(`</${name}>`)
    return { name, attributes, children }
  }

  take(/<\?xml version="1\.0" encoding="UTF-8"(?: standalone="yes")?\?>\s*/y)
  const root = element(new Set(['xml', 'xmlns']))
  take(SPACE)
  if (at !== text.length) fail('text after the root')
  return root
}

export const elements = ({ children }: XmlElement): readonly XmlElement[] => children.filter((child) => typeof child !== 'string')

export function* descendants(of: XmlElement): Generator<XmlElement> {
  for (const child of elements(of)) {
    yield child
    yield* descendants(child)
  }
}
