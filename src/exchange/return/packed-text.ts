/** A text, compressed, as lines that a spreadsheet's cells can hold. */
export interface PackedText {
  /** Base64 (RFC 4648), each piece for itself. */
  readonly pieces: readonly string[]
  /** How long the text is. */
  readonly characters: number
  /** SHA-256 of its UTF-8, in hexadecimal. */
  readonly hash: string
}

/** Bytes of a piece: a multiple of three, and in Base64 shorter than the 32 767 characters of a cell (ECMA-376), with some words before it. */
const PIECE_BYTES = 23_997

export async function packed(text: Iterable<string>): Promise<PackedText> {
  const whole = [...text].join('')
  const bytes = new TextEncoder().encode(whole)
  const small = new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate-raw'))).arrayBuffer())
  const pieces: string[] = []
  for (let start = 0; start < small.length; start += PIECE_BYTES) pieces.push(base64(small.subarray(start, start + PIECE_BYTES)))
  return { pieces, characters: whole.length, hash: await sha256(bytes) }
}

/** The text again; or in words why there is none. Never gives a text that is not the one packed. */
export async function unpacked({ pieces, characters, hash }: PackedText): Promise<{ readonly text: string } | { readonly problem: string }> {
  const small: Uint8Array<ArrayBuffer>[] = []
  for (const [index, piece] of pieces.entries()) {
    const bytes = bytesOf(piece)
    if (bytes === undefined) return { problem: `piece ${index + 1} is no Base64` }
    small.push(bytes)
  }
  // No character takes more than three bytes of UTF-8 for each of its halves: what grows beyond that is no packed workbook.
  const bytes = await inflated(small, 3 * characters)
  if ('problem' in bytes) return bytes
  if (await sha256(bytes.whole) !== hash.trim().toLowerCase()) return { problem: 'it is not what was written: the SHA-256 differs' }
  const text = new TextDecoder('utf-8', { fatal: false, ignoreBOM: true }).decode(bytes.whole)
  return text.length === characters ? { text } : { problem: `it has ${text.length} characters, where ${characters} were written` }
}

async function inflated(pieces: readonly Uint8Array<ArrayBuffer>[], most: number): Promise<{ readonly whole: Uint8Array<ArrayBuffer> } | { readonly problem: string }> {
  const reader = new Blob([...pieces]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader()
  const parts: Uint8Array[] = []
  let length = 0
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      length += next.value.length
      if (length > most) {
        await reader.cancel()
        return { problem: `unpacked it grows beyond ${most} bytes, more than was written` }
      }
      parts.push(next.value)
    }
  } catch {
    return { problem: 'it is damaged and cannot be unpacked' }
  }
  const whole = new Uint8Array(length)
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return { whole }
}

export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

const base64 = (bytes: Uint8Array): string => btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))

function bytesOf(text: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    return Uint8Array.from(atob(text), (character) => character.charCodeAt(0))
  } catch {
    return undefined
  }
}
