import { crcAfter } from '../package/zip.ts'
import { damaged, Refusal } from './refusal.ts'
import type { ZipEntry } from './zip-directory.ts'

/**
 * A part's text in pieces, counted while it is expanded: it ends where more comes out than was stated.
 * @param passed told the size of each piece, in bytes
 */
export async function* partText(entry: ZipEntry, passed: (bytes: number) => void = () => undefined): AsyncGenerator<string> {
  let decoder: TextDecoder | undefined
  for await (const piece of partBytes(entry)) {
    passed(piece.length)
    decoder ??= new TextDecoder(encodingOf(piece))
    yield decoder.decode(piece, { stream: true })
  }
  yield decoder?.decode() ?? ''
}

/** A small part whole. */
export async function wholeText(entry: ZipEntry): Promise<string> {
  let text = ''
  for await (const piece of partText(entry)) text += piece
  return text
}

async function* partBytes({ name, deflated, packed, size, crc }: ZipEntry): AsyncGenerator<Uint8Array> {
  let [count, sum] = [0, 0xffffffff]
  for await (const piece of deflated ? inflated(packed, name) : [packed]) {
    count += piece.length
    if (count > size) throw new Refusal(`The file is made to swell, or damaged: its part “${name}” is larger than it says (${size} bytes). It is not opened.`)
    sum = crcAfter(sum, piece)
    yield piece
  }
  if (count < size) throw damaged(`its part “${name}” breaks off`)
  if (~sum >>> 0 !== crc) throw damaged(`its part “${name}” is not as it was written`)
}

async function* inflated(packed: Uint8Array, name: string): AsyncGenerator<Uint8Array> {
  const reader = new Blob([new Uint8Array(packed)]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader()
  try {
    for (;;) {
      const { done, value } = await reader.read().catch(() => {
        throw damaged(`its part “${name}” cannot be unpacked`)
      })
      if (done) return
      yield value
    }
  } finally {
    // Whoever stops early stops the expansion too.
    await reader.cancel().catch(() => undefined)
  }
}

/** XML is in UTF-8, or begins with a mark that says otherwise. */
function encodingOf([first, second]: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  if (first === 0xff && second === 0xfe) return 'utf-16le'
  return first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8'
}
