import type { FunctionDefinition, Source } from '../../functions/define.ts'
import { element, type Html } from '../pages/html.ts'
import { listing } from '../pages/listing.ts'

/** What the workbook computes with: each function with its equation, then the sources and limits that several of them share, each once. */
export function methodsPart(methods: readonly FunctionDefinition[]): readonly Html[] {
  const sources = [...new Map(methods.flatMap((method) => method.sources).map((source) => [sourceInWords(source), source])).keys()]
  const numberOf = (source: Source): number => sources.indexOf(sourceInWords(source)) + 1
  const rows = methods.map(({ name, gives, equation, sources: own }) =>
    element(
      'tr', {}, element('td', {}, name), element('td', {}, gives), element('td', {}, equation),
      element('td', {}, own.map(numberOf).toSorted((one, other) => one - other).join(', ')),
    ))
  return [
    listing('Methods', 'methods', ['Function', 'Gives', 'Equation', 'Sources'], rows),
    element('h2', {}, 'Sources of the methods'),
    element('ol', { class: 'sources' }, sources.map((words) => element('li', {}, words))),
    ...limitsPart(methods),
  ]
}

const sourceInWords = ({ cite, confidence }: Source): string => `${cite} [${confidence}]`

function limitsPart(methods: readonly FunctionDefinition[]): readonly Html[] {
  const namesByCaution = new Map<string, string[]>()
  for (const { name, cautions = [] } of methods) {
    for (const caution of cautions) namesByCaution.set(caution, [...(namesByCaution.get(caution) ?? []), name])
  }
  if (namesByCaution.size === 0) return []
  return [
    element('h2', {}, 'Limits of the methods'),
    element('ul', { class: 'sources' }, [...namesByCaution].map(([caution, names]) => element('li', {}, element('b', {}, `${names.join(', ')}: `), caution))),
  ]
}
