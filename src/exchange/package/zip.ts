/** A part of a package: its name, and its text in pieces. */
export interface Part {
  readonly name: string
  readonly text: Iterable<string>
  /** Left as it is, for what reads the beginning of the file without opening it. */
  readonly stored?: true
}

/**
 * A zip file of parts (APPNOTE 6.3.10, deflate, no Zip64): the platform's own compression, half the size that the spreadsheet library's makes.
 * Every entry bears the same date, so that the same parts give the same bytes.
 */
export async function zip(parts: Iterable<Part>, date: Date): Promise<Uint8Array<ArrayBuffer>> {
  const stamp = dosDate(date)
  const pieces: Uint8Array<ArrayBuffer>[] = []
  const directory: Uint8Array<ArrayBuffer>[] = []
  let offset = 0
  for (const { name, text, stored } of parts) {
    const { packed, size, crc } = stored ? asItIs(text) : await deflated(text)
    const nameBytes = new TextEncoder().encode(name)
    // Version 2.0, names in UTF-8, deflate or no compression.
    const common = [...u16(20), ...u16(0x0800), ...u16(stored ? 0 : 8), ...stamp, ...u32(crc), ...u32(packed.length), ...u32(size), ...u16(nameBytes.length), ...u16(0)]
    const local = bytes([...u32(0x04034b50), ...common], nameBytes)
    pieces.push(local, packed)
    directory.push(bytes([...u32(0x02014b50), ...u16(20), ...common, ...u16(0), ...u16(0), ...u16(0), ...u32(0), ...u32(offset)], nameBytes))
    offset += local.length + packed.length
  }
  const directorySize = directory.reduce((sum, { length }) => sum + length, 0)
  const end = bytes([...u32(0x06054b50), ...u16(0), ...u16(0), ...u16(directory.length), ...u16(directory.length), ...u32(directorySize), ...u32(offset), ...u16(0)])
  return joined([...pieces, ...directory, end])
}

const PIECE = 1 << 18

async function deflated(text: Iterable<string>): Promise<{ readonly packed: Uint8Array<ArrayBuffer>; readonly size: number; readonly crc: number }> {
  const stream = new CompressionStream('deflate-raw')
  const packed = new Response(stream.readable).arrayBuffer()
  const writer = stream.writable.getWriter()
  const encoder = new TextEncoder()
  let [size, crc, waiting] = [0, 0xffffffff, '']
  let written: Promise<void> = Promise.resolve()
  const push = async (piece: string): Promise<void> => {
    const encoded = encoder.encode(piece)
    size += encoded.length
    crc = crcAfter(crc, encoded)
    // The piece before is packed while this one is made: no more than two wait.
    await written
    written = writer.write(encoded)
  }
  for (const piece of text) {
    waiting += piece
    if (waiting.length < PIECE) continue
    await push(waiting)
    waiting = ''
  }
  await push(waiting)
  await written
  await writer.close()
  return { packed: new Uint8Array(await packed), size, crc: ~crc >>> 0 }
}

function asItIs(text: Iterable<string>): { readonly packed: Uint8Array<ArrayBuffer>; readonly size: number; readonly crc: number } {
  const packed = new TextEncoder().encode([...text].join(''))
  return { packed, size: packed.length, crc: ~crcAfter(0xffffffff, packed) >>> 0 }
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1
  return rest
})

export function crcAfter(crc: number, encoded: Uint8Array): number {
  let rest = crc
  for (const byte of encoded) rest = (rest >>> 8) ^ (CRC_TABLE[(rest ^ byte) & 0xff] ?? 0)
  return rest
}

const u16 = (value: number): number[] => [value & 0xff, (value >>> 8) & 0xff]
const u32 = (value: number): number[] => [...u16(value & 0xffff), ...u16(value >>> 16)]

/** Time, then date, as in a file system of two-second steps that begins in 1980. */
const dosDate = (date: Date): number[] => [
  ...u16((date.getUTCHours() << 11) | (date.getUTCMinutes() << 5) | (date.getUTCSeconds() >> 1)),
  ...u16((Math.max(0, date.getUTCFullYear() - 1980) << 9) | ((date.getUTCMonth() + 1) << 5) | date.getUTCDate()),
]

const bytes = (head: readonly number[], tail: Uint8Array = new Uint8Array()): Uint8Array<ArrayBuffer> => joined([Uint8Array.from(head), tail])

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    all.set(part, at)
    at += part.length
  }
  return all
}
