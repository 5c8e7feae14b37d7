import { parseReference, printAddress } from '../../src/workbook/address.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { isFormula } from '../../src/workbook/document.ts'
import { referencesIn } from '../../src/workbook/formula/references.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { BASIS, ownSheets, type NamedTemplate } from './order.ts'

/**
 * A template's own sheets may refer to each other, and to its basis by names only: in the plant its cells stand elsewhere.
 * @throws WorkbookProblem for the first reference to another sheet.
 */
export function refuseStrayReferences(template: NamedTemplate): void {
  const sheets = ownSheets(template)
  const accepted = new Set(sheets.map(({ name }) => name))
  const refuse = (place: string, text: string) => {
    for (const { reference, token } of referencesIn(tokenise(text))) {
      if (reference.sheet !== null && !accepted.has(reference.sheet)) {
        throw new WorkbookProblem(`template ${template.name}, ${place}: ${token.text} is not on its own sheets; accepted: a defined name for what stands on ${BASIS}`)
      }
    }
  }
  for (const sheet of sheets) {
    eachCell(sheet, ({ content }, row, column) => {
      if (isFormula(content)) refuse(`${sheet.name}!${printAddress(row, column)}`, content)
    })
  }
  for (const { title, bindings } of template.workbook.figures) {
    for (const binding of Object.values(bindings)) refuse(`figure "${title}"`, binding)
  }
  for (const [name, refersTo] of template.workbook.names) {
    if (parseReference(refersTo)?.sheet !== BASIS) refuse(`name ${name}`, refersTo)
  }
}
