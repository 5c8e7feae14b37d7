import { MAX_COLUMNS, MAX_ROWS } from '../../workbook/limits.ts'
import { readPart } from './xlsx-book.ts'
import type { ZipEntry } from './zip-directory.ts'

/** Rows and columns that stay in view, by sheet: mode 2 in the view settings that programs keep (OpenDocument 1.3, part 3, 3.10). */
export async function odsFrozen(entry: ZipEntry): Promise<ReadonlyMap<string, readonly [rows: number, columns: number]>> {
  const found = new Map<string, readonly [number, number]>()
  const items = new Map<string, string>()
  let [sheet, item]: [string | undefined, string | undefined] = [undefined, undefined]
  await readPart(entry, {
    open(name, attributes) {
      if (name === 'config-item-map-entry') {
        const own = attributes.get('config:name')
        if (own !== undefined) {
          sheet = own
          items.clear()
        }
      } else if (name === 'config-item') item = attributes.get('config:name')
    },
    text(text) {
      if (item !== undefined && WANTED.has(item)) items.set(item, `${items.get(item) ?? ''}${text}`.slice(0, 20))
    },
    close(name) {
      if (name === 'config-item') item = undefined
      if (name !== 'config-item-map-entry' || sheet === undefined) return
      const split = (side: string, most: number): number => {
        const at = Number(items.get(`${side}SplitPosition`))
        return items.get(`${side}SplitMode`) === '2' && Number.isInteger(at) && at > 0 ? Math.min(at, most) : 0
      }
      const lines = [split('Vertical', MAX_ROWS), split('Horizontal', MAX_COLUMNS)] as const
      if (lines[0] + lines[1] > 0) found.set(sheet, lines)
      sheet = undefined
    },
  })
  return found
}

const WANTED: ReadonlySet<string> = new Set(['HorizontalSplitMode', 'VerticalSplitMode', 'HorizontalSplitPosition', 'VerticalSplitPosition'])
