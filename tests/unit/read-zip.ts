import { inflateRawSync } from 'node:zlib'

/** The parts of a zip file as texts, by name; read from its central directory, independent of what wrote it. */
export function readZip(bytes: Uint8Array): ReadonlyMap<string, string> {
  const file = Buffer.from(bytes)
  const end = file.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'))
  if (end < 0) throw new Error('no zip file: it has no central directory')
  const parts = new Map<string, string>()
  let entry = file.readUInt32LE(end + 16)
  for (let count = file.readUInt16LE(end + 10); count > 0; count--) {
    const [nameLength, extraLength, commentLength] = [file.readUInt16LE(entry + 28), file.readUInt16LE(entry + 30), file.readUInt16LE(entry + 32)]
    const name = file.toString('utf8', entry + 46, entry + 46 + nameLength)
    parts.set(name, contentAt(file, file.readUInt32LE(entry + 42), file.readUInt16LE(entry + 10), file.readUInt32LE(entry + 20)))
    entry += 46 + nameLength + extraLength + commentLength
  }
  return parts
}

function contentAt(file: Buffer, local: number, method: number, size: number): string {
  const start = local + 30 + file.readUInt16LE(local + 26) + file.readUInt16LE(local + 28)
  const packed = file.subarray(start, start + size)
  return (method === 0 ? packed : inflateRawSync(packed)).toString('utf8')
}

export interface XmlCell {
  readonly type: string | undefined
  readonly formula: string | undefined
  readonly array: boolean
  readonly value: string | undefined
  /** Which of the file's cell formats it has. */
  readonly style: number
}

/** The cells of a worksheet part by address. */
export function xmlCells(sheet: string): ReadonlyMap<string, XmlCell> {
  const cells = new Map<string, XmlCell>()
  for (const [, attributes = '', body = ''] of sheet.matchAll(/<c ([^>]*?)(?:\/>|>(.*?)<\/c>)/gs)) {
    const formula = /<f([^>]*)>(.*?)<\/f>/s.exec(body)
    const value = /<(v|t)(?: [^>]*)?>(.*?)<\/\1>/s.exec(body)?.[2]
    cells.set(attribute(attributes, 'r') ?? '', {
      type: attribute(attributes, 't'),
      formula: formula?.[2] === undefined ? undefined : unescapeXml(formula[2]),
      array: formula?.[1]?.includes('t="array"') ?? false,
      value: value === undefined ? undefined : unescapeXml(value),
      style: Number(attribute(attributes, 's') ?? 0),
    })
  }
  return cells
}

/** The texts of a comments part by address. */
export function xmlComments(part: string): ReadonlyMap<string, string> {
  return new Map(
    [...part.matchAll(/<comment ref="([^"]+)"[^>]*>.*?<t(?: [^>]*)?>(.*?)<\/t>/gs)].map(([, address = '', text = '']) => [address, unescapeXml(text)] as const),
  )
}

export function unescapeXml(text: string): string {
  return text.replace(/&(lt|gt|quot|apos|amp);/g, (_, name: keyof typeof ENTITIES) => ENTITIES[name])
}

const ENTITIES = { lt: '<', gt: '>', quot: '"', apos: "'", amp: '&' } as const

function attribute(attributes: string, name: string): string | undefined {
  return new RegExp(`(?:^| )${name}="([^"]*)"`).exec(attributes)?.[1]
}
