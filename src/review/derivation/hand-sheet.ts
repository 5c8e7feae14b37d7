import { functionByName } from '../../../functions/catalogue.ts'
import { argumentLabel } from '../../../functions/define.ts'
import { columnLetters } from '../../workbook/address.ts'
import { printCellPlace, type CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, sheetByName } from '../../workbook/document.ts'
import { WorkbookProblem } from '../../workbook/problem.ts'
import type { Survey } from '../survey.ts'
import type { Derivation, Step } from './derivation.ts'
import { derive } from './derive.ts'
import { formulaLines, type FunctionCall } from './formula-lines.ts'
import { surveySource } from './formula-source.ts'
import { functionSteps, type FunctionStep } from './function-steps.ts'
import { printedNumber } from './cell-words.ts'
import { shownEqualities } from './shown-lines.ts'

/** What is given goes by letters, so that nobody takes it for a line: A, B, …, Z, AA. */
export const givenLetter = (at: number): string => columnLetters(at)

/** One result to be computed by hand, with what it takes and what the program has on the way. */
export interface HandSheet {
  readonly title: string
  readonly caseWords: string | undefined
  readonly sought: Step
  /** What it is computed from: inputs, and upstream results taken as they are. */
  readonly given: readonly Step[]
  readonly equations: readonly HandEquation[]
  readonly lines: readonly HandLine[]
}

export interface HandEquation {
  /** The function, or nothing where the formula itself is meant. */
  readonly name: string | undefined
  readonly gives: string | undefined
  readonly equation: string
  /** What stands for what. */
  readonly symbols: readonly { readonly name: string; readonly words: string }[]
  readonly sources: readonly string[]
}

export interface HandLine {
  /** From 1. */
  readonly number: number
  readonly what: string
  /** The same with what was computed before called by its line, so that it gives nothing away. */
  readonly blind: string
  readonly how?: string
  readonly value: string
}

/** @throws WorkbookProblem where the cell computes nothing */
export function handSheet(survey: Survey, place: CellPlace): HandSheet {
  const sheet = sheetByName(survey.workbook, place.sheet)
  const content = sheet?.rows[place.row]?.[place.column]?.content
  const tree = isFormula(content) ? survey.tree(content) : undefined
  if (sheet === undefined || tree === undefined) throw new WorkbookProblem(`${printCellPlace(place)} holds no formula: there is nothing to compute by hand; choose a result or a check`)
  const derivation = derive(survey, [place])
  const sought = derivation.steps.find(({ number }) => derivation.results.includes(number))
  if (sought === undefined) throw new WorkbookProblem(`${printCellPlace(place)} has no derivation`)
  const given = givenSteps(derivation, sought)
  const lettered = (text: string): string => text.replace(/ \[(\d+)\]/g, (_, number: string) => {
    const at = given.findIndex((step) => step.number === Number(number))
    return at < 0 ? '' : ` [${givenLetter(at)}]`
  })
  const { calls } = formulaLines(tree, {
    source: surveySource(survey, sheet, place), print: (value, at) => printedNumber(survey, value, at), nameOf: printCellPlace, rangeName: () => 'the range',
  })
  return {
    title: derivation.title, caseWords: derivation.caseWords, sought,
    given,
    equations: equationsOf(sought, calls, lettered),
    lines: numbered(linesOf(sought, calls).map((line) => ({ ...line, what: lettered(line.what) }))),
  }
}

const givenSteps = ({ steps }: Derivation, { uses }: Step): readonly Step[] => uses.flatMap((number) => steps[number - 1] ?? [])

function equationsOf(sought: Step, calls: readonly FunctionCall[], lettered: (text: string) => string): readonly HandEquation[] {
  const own: HandEquation = { name: undefined, gives: undefined, equation: `${sought.label} = ${lettered(sought.formula?.words ?? '')}`, symbols: [], sources: sought.remarks.map(({ heading, text }) => `${heading ?? 'Remark'}: ${text}`) }
  const names = [...new Set(calls.map(({ definition }) => definition.name))].filter((name) => name !== 'UNIT.CONVERT')
  return [own, ...names.flatMap((name): HandEquation[] => {
    const definition = functionByName(name)
    if (definition === undefined) return []
    return [{
      name, gives: definition.gives, equation: definition.equation,
      symbols: Object.entries(definition.arguments).filter(([, { kind }]) => kind !== 'unit').map(([key, { words }]) => ({ name: argumentLabel(key), words })),
      sources: definition.sources.map(({ cite, confidence }) => `${cite} [${confidence}]`),
    }]
  })]
}

type Line = Omit<HandLine, 'number' | 'blind'>

/** What is converted and computed on the way, each before what it stands in, and last the result. */
function linesOf(sought: Step, calls: readonly FunctionCall[]): readonly Line[] {
  const lines: Line[] = []
  const told = new Set<FunctionCall>()
  const add = (line: Line): void => {
    if (!lines.some(({ what, value }) => what === line.what && value === line.value)) lines.push(line)
  }
  /** What a function does on the way to what it comes to; whether that was told in SI already. */
  const addCall = (phrase: string, comes: string): boolean => {
    const call = calls.find((one) => one.phrase === phrase && !told.has(one))
    if (call === undefined || call.definition.name === 'UNIT.CONVERT') return false
    told.add(call)
    const steps = functionSteps(call)
    const last = steps.at(-1)
    const isSame = last?.label === RESULT && last.value === comes
    for (const step of isSame ? steps.slice(0, -1) : steps) add({ ...functionLine(step), ...(step.label === RESULT ? { what: `${phrase}, in SI` } : {}) })
    return last?.label === RESULT && !isSame
  }
  for (const { what, comes } of sought.formula?.wheres ?? []) {
    if (comes === undefined) continue
    const isInSi = addCall(what, comes)
    add({ what: isInSi ? `converted to ${unitIn(comes)}` : isNumber(what) ? `${what}, in ${unitIn(comes)}` : what, value: comes })
  }
  const equalities = shownEqualities(sought)
  for (const [at, line] of equalities.slice(0, -1).entries()) {
    const value = equalities[at + 1] ?? sought.value
    const isInSi = addCall(line, value)
    lines.push({ what: at > 0 || isInSi ? `converted to ${unitIn(value)}` : line, value })
  }
  // A result that is but looked up or passed on still has its line.
  if (equalities.length < 2) lines.push({ what: sought.formula?.words ?? sought.label, value: sought.value })
  return lines
}

const RESULT = 'result'
const functionLine = ({ label, how, value, isGiven }: FunctionStep): Line => ({ what: isGiven ? `${label}, in ${unitIn(value)}` : label, value, ...(how === undefined ? {} : { how }) })
const isNumber = (what: string): boolean => /^-?[\d.]+(?:e-?\d+)?(?: \S+)?(?: with the atmosphere at .*)?$/.test(what)

/** The unit of a number with its unit. */
const unitIn = (value: string): string => value.replace(/^[-\d.e]+ ?/, '') || 'a plain number'

function numbered(lines: readonly Line[]): readonly HandLine[] {
  const known: { readonly value: string; readonly number: number }[] = []
  return lines.map((line, at) => {
    let blind = line.what
    for (const { value, number } of known.toSorted((one, other) => other.value.length - one.value.length)) blind = replaced(blind, value, `(line ${number})`)
    // A bare whole number may stand for anything.
    if (/^-?\d+\.\d|^-?\d+ \S/.test(line.value)) known.push({ value: line.value, number: at + 1 })
    return { ...line, number: at + 1, blind }
  })
}

/** Each place where the value stands by itself, not as a part of a longer number. */
function replaced(text: string, value: string, by: string): string {
  const escaped = value.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  return text.replace(new RegExp(`(?<![\\d.])${escaped}(?![\\d.\\w/])`, 'g'), by)
}
