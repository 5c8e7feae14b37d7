import { foldCase, type Workbook } from '../../workbook/document.ts'
import { definedNameProblem } from '../../workbook/defined-name.ts'
import type { Found } from './find-changes.ts'
import { formulaBack, type Back } from './formula-back.ts'
import type { FormulasCompared } from './formulas-compared.ts'

/** What differs in defined names. Those that the export leaves out are not missing. */
export function* nameChanges({ names }: Workbook, exported: ReadonlyMap<string, string>, inFile: ReadonlyMap<string, string>, formulas: FormulasCompared, back: Back): Generator<Found> {
  const found = new Map([...inFile].map(([name, refersTo]) => [foldCase(name), refersTo]))
  for (const [name, before] of exported) {
    const now = found.get(foldCase(name))
    found.delete(foldCase(name))
    const place = `the name ${name}`
    const was = names.get(name) ?? before
    if (now === undefined) yield { kind: 'nameRemoved', place, name, was, is: 'gone', refersTo: null, taking: { words: 'Takes the name away; formulas that use it show that it is missing.' } }
    else if (!formulas.same(before, null, now)) yield { kind: 'nameChanged', place, name, was, is: now, ...referring(now, back) }
  }
  for (const [name, now] of inFile) {
    if (!found.has(foldCase(name)) || name.startsWith('_')) continue
    const problem = definedNameProblem(name, names.keys())
    const common = { kind: 'nameAdded' as const, place: `the name ${name}`, name, was: 'no such name', is: now }
    yield problem === undefined ? { ...common, ...referring(now, back) } : { ...common, refersTo: null, taking: { refused: problem } }
  }
}

function referring(text: string, back: Back): { readonly refersTo: string | null; readonly taking: { readonly words: string } | { readonly refused: string } } {
  const content = formulaBack(text, null, back)
  if ('refused' in content) return { refersTo: null, taking: content }
  const refersTo = content.formula.slice(1)
  return { refersTo, taking: { words: `The name means ${refersTo}.` } }
}
