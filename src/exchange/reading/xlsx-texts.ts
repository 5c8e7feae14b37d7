import { parseAddress } from '../../workbook/address.ts'
import { MAX_TEXT } from '../../workbook/limits.ts'
import type { Holdings } from './cell-rows.ts'
import { readPart } from './xlsx-book.ts'
import { readXml } from './xml-events.ts'
import type { ZipEntry } from './zip-directory.ts'
import { partText } from './zip-part.ts'

/** The texts that cells refer to by number (ECMA-376, part 1, 18.4.9), runs of different looks joined, phonetic readings left out. */
export async function readSharedTexts(entry: ZipEntry, holdings: Holdings, passed: (bytes: number) => void): Promise<readonly string[]> {
  const texts: string[] = []
  const gathering = new TextGathering()
  await readXml(entry.name, partText(entry, passed), {
    open(name) {
      if (name === 'si') gathering.begin()
      else gathering.open(name)
    },
    text: (text) => gathering.text(text),
    close(name) {
      gathering.close(name)
      if (name !== 'si') return
      const text = gathering.end()
      // A text is counted here whether a cell has it or not.
      holdings.count(1, text.length)
      texts.push(text)
    },
  })
  return texts
}

export interface ReadNote {
  readonly row: number
  readonly column: number
  readonly text: string
}

/** The notes of a sheet (ECMA-376, part 1, 18.7). */
export async function readNotes(entry: ZipEntry, holdings: Holdings): Promise<readonly ReadNote[]> {
  const notes: ReadNote[] = []
  const gathering = new TextGathering()
  let address: { readonly row: number; readonly column: number } | undefined
  await readPart(entry, {
    open(name, attributes) {
      if (name === 'comment') {
        address = parseAddress(attributes.get('ref') ?? '') ?? undefined
        gathering.begin()
      } else gathering.open(name)
    },
    text: (text) => gathering.text(text),
    close(name) {
      gathering.close(name)
      if (name !== 'comment') return
      const text = gathering.end()
      holdings.count(1, text.length)
      if (address && text !== '') notes.push({ row: address.row, column: address.column, text })
    },
  })
  return notes
}

/** Puts together what stands in the `t` elements of one text. */
export class TextGathering {
  #text = ''
  #inText = false
  #phonetic = false

  begin(): void {
    this.#text = ''
    this.#inText = false
    this.#phonetic = false
  }

  open(name: string): void {
    if (name === 'rPh') this.#phonetic = true
    else if (name === 't') this.#inText = !this.#phonetic
  }

  text(text: string): void {
    // Enough to say that it is too long for a cell.
    if (this.#inText && this.#text.length <= MAX_TEXT * 8) this.#text += text
  }

  close(name: string): void {
    if (name === 'rPh') this.#phonetic = false
    else if (name === 't') this.#inText = false
  }

  end(): string {
    return unescaped(this.#text)
  }
}

/** `_x000D_` is the character of that number (ECMA-376, part 1, 22.9.2.19). */
export const unescaped = (text: string): string =>
  text.includes('_x') ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16))) : text
