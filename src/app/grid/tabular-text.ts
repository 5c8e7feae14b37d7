/**
 * A rectangle of cells as tab-separated text, as other programs put it on the clipboard: rows end with a line break,
 * a cell with a tab, a line break or a quotation mark at its start stands in quotation marks, those within doubled.
 */
export function printTabular(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => row.map(quoted).join('\t')).join('\r\n')
}

/** The rectangle that tab-separated text stands for; a line break at the end closes the last row and begins none. */
export const parseTabular = (text: string): string[][] => [...tabularRows(text)].map(({ cells }) => cells)

export interface TabularRow {
  readonly cells: string[]
  /** Where the next row begins. */
  readonly end: number
}

/** Row by row, so that a long text can be read with pauses. */
export function* tabularRows(text: string): Generator<TabularRow> {
  let row: string[] = []
  let place = 0
  while (place <= text.length) {
    const cell = text[place] === '"' ? quotedCell(text, place) : plainCell(text, place)
    row.push(cell.content)
    place = cell.end
    if (text[place] === '\t') {
      place++
      continue
    }
    place += text.startsWith('\r\n', place) ? 2 : 1
    yield { cells: row, end: Math.min(place, text.length) }
    row = []
    if (place >= text.length) return
  }
}

interface Found {
  readonly content: string
  readonly end: number
}

const quoted = (content: string): string => (/[\t\r\n]|^"/.test(content) ? `"${content.replaceAll('"', '""')}"` : content)

function plainCell(text: string, start: number): Found {
  let end = start
  while (end < text.length && !isBreak(text[end])) end++
  return { content: text.slice(start, end), end }
}

/** Text after the closing mark, or a missing closing mark, means that the mark was part of the text. */
function quotedCell(text: string, start: number): Found {
  let content = ''
  let place = start + 1
  for (;;) {
    const mark = text.indexOf('"', place)
    if (mark < 0) return plainCell(text, start)
    content += text.slice(place, mark)
    if (text[mark + 1] !== '"') {
      const end = mark + 1
      return end >= text.length || isBreak(text[end]) ? { content: content.replaceAll('\r\n', '\n'), end } : plainCell(text, start)
    }
    content += '"'
    place = mark + 2
  }
}

const isBreak = (character: string | undefined): boolean => character === '\t' || character === '\n' || character === '\r'
