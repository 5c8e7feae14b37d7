import { areaOf, parseReference } from '../../src/workbook/address.ts'
import { foldCase } from '../../src/workbook/document.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { BASIS, type NamedTemplate } from './order.ts'

/**
 * The names of all templates. A name on the basis is where the template `basis` has it.
 * @throws WorkbookProblem for a name that would mean two places, or that the basis lacks or has in another shape.
 */
export function joinNames(templates: readonly NamedTemplate[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>()
  const givenBy = new Map<string, string>()
  const basis = templates.find(({ name }) => name === 'basis')
  for (const { name: template, workbook } of templates) {
    for (const [name, refersTo] of workbook.names) {
      const taken = givenBy.get(foldCase(name))
      if (template !== 'basis' && isOnBasis(refersTo)) {
        refuseUnlikeBasis(template, name, refersTo, basis?.workbook.names.get(name))
      } else if (taken !== undefined) {
        throw new WorkbookProblem(`the name ${name} is given by the templates ${taken} and ${template}; accepted: one place for a name`)
      } else {
        names.set(name, refersTo)
        givenBy.set(foldCase(name), template)
      }
    }
  }
  return names
}

const isOnBasis = (refersTo: string): boolean => parseReference(refersTo)?.sheet === BASIS

function refuseUnlikeBasis(template: string, name: string, refersTo: string, inBasis: string | undefined): void {
  if (inBasis === undefined) throw new WorkbookProblem(`template ${template} reads the name ${name} on its ${BASIS}, which the template basis does not give`)
  if (shapeOf(refersTo) !== shapeOf(inBasis)) {
    throw new WorkbookProblem(`the name ${name} is ${refersTo} in template ${template} and ${inBasis} in basis; accepted: the same shape in both`)
  }
}

/** How long a list is differs from basis to basis; whether it is a list, a quantity or a cell must not. */
function shapeOf(refersTo: string): string {
  const reference = parseReference(refersTo)
  if (reference === undefined) return refersTo
  const { top, bottom, left, right } = areaOf(reference)
  return `${bottom > top ? 'list' : 'line'} of ${right - left + 1}`
}
