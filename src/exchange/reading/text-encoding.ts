import type { Dialect } from './contents.ts'
import { latin, looksUtf16 } from './file-kind.ts'
import { ACCEPTED, Refusal } from './refusal.ts'

export interface DecodedText {
  readonly text: string
  readonly encoding: Dialect['encoding']
  /** Nothing in the file said so: it was no UTF-8, and every byte is some character of Windows-1252. */
  readonly guessed: boolean
}

/**
 * The text of a file: by its byte order mark, by zero bytes in every other place, as UTF-8 if it is that wholly, else as Windows-1252.
 * @param wanted what the user says it is
 */
export function decodeText(bytes: Uint8Array, wanted?: Dialect['encoding']): DecodedText {
  const [first, second] = bytes
  const mark = first === 0xff && second === 0xfe ? 'le' : first === 0xfe && second === 0xff ? 'be' : undefined
  const order = mark ?? looksUtf16(latin(bytes, 0, 1024))
  if (wanted === 'UTF-16' || (wanted === undefined && order !== undefined)) {
    return { text: checked(new TextDecoder(order === 'be' ? 'utf-16be' : 'utf-16le').decode(bytes)), encoding: 'UTF-16', guessed: false }
  }
  if (wanted !== 'Windows-1252') {
    try {
      return { text: checked(new TextDecoder('utf-8', { fatal: wanted === undefined }).decode(bytes)), encoding: 'UTF-8', guessed: false }
    } catch (fault) {
      if (fault instanceof Refusal) throw fault
    }
  }
  return { text: checked(new TextDecoder('windows-1252').decode(bytes)), encoding: 'Windows-1252', guessed: wanted === undefined }
}

function checked(text: string): string {
  if (text.includes('\0')) throw new Refusal(`The file holds binary data and is no kind of file that can be read here. ${ACCEPTED}`)
  return text
}
