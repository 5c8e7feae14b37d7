import { ACCEPTED, Refusal } from './refusal.ts'

/**
 * What a file is by its content, whatever its name says.
 * @throws Refusal with what it is, where that is known and not accepted
 */
export function fileKind(bytes: Uint8Array): 'package' | 'text' {
  if (bytes.length === 0) throw new Refusal(`The file is empty. ${ACCEPTED}`)
  const head = latin(bytes, 0, 4096)
  if (head.startsWith('PK\u0003\u0004') || head.startsWith('PK\u0005\u0006')) return 'package'
  if (head.startsWith('\u00d0\u00cf\u0011\u00e0\u00a1\u00b1\u001a\u00e1')) throw new Refusal(compoundProblem(bytes))
  for (const [start, what, withZeros] of BEGINNINGS) {
    if (head.startsWith(start) && !(withZeros && !head.includes('\0'))) throw new Refusal(`The file is ${what}, not a spreadsheet. ${ACCEPTED}`)
  }
  const isUtf16 = head.startsWith('\u00ff\u00fe') || head.startsWith('\u00fe\u00ff')
  const start = head.replace(/^\u00ef\u00bb\u00bf/, '').trimStart()
  if (/^\{\s*"lowside"/.test(start)) throw new Refusal('The file is a workbook of Lowside. Open it, instead of importing it.')
  if (/^<(!doctype html|html|head|body|table)\b/i.test(start)) throw new Refusal(`The file is a web page, whatever its name says. Save it as a spreadsheet in the program that wrote it. ${ACCEPTED}`)
  if (/^<(\?xml|[a-z]+:|[a-z]+ xmlns)/i.test(start)) throw new Refusal(`The file is XML outside a package. Save it as .xlsx or .ods in the program that wrote it. ${ACCEPTED}`)
  if (/^(\{\s*("|\})|\[\s*[{["\]])/.test(start)) throw new Refusal(`The file is data in JSON, not a table. ${ACCEPTED}`)
  if (start.startsWith('{\\rtf')) throw new Refusal(`The file is a text document, not a spreadsheet. ${ACCEPTED}`)
  if (!isUtf16 && !looksUtf16(head) && holdsBinary(bytes)) throw new Refusal(`The file holds binary data and is no kind of file that can be read here. ${ACCEPTED}`)
  return 'text'
}

/** UTF-16 without a mark: of the first characters of western writing, every other byte is zero. */
export function looksUtf16(head: string): 'le' | 'be' | undefined {
  const length = Math.min(head.length, 1024) & ~1
  if (length < 4) return undefined
  let [even, odd] = [0, 0]
  for (let at = 0; at < length; at += 2) {
    if (head.charCodeAt(at) === 0) even++
    if (head.charCodeAt(at + 1) === 0) odd++
  }
  if (odd > length * 0.35 && even === 0) return 'le'
  return even > length * 0.35 && odd === 0 ? 'be' : undefined
}

/** Bytes as characters of the same number. */
export function latin(bytes: Uint8Array, from: number, to: number): string {
  let text = ''
  for (const byte of bytes.subarray(from, to)) text += String.fromCharCode(byte)
  return text
}

/** How files of other kinds begin; a few letters are a sign of one only where zero bytes follow, as in no text. */
const BEGINNINGS: readonly (readonly [start: string, what: string, withZeros?: true])[] = [
  ['%PDF-', 'a PDF document'], ['\u0089PNG', 'a picture'], ['\u00ff\u00d8\u00ff', 'a picture'], ['GIF8', 'a picture'], ['BM', 'a picture', true], ['RIFF', 'a picture, sound or film', true],
  ['II*', 'a picture', true], ['MM\0*', 'a picture'], ['\u001f\u008b', 'a compressed archive'], ['7z\u00bc\u00af', 'a compressed archive'], ['Rar!', 'a compressed archive'], ['BZh', 'a compressed archive', true],
  ['\u00fd7zXZ', 'a compressed archive'], ['MZ', 'a program', true], ['\u007fELF', 'a program'], ['\t\0\x04\0', 'a spreadsheet in an old binary form'], ['\t\x02\x06\0', 'a spreadsheet in an old binary form'],
  ['\t\x04\x06\0', 'a spreadsheet in an old binary form'], ['\t\x08', 'a spreadsheet in an old binary form', true], ['SQLite format 3', 'a database'],
]

/** Compound files hold the old binary spreadsheets, and what is encrypted with a password; names of their streams are in UTF-16. */
function compoundProblem(bytes: Uint8Array): string {
  const text = new TextDecoder('utf-16le').decode(bytes.subarray(0, Math.min(bytes.length & ~1, COMPOUND_SEARCHED)))
  const tail = new TextDecoder('utf-16le').decode(bytes.subarray(Math.max(0, (bytes.length - COMPOUND_SEARCHED) & ~1), bytes.length & ~1))
  const holds = (name: string): boolean => text.includes(name) || tail.includes(name)
  if (holds('EncryptedPackage')) return `The file is protected by a password. Take the password off in the program that wrote it, then try again. ${ACCEPTED}`
  if (holds('WordDocument')) return `The file is a text document in an old binary form, not a spreadsheet. ${ACCEPTED}`
  return `The file is in an old binary form (such as .xls), which is not read. Save it as .xlsx or .ods in the program that wrote it. ${ACCEPTED}`
}

const COMPOUND_SEARCHED = 4_000_000

/** Zero bytes, and control characters that no text has. */
function holdsBinary(bytes: Uint8Array): boolean {
  let odd = 0
  for (const byte of bytes) {
    if (byte === 0) return true
    if (byte < 0x20 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 12 && byte !== 26) odd++
  }
  return odd * 50 > bytes.length
}
