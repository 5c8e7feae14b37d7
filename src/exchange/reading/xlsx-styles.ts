import { MAX_STYLES } from './limits.ts'
import { BUILT_IN_FORMATS } from './number-formats.ts'
import { tooLarge } from './refusal.ts'
import { readPart } from './xlsx-book.ts'
import type { ZipEntry } from './zip-directory.ts'

/** The number format's code of each cell format (ECMA-376, part 1, 18.8.10); undefined for General. */
export async function readFormats(entry: ZipEntry): Promise<readonly (string | undefined)[]> {
  const codes = new Map(BUILT_IN_FORMATS)
  const formats: (string | undefined)[] = []
  let inCellFormats = false
  await readPart(entry, {
    open(name, attributes) {
      if (name === 'numFmt') {
        codes.set(Number(attributes.get('numFmtId')), (attributes.get('formatCode') ?? '').slice(0, MAX_CODE))
        if (codes.size > MAX_STYLES) throw tooLarge(`it has more than ${MAX_STYLES} number formats`, `up to ${MAX_STYLES}`)
      } else if (name === 'cellXfs') inCellFormats = true
      else if (name === 'xf' && inCellFormats) {
        formats.push(meaning(codes.get(Number(attributes.get('numFmtId') ?? 0))))
        if (formats.length > MAX_STYLES) throw tooLarge(`it has more than ${MAX_STYLES} cell formats`, `up to ${MAX_STYLES}`)
      }
    },
    close(name) {
      if (name === 'cellXfs') inCellFormats = false
    },
  })
  return formats
}

/** Characters of a format's code: other programs stop at 255. */
const MAX_CODE = 1000

const meaning = (code: string | undefined): string | undefined => (code === undefined || code === '' || /^general$/i.test(code) ? undefined : code)
