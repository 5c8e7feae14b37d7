import { SaxesParser } from 'saxes'

export interface XmlElement {
  /** With its namespace prefix, as it is written. */
  readonly name: string
  readonly attributes: ReadonlyMap<string, string>
  readonly children: XmlElement[]
  text: string
}

/** The root of an XML 1.0 document with namespaces; throws over whatever is not well-formed, and over a document type, which no part may have (ECMA-376, part 2, 8.1.4). */
export function parseXml(text: string): XmlElement {
  const parser = new SaxesParser({ xmlns: true })
  const open: XmlElement[] = []
  let root: XmlElement | undefined
  parser.on('error', (error) => { throw error })
  parser.on('doctype', () => { throw new Error('it has a document type') })
  parser.on('opentag', ({ name, attributes }) => {
    const element: XmlElement = { name, attributes: new Map(Object.entries(attributes).map(([key, { value }]) => [key, value])), children: [], text: '' }
    open.at(-1)?.children.push(element)
    root ??= element
    open.push(element)
  })
  parser.on('text', (piece) => {
    const top = open.at(-1)
    if (top) top.text += piece
  })
  parser.on('closetag', () => void open.pop())
  parser.write(text).close()
  if (root === undefined) throw new Error('it has no root element')
  return root
}

export const childrenOf = (element: XmlElement | undefined, name: string): readonly XmlElement[] => element?.children.filter((child) => child.name === name) ?? []
export const childOf = (element: XmlElement | undefined, name: string): XmlElement | undefined => childrenOf(element, name)[0]

/** Every element below, itself first. */
export function* descendants(element: XmlElement): Generator<XmlElement> {
  yield element
  for (const child of element.children) yield* descendants(child)
}
