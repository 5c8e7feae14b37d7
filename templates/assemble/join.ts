import type { Workbook } from '../../src/workbook/document.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { normalAcceptances } from '../../src/workbook/review/review-edit.ts'
import { sheetNameProblem } from '../../src/workbook/sheet-name.ts'
import { joinCautions } from './cautions.ts'
import { joinNames } from './names.ts'
import { ownSheets, type NamedTemplate } from './order.ts'
import { refuseStrayReferences } from './stray-references.ts'

/**
 * The templates as one workbook: the own sheets of each in turn, the names, figures and accepted findings of all, one sheet of cautions at the end.
 * @throws WorkbookProblem where they do not fit together: a sheet or a name twice, a reference past a name, a basis without what is read from it.
 */
export function joinTemplates(templates: readonly NamedTemplate[], title: string, purpose: string): Workbook {
  for (const template of templates) refuseStrayReferences(template)
  const sheets = templates.flatMap((template) => ownSheets(template))
  sheets.forEach(({ name }, index) => {
    const problem = sheetNameProblem(name, sheets.slice(0, index).map((sheet) => sheet.name))
    if (problem !== undefined) throw new WorkbookProblem(`templates: ${problem}`)
  })
  return {
    title, purpose,
    sheets: [...sheets, joinCautions(templates.map(({ workbook }) => workbook))],
    names: joinNames(templates),
    figures: templates.flatMap(({ workbook }) => workbook.figures),
    ...acceptedIn(templates),
  }
}

/** What came accepted with the own sheets of each. */
function acceptedIn(templates: readonly NamedTemplate[]): Pick<Workbook, 'review'> {
  const accepted = templates.flatMap((template) => {
    const names = new Set(ownSheets(template).map(({ name }) => name))
    return (template.workbook.review?.accepted ?? []).filter(({ sheet }) => names.has(sheet))
  })
  return accepted.length === 0 ? {} : { review: { marks: [], accepted: normalAcceptances(accepted), record: [] } }
}
