import type { FileContents } from './contents.ts'
import { OdsContent } from './ods-content.ts'
import { odsFrozen } from './ods-settings.ts'
import { OdsStyles } from './ods-styles.ts'
import { ACCEPTED, damaged, Refusal } from './refusal.ts'
import { RemarkBook } from './remark-book.ts'
import { readPart, type Parts } from './xlsx-book.ts'
import { readXml } from './xml-events.ts'
import { partText, wholeText } from './zip-part.ts'

/** Whether a package says that it is an OpenDocument file (OpenDocument 1.3, part 2, 3.3). */
export async function isOds(parts: Parts): Promise<boolean> {
  const entry = parts.get('mimetype')
  if (entry === undefined) return parts.has('content.xml') && parts.has('meta-inf/manifest.xml')
  if (entry.size > 200) throw damaged('it does not say what kind of file it is')
  const type = (await wholeText(entry)).trim()
  const kind = /^application\/vnd\.oasis\.opendocument\.([a-z-]+)/.exec(type)?.[1]
  if (kind === undefined) throw new Refusal(`The file is a package of another kind (${type.replace(/\p{Cc}/gu, ' ').slice(0, 60)}), not a spreadsheet. ${ACCEPTED}`)
  if (!/^spreadsheet(-template)?$/.test(kind)) throw new Refusal(`The file is ${kind.startsWith('text') ? 'a text document' : kind.startsWith('presentation') ? 'a presentation' : 'a drawing or something else'}, not a spreadsheet. ${ACCEPTED}`)
  return true
}

/** A spreadsheet after OpenDocument 1.3. Only the parts with cells, styles and views are expanded: macros, objects and pictures never are. */
export async function readOds(parts: Parts, report: (share: number) => void): Promise<FileContents> {
  const [content, common, manifest, settings] = ['content.xml', 'styles.xml', 'meta-inf/manifest.xml', 'settings.xml'].map((name) => parts.get(name))
  if (manifest) {
    await readPart(manifest, {
      open(name) {
        if (name === 'encryption-data') throw new Refusal(`The file is protected by a password. Take the password off in the program that wrote it, then try again. ${ACCEPTED}`)
      },
    })
  }
  if (content === undefined) throw damaged('it has no part with sheets')
  const [remarks, styles] = [new RemarkBook(), new OdsStyles()]
  if (common) await readPart(common, styles)
  const reading = new OdsContent(styles, remarks)
  let done = 0
  await readXml(content.name, partText(content, (bytes) => {
    done += bytes
    report(done / Math.max(1, content.size))
  }), reading)
  if ([...parts.keys()].some((name) => /^(basic|scripts)\//.test(name))) remarks.say('', 'The file has macros. They are neither read nor run.')
  if (reading.sheets.length === 0) throw new Refusal(`The file has no sheet with cells. ${ACCEPTED}`)
  const frozen = settings ? await odsFrozen(settings) : new Map<string, readonly [number, number]>()
  return {
    kind: 'ods', names: reading.names, remarks: remarks.remarks(),
    sheets: reading.sheets.map((sheet) => {
      const lines = frozen.get(sheet.name)
      return lines ? { ...sheet, frozen: lines } : sheet
    }),
  }
}
