import { MAX_TAG, MAX_XML_DEPTH } from './limits.ts'
import { damaged, Refusal } from './refusal.ts'

/** What a reader of a part is told. Names are without prefix. */
export interface XmlReader {
  /** @param attributes with their prefixes; the same map is used again for the next tag */
  open(name: string, attributes: ReadonlyMap<string, string>): void
  /** A text may come in several pieces. */
  text?(text: string): void
  close?(name: string): void
}

/**
 * Reads XML as it comes, and holds no more than a tag of it. Strict in what makes parsers dangerous: no document type, no entities but the
 * five of XML and characters by number, depth and tags bounded, every tag closed.
 * @throws Refusal
 */
export async function readXml(part: string, pieces: AsyncIterable<string>, reader: XmlReader): Promise<void> {
  const scanner = new Scanner(part, reader)
  for await (const piece of pieces) scanner.push(piece)
  scanner.end()
}

class Scanner {
  readonly #part: string
  readonly #reader: XmlReader
  readonly #open: string[] = []
  readonly #attributes = new Map<string, string>()
  #waiting = ''
  #root = false

  constructor(part: string, reader: XmlReader) {
    this.#part = part
    this.#reader = reader
  }

  push(piece: string): void {
    const text = this.#waiting === '' ? piece : this.#waiting + piece
    let at = 0
    while (at < text.length) {
      const mark = text.indexOf('<', at)
      if (mark !== at) {
        const until = mark < 0 ? heldBack(text, at) : mark
        if (until > at) this.#text(text.slice(at, until), true)
        at = until
        if (mark < 0) break
      }
      const after = this.#markup(text, at)
      if (after === undefined) break
      at = after
    }
    this.#waiting = text.slice(at)
    if (this.#waiting.length > MAX_TAG) throw new Refusal(`A tag in the part “${this.#part}” of the file has more than ${MAX_TAG} characters, which no spreadsheet has. It is not opened.`)
  }

  end(): void {
    if (this.#waiting !== '' || this.#open.length > 0 || !this.#root) throw this.#broken()
  }

  /** Where reading goes on; undefined if the end has not come yet. */
  #markup(text: string, at: number): number | undefined {
    const next = text.charCodeAt(at + 1)
    if (next === SLASH) {
      const end = text.indexOf('>', at)
      if (end < 0) return undefined
      const name = text.slice(at + 2, end).trimEnd()
      if (this.#open.pop() !== name) throw this.#broken()
      this.#reader.close?.(local(name))
      return end + 1
    }
    if (next === QUESTION) return past(text, '?>', at)
    if (next === EXCLAMATION) return this.#declaration(text, at)
    return this.#tag(text, at)
  }

  #declaration(text: string, at: number): number | undefined {
    if (text.startsWith('<!--', at)) return past(text, '-->', at + 4)
    if (text.startsWith('<![CDATA[', at)) {
      const end = text.indexOf(']]>', at)
      if (end < 0) return undefined
      this.#text(text.slice(at + 9, end), false)
      return end + 3
    }
    if (text.length - at < 9) return undefined
    throw new Refusal(`The part “${this.#part}” of the file declares a document type or entities of its own, which no spreadsheet needs and which can do harm. It is not opened.`)
  }

  #tag(text: string, at: number): number | undefined {
    let end = at + 1
    for (;; end++) {
      const code = text.charCodeAt(end)
      if (Number.isNaN(code)) return undefined
      if (code === GREATER) break
      if (code === QUOTE || code === APOSTROPHE) {
        end = text.indexOf(code === QUOTE ? '"' : "'", end + 1)
        if (end < 0) return undefined
      } else if (code === LESS) throw this.#broken()
    }
    const closed = text.charCodeAt(end - 1) === SLASH
    const inside = text.slice(at + 1, closed ? end - 1 : end)
    const name = NAME.exec(inside)?.[0]
    if (name === undefined) throw this.#broken()
    this.#readAttributes(inside, name.length)
    if (this.#open.length === 0 && this.#root) throw this.#broken()
    this.#root = true
    if (this.#open.length >= MAX_XML_DEPTH) throw new Refusal(`The part “${this.#part}” of the file has more than ${MAX_XML_DEPTH} elements in one another, which no spreadsheet has. It is not opened.`)
    this.#reader.open(local(name), this.#attributes)
    if (closed) this.#reader.close?.(local(name))
    else this.#open.push(name)
    return end + 1
  }

  #readAttributes(inside: string, from: number): void {
    this.#attributes.clear()
    let at = from
    while (at < inside.length) {
      ATTRIBUTE.lastIndex = at
      const found = ATTRIBUTE.exec(inside)
      if (found === null) {
        if (inside.slice(at).trim() !== '') throw this.#broken()
        return
      }
      const [, name = '', double, single = ''] = found
      if (this.#attributes.has(name)) throw this.#broken()
      this.#attributes.set(name, this.#decoded((double ?? single).replace(/[\t\n\r]/g, ' ')))
      at = ATTRIBUTE.lastIndex
    }
  }

  #text(text: string, encoded: boolean): void {
    if (this.#open.length > 0) this.#reader.text?.(encoded ? this.#decoded(text).replaceAll('\r\n', '\n') : text)
    else if (text.replace('\ufeff', '').trim() !== '') throw this.#broken()
  }

  #decoded(text: string): string {
    if (!text.includes('&')) return text
    return text.replace(/&([^;&]{0,12});?/g, (whole, name: string) => {
      const known = ENTITIES.get(name)
      if (known !== undefined && whole.endsWith(';')) return known
      const number = /^#(?:x([0-9a-f]{1,6})|(\d{1,7}))$/i.exec(name)
      const code = number === null ? Number.NaN : number[1] === undefined ? Number(number[2]) : parseInt(number[1], 16)
      if (!whole.endsWith(';') || Number.isNaN(code) || code === 0 || code > 0x10ffff || (code >= 0xd800 && code < 0xe000)) throw this.#broken()
      return String.fromCodePoint(code)
    })
  }

  #broken(): Refusal {
    return damaged(`its part “${this.#part}” is not well-formed XML`)
  }
}

const [LESS, GREATER, SLASH, QUESTION, EXCLAMATION, QUOTE, APOSTROPHE] = [0x3c, 0x3e, 0x2f, 0x3f, 0x21, 0x22, 0x27]
const NAME = /^[^\s/>="'<]+/
const ATTRIBUTE = /\s+([^\s=/>"'<]+)\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/y
const ENTITIES: ReadonlyMap<string, string> = new Map([['lt', '<'], ['gt', '>'], ['amp', '&'], ['quot', '"'], ['apos', "'"]])

const local = (name: string): string => name.slice(name.indexOf(':') + 1)

function past(text: string, mark: string, from: number): number | undefined {
  const at = text.indexOf(mark, from)
  return at < 0 ? undefined : at + mark.length
}

/** To where a text at the end of a piece is whole: a character by its number may be cut in two, and so may a line's end. */
function heldBack(text: string, from: number): number {
  const mark = text.lastIndexOf('&')
  if (mark >= from && mark > text.length - 12 && !text.includes(';', mark)) return mark
  return text.endsWith('\r') ? text.length - 1 : text.length
}
