import { MAX_EXPANDED_BYTES, MAX_PART_BYTES, MAX_PARTS, MAX_RATIO, RATIO_FROM_BYTES } from './limits.ts'
import { ACCEPTED, damaged, megabytes, Refusal, tooLarge } from './refusal.ts'

/** A part of a package as its directory states it; what it expands to has been checked only as far as that goes. */
export interface ZipEntry {
  readonly name: string
  readonly deflated: boolean
  readonly packed: Uint8Array
  readonly size: number
  readonly crc: number
}

/**
 * The parts of a zip file by name in lower case, since names of parts differ by more than case (ECMA-376, part 2, 6.2.2.3). Read from the
 * directory at its end (APPNOTE 6.3.10, 4.3.12 to 4.3.16) and held against the header before each part.
 * @throws Refusal where statements contradict each other, point out of the file or to one another's data, or promise too much
 */
export function zipDirectory(file: Uint8Array): ReadonlyMap<string, ZipEntry> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength)
  const { count, start, end } = directoryPlace(view)
  if (count > MAX_PARTS) throw tooLarge(`it has ${count} parts`, `up to ${MAX_PARTS}`)
  const entries = new Map<string, ZipEntry>()
  const places: (readonly [from: number, to: number])[] = []
  let [at, total] = [start, 0]
  for (let index = 0; index < count; index++) {
    if (at + 46 > end || view.getUint32(at, true) !== ENTRY) throw damaged('its list of parts breaks off')
    const stated = statedEntry(view, file, at, end)
    at = stated.next
    const { name } = stated
    total += stated.size
    if (stated.size > MAX_PART_BYTES) throw tooLarge(`the part “${shown(name)}” would take ${megabytes(stated.size)}`, `up to ${megabytes(MAX_PART_BYTES)}`)
    if (total > MAX_EXPANDED_BYTES) throw tooLarge(`its parts would take more than ${megabytes(MAX_EXPANDED_BYTES)} together`, `up to ${megabytes(MAX_EXPANDED_BYTES)}`)
    if (stated.size > RATIO_FROM_BYTES && stated.size > MAX_RATIO * stated.packedSize) {
      throw new Refusal(`The file is made to swell: the part “${shown(name)}” would expand ${Math.round(stated.size / Math.max(1, stated.packedSize))}-fold; accepted: up to ${MAX_RATIO}-fold, which no spreadsheet reaches. It is not opened.`)
    }
    const from = dataPlace(view, file, stated, start)
    places.push([stated.offset, from + stated.packedSize])
    if (name.endsWith('/')) continue
    const key = name.toLowerCase()
    if (entries.has(key)) throw new Refusal(`The file has two parts named “${shown(name)}”, so that it is not clear which one counts. It is not opened. Save it again in the program that wrote it.`)
    entries.set(key, { name, deflated: stated.method === 8, packed: file.subarray(from, from + stated.packedSize), size: stated.size, crc: stated.crc })
  }
  refuseOverlap(places)
  return entries
}

const [END, END_64, END_64_PLACE, ENTRY, LOCAL] = [0x06054b50, 0x06064b50, 0x07064b50, 0x02014b50, 0x04034b50]

function directoryPlace(view: DataView): { readonly count: number; readonly start: number; readonly end: number } {
  const last = view.byteLength - 22
  let at = last
  while (at >= 0 && at >= last - 0xffff && !(view.getUint32(at, true) === END && at + 22 + view.getUint16(at + 20, true) <= view.byteLength)) at--
  if (at < 0 || at < last - 0xffff) throw damaged('it breaks off before its list of parts')
  if (view.getUint16(at + 4, true) !== 0 || view.getUint16(at + 6, true) !== 0) throw new Refusal(`The file is one of several that a package was divided into. ${ACCEPTED}`)
  let [count, size, start, end] = [view.getUint16(at + 10, true), view.getUint32(at + 12, true), view.getUint32(at + 16, true), at]
  if (count === 0xffff || size === 0xffffffff || start === 0xffffffff) {
    if (at < 20 || view.getUint32(at - 20, true) !== END_64_PLACE) throw damaged('its list of parts is nowhere')
    end = long(view, at - 12)
    if (end + 56 > at || view.getUint32(end, true) !== END_64) throw damaged('its list of parts is nowhere')
    ;[count, size, start] = [long(view, end + 32), long(view, end + 40), long(view, end + 48)]
  }
  if (start + size !== end) throw damaged('its list of parts is not where it says')
  return { count, start, end }
}

interface Stated {
  readonly name: string
  readonly method: number
  readonly crc: number
  readonly size: number
  readonly packedSize: number
  readonly offset: number
  readonly next: number
}

function statedEntry(view: DataView, file: Uint8Array, at: number, end: number): Stated {
  const [flags, method, nameLength, extraLength] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true), view.getUint16(at + 28, true), view.getUint16(at + 30, true)]
  const next = at + 46 + nameLength + extraLength + view.getUint16(at + 32, true)
  if (next > end) throw damaged('its list of parts breaks off')
  const name = partName(file.subarray(at + 46, at + 46 + nameLength))
  // Bit 0 is encryption, bit 6 strong encryption, bit 13 a hidden directory.
  if ((flags & 0x2041) !== 0) throw new Refusal(`The file is protected by a password. Take the password off in the program that wrote it, then try again. ${ACCEPTED}`)
  if (method !== 0 && method !== 8) throw new Refusal(`The part “${shown(name)}” of the file is packed in a way (number ${method}) that spreadsheet files do not use; accepted: stored and deflate. Save it again in the program that wrote it.`)
  let [packedSize, size, offset] = [view.getUint32(at + 20, true), view.getUint32(at + 24, true), view.getUint32(at + 42, true)]
  let extra = at + 46 + nameLength
  while (extra + 4 <= at + 46 + nameLength + extraLength) {
    const [id, length] = [view.getUint16(extra, true), view.getUint16(extra + 2, true)]
    extra += 4
    if (id === 1) {
      let [field, limit] = [extra, Math.min(extra + length, at + 46 + nameLength + extraLength)]
      const wide = (narrow: number): number => {
        if (narrow !== 0xffffffff) return narrow
        if (field + 8 > limit) throw damaged(`the size of the part “${shown(name)}” is nowhere`)
        field += 8
        return long(view, field - 8)
      }
      ;[size, packedSize, offset] = [wide(size), wide(packedSize), wide(offset)]
    }
    extra += length
  }
  if (method === 0 && size !== packedSize) throw damaged(`the part “${shown(name)}” has two sizes`)
  return { name, method, crc: view.getUint32(at + 16, true), size, packedSize, offset, next }
}

/** Where a part's data begins, by the header before it, which has to say the same as the directory. */
function dataPlace(view: DataView, file: Uint8Array, { name, method, packedSize, offset }: Stated, directory: number): number {
  if (offset + 30 > directory || view.getUint32(offset, true) !== LOCAL) throw damaged(`the part “${shown(name)}” is not where the list of parts says`)
  const nameLength = view.getUint16(offset + 26, true)
  const from = offset + 30 + nameLength + view.getUint16(offset + 28, true)
  if (from + packedSize > directory) throw damaged(`the part “${shown(name)}” breaks off`)
  const nameBefore = partName(file.subarray(offset + 30, offset + 30 + nameLength))
  if (nameBefore !== name || view.getUint16(offset + 8, true) !== method) throw damaged(`the part “${shown(name)}” is another one than the list of parts says`)
  return from
}

/** Parts that share data are the way to pack a thousand large ones into a small file. */
function refuseOverlap(places: readonly (readonly [from: number, to: number])[]): void {
  let before = 0
  for (const [from, to] of places.toSorted(([one], [other]) => one - other)) {
    if (from < before) throw new Refusal('The file is made to swell: some of its parts lie over one another. It is not opened.')
    before = to
  }
}

function partName(bytes: Uint8Array): string {
  const name = new TextDecoder().decode(bytes).replaceAll('\\', '/')
  // oxlint-disable-next-line no-control-regex
  if (name === '' || name.startsWith('/') || /^[a-z]:/i.test(name) || /[\u0000-\u001f]/.test(name) || name.split('/').includes('..')) {
    throw new Refusal(`The file has a part named “${shown(name)}”, which points out of the file. It is not opened.`)
  }
  return name
}

/** Eight bytes; beyond 2^53 no longer exact, and far beyond any limit. */
const long = (view: DataView, at: number): number => view.getUint32(at, true) + view.getUint32(at + 4, true) * 0x1_0000_0000

const shown = (name: string): string => (name.length > 80 ? `${name.slice(0, 80)}…` : name).replace(/\p{Cc}/gu, '�')
