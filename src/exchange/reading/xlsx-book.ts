import { partText } from './zip-part.ts'
import type { ZipEntry } from './zip-directory.ts'
import { readXml, type XmlReader } from './xml-events.ts'
import { damaged, tooLarge } from './refusal.ts'
import { MAX_PARTS, MAX_READ_SHEETS } from './limits.ts'
import { MAX_NAMES, MAX_TEXT } from '../../workbook/limits.ts'

export type Parts = ReadonlyMap<string, ZipEntry>

/** Where a part points to: by id, the part's name in lower case and the last word of the relationship's type. */
export type Relations = ReadonlyMap<string, { readonly type: string; readonly target: string; readonly external: boolean }>

export interface BookSheet {
  readonly name: string
  readonly relation: string
  readonly hidden: boolean
}

export interface BookName {
  readonly name: string
  readonly text: string
  /** Number of the only sheet that it holds on. */
  readonly sheet: number | undefined
}

export interface Book {
  readonly sheets: readonly BookSheet[]
  readonly names: readonly BookName[]
  /** Days are counted from 1904-01-01 (ECMA-376, part 1, 18.2.28). */
  readonly from1904: boolean
  readonly hasLinks: boolean
}

export const readPart = (entry: ZipEntry, reader: XmlReader): Promise<void> => readXml(entry.name, partText(entry), reader)

/** The relationships of a part (ECMA-376, part 2, 6.5); none where it has no such part. */
export async function relations(parts: Parts, part: string): Promise<Relations> {
  const slash = part.lastIndexOf('/')
  const entry = parts.get(`${part.slice(0, slash + 1)}_rels/${part.slice(slash + 1)}.rels`)
  const found = new Map<string, { type: string; target: string; external: boolean }>()
  if (entry === undefined) return found
  await readPart(entry, {
    open(name, attributes) {
      if (name !== 'Relationship') return
      const [id, type, target] = [attributes.get('Id'), attributes.get('Type'), attributes.get('Target')]
      if (id === undefined || type === undefined || target === undefined) return
      const external = attributes.get('TargetMode') === 'External'
      if (found.size >= MAX_PARTS) throw tooLarge(`the part “${entry.name}” points to more than ${MAX_PARTS} others`, `up to ${MAX_PARTS}`)
      found.set(id, { type: type.slice(type.lastIndexOf('/') + 1), target: external ? '' : resolved(part, target), external })
    },
  })
  return found
}

/** The workbook part (ECMA-376, part 1, 18.2). */
export async function readBook(entry: ZipEntry): Promise<Book> {
  const [sheets, names]: [BookSheet[], BookName[]] = [[], []]
  let [from1904, hasLinks, isBook] = [false, false, false]
  let name: { readonly name: string; readonly sheet: number | undefined; text: string } | undefined
  await readPart(entry, {
    open(element, attributes) {
      if (element === 'workbook') isBook = true
      else if (element === 'workbookPr') from1904 = isTrue(attributes.get('date1904'))
      else if (element === 'externalReference') hasLinks = true
      else if (element === 'sheet') {
        const relation = [...attributes].find(([key]) => key.endsWith(':id'))?.[1] ?? ''
        sheets.push({ name: attributes.get('name') ?? '', relation, hidden: (attributes.get('state') ?? 'visible') !== 'visible' })
        if (sheets.length > MAX_READ_SHEETS) throw tooLarge(`it has more than ${MAX_READ_SHEETS} sheets`, `up to ${MAX_READ_SHEETS}`)
      } else if (element === 'definedName') {
        const sheet = attributes.get('localSheetId')
        name = { name: attributes.get('name') ?? '', sheet: sheet === undefined ? undefined : Number(sheet), text: '' }
      }
    },
    text(text) {
      if (name && name.text.length <= MAX_TEXT) name.text += text
    },
    close(element) {
      if (element !== 'definedName' || !name) return
      names.push(name)
      name = undefined
      if (names.length > MAX_NAMES + MAX_READ_SHEETS * 3) throw tooLarge(`it has more than ${MAX_NAMES} names`, `up to ${MAX_NAMES}`)
    },
  })
  if (!isBook) throw damaged('its part for the workbook holds none')
  return { sheets, names, from1904, hasLinks }
}

export const isTrue = (text: string | undefined): boolean => text === '1' || text === 'true'

/** A target as the name of a part, in lower case: relative to the part that points to it, or from the root. */
function resolved(part: string, target: string): string {
  const steps = target.startsWith('/') ? [] : part.split('/').slice(0, -1)
  for (const step of target.replaceAll('\\', '/').split('/')) {
    if (step === '..') steps.pop()
    else if (step !== '' && step !== '.') steps.push(step)
  }
  return steps.join('/').toLowerCase()
}
