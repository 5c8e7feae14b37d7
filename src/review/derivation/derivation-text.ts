import { functionByName } from '../../../functions/catalogue.ts'
import { argumentLabel } from '../../../functions/define.ts'
import { printCellPlace } from '../../workbook/cell-place.ts'
import { areaText } from './area-text.ts'
import type { CellsOfSheet, Derivation, Step } from './derivation.ts'
import { whereWords } from './where.ts'
import { shownEqualities, shownWords } from './shown-lines.ts'

export interface TextOptions {
  /** Ranges and rows with every row, not only in a line. */
  readonly unfold?: boolean
}

/** A derivation as lines of plain text: what is given, then step after step. */
export function derivationText(derivation: Derivation, { unfold = false }: TextOptions = {}): readonly string[] {
  const { title, caseWords, steps, results, noPart, cut } = derivation
  const given = steps.filter(({ formula }) => formula === undefined)
  const computed = steps.filter(({ formula }) => formula !== undefined)
  const functions = functionsOf(derivation)
  return [
    `${title}: derivation of ${results.map((number) => resultWords(steps[number - 1])).join('; ')}`,
    ...(caseWords === undefined ? [] : [`Case: ${caseWords}`]),
    '',
    `Given${given.length === 0 ? ': nothing' : ''}`,
    ...given.flatMap((step) => givenLines(step, unfold)),
    '',
    'Steps',
    ...computed.flatMap((step, at) => [...(step.place.sheet === computed[at - 1]?.place.sheet ? [] : [`— ${step.place.sheet} —`]), ...stepLines(step, results.includes(step.number), unfold)]),
    ...(functions.length === 0 ? [] : ['', 'Functions', ...functions.flatMap(functionLines)]),
    ...besideLines('No part in these numbers (branches and rows not taken)', noPart),
    ...(cut > 0 ? [`${cut} references were not gone into: a derivation has up to ${steps.length} steps. Derive one of its steps to see more.`] : []),
  ]
}

/** The functions of the catalogue that steps call, each once, in the order of the steps. */
export const functionsOf = ({ steps }: Derivation): readonly string[] => [...new Set(steps.flatMap((step) => step.functions))]

const resultWords = (step: Step | undefined): string => (step === undefined ? '' : `${step.label} (${printCellPlace(step.place)})`)

function givenLines(step: Step, unfold: boolean): string[] {
  return [
    `[${step.number}] ${areaText(step.cells)}  ${step.label}: ${step.value}${aside(step)}`,
    ...step.remarks.map(remarkLine),
    ...noteLines(step),
    ...rowLines(step, unfold),
  ]
}

function stepLines(step: Step, isResult: boolean, unfold: boolean): string[] {
  const { formula } = step
  return [
    `[${step.number}] ${areaText(step.cells)}  ${step.label}${isResult ? ' – result' : ''}: ${step.value}${aside(step)}`,
    ...shownWords(step).map((words) => `      = ${words}`),
    ...equalityLines(step),
    ...(formula?.reasons.map((reason) => `      ${reason}`) ?? []),
    ...(formula?.wheres.map((where) => `      where ${whereWords(where)}`) ?? []),
    ...(step.error === undefined ? [] : [`      error: ${step.error}`]),
    ...(step.circular ? ['      hangs on itself: follow the references in a circle'] : []),
    ...step.functions.flatMap((name) => `      ${name}: ${functionByName(name)?.equation ?? ''}`),
    ...step.remarks.map(remarkLine),
    ...noteLines(step),
    ...(formula === undefined ? [] : [`      ${formula.raw}`]),
    ...rowLines(step, unfold),
  ]
}

function equalityLines(step: Step): string[] {
  return shownEqualities(step).map((line, at) => `      = ${line}${at === 0 && step.kind !== 'computed' ? `   (the first, ${printCellPlace(step.formula?.at ?? step.place)})` : ''}`)
}

/** Each function once: what it gives, within which ranges, by whom, and what to mind. */
function functionLines(name: string): string[] {
  const definition = functionByName(name)
  if (definition === undefined) return []
  return [
    `${name}: ${definition.gives}`,
    `      ${definition.equation}`,
    ...Object.entries(definition.arguments).filter(([, { kind }]) => kind !== 'unit').map(([key, { words, accepts }]) => `      ${argumentLabel(key)}: ${words}; accepted: ${accepts}`),
    ...definition.sources.map(({ cite, confidence }) => `      Source: ${cite} [${confidence}]`),
    ...(definition.cautions ?? []).map((caution) => `      Caution: ${caution}`),
  ]
}

const remarkLine = ({ heading, text }: { readonly heading: string | undefined; readonly text: string }): string => `      ${heading ?? 'Remark'}: ${text}`

function noteLines({ note, passedOn }: Step): string[] {
  return [
    ...(note === undefined ? [] : [`      Note: ${note}`]),
    ...(passedOn.length === 0 ? [] : [`      passed on at ${passedOn.map(({ place, value }) => `${printCellPlace(place)} (${value})`).join(', ')}`]),
  ]
}

/** What is to be known of a value beside it. */
export function aside({ tolerance, base, standing }: Pick<Step, 'tolerance' | 'base' | 'standing'>): string {
  const said = [...(tolerance === undefined ? [] : [tolerance]), ...(base === undefined ? [] : [`base: ${base}`]), ...standing.map((one) => (one === 'practice' ? 'common practice, to be confirmed' : 'from memory, to be confirmed'))]
  return said.length === 0 ? '' : ` (${said.join('; ')})`
}

function rowLines({ rows, count }: Step, unfold: boolean): string[] {
  if (!unfold || rows.length === 0) return []
  return [
    ...rows.map(({ place, label, value, line }) => `        ${printCellPlace(place)}  ${label}: ${line === undefined || line === value ? value : `${line} = ${value}`}`),
    ...(count > rows.length ? [`        and ${count - rows.length} more`] : []),
  ]
}

const besideLines = (heading: string, cells: readonly CellsOfSheet[]): string[] => (cells.length === 0 ? [] : ['', `${heading}: ${cells.map(areaText).join(', ')}`])
