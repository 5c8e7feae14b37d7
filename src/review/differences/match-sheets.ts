import { foldCase, isFormula, type Sheet, type Workbook } from '../../workbook/document.ts'
import { eachCell } from '../../workbook/cells.ts'

/** The same sheet in both workbooks. */
export interface MatchedSheets {
  readonly before: Sheet
  readonly now: Sheet
}

/** At least this part of what stands on them in common, and sheets of other names are the same sheet. */
const ENOUGH = 0.5

/** Which sheet is which, in the order of the workbook now: by name, and by what stands on it where the name is another. */
export function matchSheets(before: Workbook, now: Workbook): MatchedSheets[] {
  const named = new Map(before.sheets.map((sheet) => [foldCase(sheet.name), sheet]))
  const found = new Map<Sheet, Sheet>()
  for (const sheet of now.sheets) {
    const same = named.get(foldCase(sheet.name))
    if (same) found.set(sheet, same)
  }
  const taken = new Set(found.values())
  const left = before.sheets.filter((sheet) => !taken.has(sheet)).map((sheet) => ({ sheet, texts: textsOf(sheet) }))
  const candidates = now.sheets.filter((sheet) => !found.has(sheet)).flatMap((sheet) => {
    const texts = textsOf(sheet)
    return left.map((one) => ({ before: one.sheet, now: sheet, share: common(one.texts, texts) })).filter(({ share }) => share >= ENOUGH)
  })
  // The same from either side: of pairs that are as much alike, the names decide.
  const names = (one: MatchedSheets): string => [one.before.name, one.now.name].toSorted().join('\u0001')
  for (const one of candidates.toSorted((a, b) => b.share - a.share || (names(a) < names(b) ? -1 : 1))) {
    if (found.has(one.now) || taken.has(one.before)) continue
    found.set(one.now, one.before)
    taken.add(one.before)
  }
  return now.sheets.flatMap((sheet) => {
    const same = found.get(sheet)
    return same ? [{ before: same, now: sheet }] : []
  })
}

/** What stands on a sheet: texts, and of formulas what stays when references move. */
function textsOf(sheet: Sheet): ReadonlySet<string> {
  const texts = new Set<string>()
  eachCell(sheet, ({ content }) => {
    if (isFormula(content)) texts.add(content.toUpperCase().replace(/\$?[A-Z]{1,3}\$?[0-9]+/g, '@'))
    else if (content !== null) texts.add(`${typeof content}${String(content)}`)
  })
  return texts
}

function common(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  const most = Math.max(one.size, other.size)
  if (most === 0) return 1
  let same = 0
  for (const text of one) if (other.has(text)) same++
  return same / most
}
