import { catalogue, functionByName } from '../../../functions/catalogue.ts'
import { findUnit, units, type Dimension, type Unit } from '../../../functions/units/units.ts'
import { normaliseUnitText } from '../../../functions/units/spelling.ts'
import { quoteSheetName } from '../../workbook/address.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Extent } from '../../workbook/formula/calls.ts'
import { tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import type { Typed } from './cycling.ts'
import { argumentAt, callsAround } from './hint.ts'
import { standardSignatures } from './standard-signatures.ts'

export interface Suggestion {
  /** What is written in place of the token. */
  readonly insert: string
  readonly label: string
  readonly words: string
}

/** What could stand at the caret. */
export interface Completion {
  /** What a chosen suggestion takes the place of. */
  readonly extent: Extent
  /** Best first; never empty. */
  readonly suggestions: readonly Suggestion[]
  /** What is typed means something as it stands: Enter then enters it rather than taking a suggestion. */
  readonly isComplete: boolean
}

export interface Surroundings {
  readonly workbook: Pick<Workbook, 'sheets' | 'names'>
  /** A unit cell is being typed; the dimension of the unit that stood there comes first. */
  readonly unitCell: boolean
  readonly dimension: Dimension | undefined
}

const MOST = 12

export function completionAt({ text, caret }: Typed, surroundings: Surroundings): Completion | undefined {
  if (!text.startsWith('=')) return surroundings.unitCell ? unitOfCell(text, caret, surroundings.dimension) : undefined
  const token = tokenise(text).find(({ start, end }) => start < caret && caret <= end)
  if (!token) return undefined
  if (token.kind === 'string') return insideText(text, caret, token)
  if (token.kind === 'unknown' && token.text.startsWith("'") && text[token.start - 1] !== "'") return ofSheets(text, caret, token, surroundings.workbook)
  return (token.kind === 'name' || token.kind === 'function') && caret === token.end ? ofWord(text, token, surroundings.workbook) : undefined
}

/** The text with the suggestion in place of its token, the caret after it; nothing outside of the token changes. */
export function accept(text: string, { extent }: Completion, { insert }: Suggestion): Typed {
  const after = text.slice(extent.end)
  // The bracket or quote that is there already is stepped over, not written twice.
  const closer = insert.slice(-1)
  const there = ['(', '"', '!'].includes(closer) && after.startsWith(closer)
  const written = there ? insert.slice(0, -1) : insert
  return { text: text.slice(0, extent.start) + written + after, caret: extent.start + insert.length }
}

function completion(extent: Extent, typed: string, suggestions: readonly Suggestion[], isComplete: boolean): Completion | undefined {
  const fitting = ranked(typed, suggestions).slice(0, MOST)
  const [only] = fitting
  if (only === undefined || (fitting.length === 1 && isComplete)) return undefined
  return { extent, suggestions: fitting, isComplete }
}

/** Those that begin with what is typed, then those with a word in them that does, in their own order. */
function ranked(typed: string, suggestions: readonly Suggestion[]): Suggestion[] {
  const folded = normaliseUnitText(typed).toLowerCase()
  const rank = ({ label }: Suggestion): number => {
    const text = normaliseUnitText(label).toLowerCase()
    if (text === folded) return 0
    if (text.startsWith(folded)) return 1
    return folded !== '' && text.split(/[^\p{L}\p{N}]+/u).some((word) => word.startsWith(folded)) ? 2 : 3
  }
  return [0, 1, 2].flatMap((place) => suggestions.filter((one) => rank(one) === place))
}

function ofWord(text: string, { start, end, text: typed }: Token, workbook: Surroundings['workbook']): Completion | undefined {
  const suggestions: Suggestion[] = [
    ...catalogue.map(({ name, gives }) => ({ insert: `${name}(`, label: name, words: gives })),
    ...[...workbook.names].map(([name, refersTo]) => ({ insert: name, label: name, words: `name of ${refersTo}` })),
    ...workbook.sheets.map(({ name }) => ({ insert: `${quoteSheetName(name)}!`, label: name, words: 'sheet' })),
    ...standardSignatures.map(({ name, gives }) => ({ insert: `${name}(`, label: name, words: gives })),
  ]
  const folded = typed.toLowerCase()
  const isName = [...workbook.names.keys()].some((name) => name.toLowerCase() === folded)
  const isCall = text[end] === '(' && (functionByName(typed) !== undefined || standardSignatures.some(({ name }) => name.toLowerCase() === folded))
  return completion({ start, end }, typed, suggestions, isName || isCall)
}

function ofSheets(text: string, caret: number, { start }: Token, { sheets }: Surroundings['workbook']): Completion | undefined {
  const typed = text.slice(start + 1, caret).replaceAll("''", "'")
  return completion({ start, end: caret }, typed, sheets.map(({ name }) => ({ insert: `${quoteSheetName(name)}!`, label: name, words: 'sheet' })), false)
}

/** A text in quotes, where it is an argument that takes a unit, a quantity or one of a few words. */
function insideText(text: string, caret: number, token: Token): Completion | undefined {
  const isClosed = token.problem === undefined
  if (isClosed && caret === token.end) return undefined
  const [call] = callsAround(text, token.start)
  const definition = call && functionByName(call.name)
  const argument = call && definition && Object.values(definition.arguments)[argumentAt(call, token.start)]
  if (!argument) return undefined
  const from = token.start + 1
  // Without its closing quote the text runs on over what follows: only what stands before the caret is meant.
  const end = isClosed ? token.end - 1 : caret
  if (argument.kind === 'choice') {
    return completion({ start: from, end }, text.slice(from, caret), argument.choices.map((choice) => ({ insert: `${choice}"`, label: choice, words: '' })), argument.choices.includes(text.slice(from, end)))
  }
  const offset = argument.kind === 'unit' ? 0 : argument.kind === 'quantity' || argument.kind === 'number' ? afterNumber(text.slice(from, caret)) : undefined
  if (offset === undefined) return undefined
  const fitting = argument.dimensions.length === 0 ? units : units.filter(({ dimension }) => argument.dimensions.includes(dimension))
  const start = from + offset
  const typed = text.slice(start, caret)
  if (typed === '' && argument.dimensions.length === 0) return undefined
  return completion({ start, end }, typed, fitting.map((one) => ({ ...unitSuggestion(one), insert: `${one.code}"` })), fitting.some((one) => one === findUnit(typed)))
}

/** Where the unit begins that follows a number; undefined before the number is there. */
const afterNumber = (text: string): number | undefined => /^\s*[+\-−]?(?:\d+\.?\d*|\.\d+)(?:[eE][+\-−]?\d+)?\s*/.exec(text)?.[0].length

const unitSuggestion = ({ code, dimension, gauge }: Unit): Suggestion => ({ insert: code, label: code, words: gauge ? `${dimension}, from the atmosphere` : dimension })

function unitOfCell(text: string, caret: number, dimension: Dimension | undefined): Completion | undefined {
  if (text.trim() === '' || caret !== text.length) return undefined
  const first = units.filter((one) => one.dimension === dimension)
  return completion({ start: 0, end: text.length }, text, [...first, ...units.filter((one) => !first.includes(one))].map(unitSuggestion), findUnit(text) !== undefined)
}
