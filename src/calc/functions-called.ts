import { functionByName } from '../../functions/catalogue.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { eachCell } from '../workbook/cells.ts'
import { isFormula, type Workbook } from '../workbook/document.ts'
import { tokenise } from '../workbook/formula/tokenise.ts'

/** The functions of the catalogue that the workbook calls, by name. */
export function functionsCalled({ sheets }: Workbook): FunctionDefinition[] {
  const found = new Set<FunctionDefinition>()
  for (const sheet of sheets) {
    eachCell(sheet, ({ content }) => {
      if (!isFormula(content)) return
      for (const { kind, text } of tokenise(content)) {
        const definition = kind === 'function' ? functionByName(text) : undefined
        if (definition) found.add(definition)
      }
    })
  }
  return [...found].toSorted((one, other) => (one.name < other.name ? -1 : 1))
}
