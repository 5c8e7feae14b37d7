import { crc32, deflateRawSync } from 'node:zlib'

/** A part of a package to be built, and what the package is to say of it that is not so. */
export interface PartToBuild {
  readonly name: string
  readonly data: string | Uint8Array
  readonly stored?: boolean
  readonly method?: number
  readonly flags?: number
  readonly crc?: number
  readonly statedSize?: number
  readonly statedPackedSize?: number
  readonly localName?: string
  /** Its data is that of the part of this number. */
  readonly sharesDataOf?: number
}

/** A zip file made by hand after APPNOTE 6.3.10, 4.3.7 to 4.3.16, so that every statement in it can be a lie. */
export function buildZip(parts: readonly PartToBuild[], { count = parts.length, zip64 = false }: { readonly count?: number; readonly zip64?: boolean } = {}): Uint8Array {
  const [pieces, directory]: [Buffer[], Buffer[]] = [[], []]
  const offsets: number[] = []
  let offset = 0
  for (const part of parts) {
    const data = typeof part.data === 'string' ? Buffer.from(part.data) : Buffer.from(part.data)
    const packed = part.stored ? data : deflateRawSync(data)
    const method = part.method ?? (part.stored ? 0 : 8)
    const common = (name: Buffer): Buffer => Buffer.concat([
      u16(20), u16(part.flags ?? 0x800), u16(method), u16(0), u16(0x21), u32(part.crc ?? crcOf(data)), u32(part.statedPackedSize ?? packed.length), u32(part.statedSize ?? data.length), u16(name.length), u16(0),
    ])
    const name = Buffer.from(part.name)
    const localName = Buffer.from(part.localName ?? part.name)
    const at = part.sharesDataOf === undefined ? offset : (offsets[part.sharesDataOf] ?? 0)
    offsets.push(at)
    if (part.sharesDataOf === undefined) {
      const local = Buffer.concat([u32(0x04034b50), common(localName), localName, packed])
      pieces.push(local)
      offset += local.length
    }
    directory.push(Buffer.concat([u32(0x02014b50), u16(20), common(name), u16(0), u16(0), u16(0), u32(0), u32(at), name]))
  }
  const list = Buffer.concat(directory)
  const wide = zip64 ? Buffer.concat([
    u32(0x06064b50), u64(44), u16(45), u16(45), u32(0), u32(0), u64(count), u64(count), u64(list.length), u64(offset),
    u32(0x07064b50), u32(0), u64(offset + list.length), u32(1),
  ]) : Buffer.alloc(0)
  const [shownCount, shownSize, shownStart] = zip64 ? [0xffff, 0xffffffff, 0xffffffff] : [count, list.length, offset]
  const end = Buffer.concat([u32(0x06054b50), u16(0), u16(0), u16(shownCount), u16(shownCount), u32(shownSize), u32(shownStart), u16(0)])
  return new Uint8Array(Buffer.concat([...pieces, list, wide, end]))
}

const u16 = (value: number): Buffer => { const bytes = Buffer.alloc(2); bytes.writeUInt16LE(value); return bytes }
const u32 = (value: number): Buffer => { const bytes = Buffer.alloc(4); bytes.writeUInt32LE(value); return bytes }
const u64 = (value: number): Buffer => { const bytes = Buffer.alloc(8); bytes.writeBigUInt64LE(BigInt(value)); return bytes }

/** Node has it from 20.15 on. */
const crcOf = (data: Buffer): number => crc32(data)
