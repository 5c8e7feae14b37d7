import { foldCase } from '../../workbook/document.ts'
import { definedNameProblem } from '../../workbook/defined-name.ts'
import { LETTERS } from '../../workbook/address.ts'
import { MAX_NAMES } from '../../workbook/limits.ts'
import { sheetNameProblem } from '../../workbook/sheet-name.ts'
import type { FileContents, Remark } from '../reading/contents.ts'
import { translateName, type ImportedNames } from './foreign-formula.ts'

const LONGEST_SHEET_NAME = 31
const LONGEST_NAME = 255

/** A sheet's name that a workbook accepts and that is none of `taken`, as near to the wanted one as may be. */
export function acceptableSheetName(wanted: string, taken: readonly string[]): string {
  const plain = [...wanted].map((character) => (character < ' ' || character === '\u007f' ? ' ' : character)).join('')
    .replace(/[[\]:*?/\\]+/g, ' ').replace(/\s+/g, ' ').trim().replace(/^'+|'+$/g, '')
  const stem = shortened(plain, LONGEST_SHEET_NAME) || 'Sheet'
  return firstFree(stem, LONGEST_SHEET_NAME, ' ', (name) => sheetNameProblem(name, taken) === undefined)
}

/** A defined name that a workbook accepts and that is none of `taken`. */
export function acceptableName(wanted: string, taken: readonly string[]): string {
  const plain = wanted.replace(new RegExp(`[^${LETTERS}0-9_.]+`, 'g'), '_')
  const isFree = (name: string): boolean => definedNameProblem(name, taken) === undefined && !taken.some((other) => other === name)
  const stem = definedNameProblem(plain) === undefined ? plain : shortened(`_${plain}`, LONGEST_NAME)
  return firstFree(stem, LONGEST_NAME, '_', isFree)
}

function firstFree(stem: string, longest: number, gap: string, isFree: (name: string) => boolean): string {
  if (isFree(stem)) return stem
  for (let number = 2; ; number++) {
    const ending = `${gap}${number}`
    const name = shortened(stem, longest - ending.length) + ending
    if (isFree(name)) return name
  }
}

/** No half of a character is left at the end. */
const shortened = (text: string, length: number): string => text.slice(0, length).replace(/[\s\ud800-\udbff']+$/, '')

/** What the sheets and names of a file are called in the workbook that takes them, and what is to be told of it. */
export function importedNames(
  { sheets, names }: FileContents, chosen: ReadonlySet<number>, target: { readonly sheets: readonly string[]; readonly names: readonly string[] },
): { readonly called: ImportedNames; readonly names: ReadonlyMap<string, string>; readonly sheetNames: ReadonlyMap<number, string>; readonly remarks: readonly (Remark & { readonly isLoss: boolean })[] } {
  const remarks: (Remark & { readonly isLoss: boolean })[] = []
  const taken = [...target.sheets]
  const sheetNames = new Map<number, string>()
  const sheetsByFold = new Map<string, string>()
  for (const [position, { name }] of sheets.entries()) {
    if (!chosen.has(position)) continue
    const called = acceptableSheetName(name, taken)
    taken.push(called)
    sheetNames.set(position, called)
    // Of two that differ in capitals only, formulas mean the first.
    if (!sheetsByFold.has(foldCase(name))) sheetsByFold.set(foldCase(name), called)
    if (called !== name) remarks.push({ place: called, words: `called ${JSON.stringify(name)} in the file; formulas follow`, isLoss: false })
  }
  const otherSheets = new Set(sheets.filter((_, position) => !chosen.has(position)).map(({ name }) => foldCase(name)))
  const forSheets: ImportedNames = { sheets: sheetsByFold, otherSheets, names: new Map(), lostNames: new Map() }

  const kept = new Map<string, string>()
  const called = new Map<string, string>()
  const lost = new Map<string, string>()
  const takenNames = [...target.names]
  for (const [written, refersTo] of names) {
    // What a program keeps for itself, such as the area to print.
    if (/^_xlnm\.|^_xlfn|^_xlpm\./i.test(written)) continue
    const translated = translateName(refersTo, forSheets)
    const reason = 'reason' in translated ? translated.reason : takenNames.length >= MAX_NAMES ? `a workbook has up to ${MAX_NAMES} names` : undefined
    if (reason !== undefined || 'reason' in translated) {
      lost.set(foldCase(written), reason ?? '')
      remarks.push({ place: '', words: `the name ${written} is not brought in: ${reason ?? ''}`, isLoss: true })
      continue
    }
    const name = acceptableName(written, takenNames)
    takenNames.push(name)
    kept.set(name, translated.refersTo)
    called.set(foldCase(written), name)
    if (name !== written) remarks.push({ place: '', words: `the name ${written} of the file is called ${name} here; formulas follow`, isLoss: false })
  }
  return { called: { ...forSheets, names: called, lostNames: lost }, names: kept, sheetNames, remarks }
}
