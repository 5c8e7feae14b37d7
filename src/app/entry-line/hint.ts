import { argumentLabel } from '../../../functions/define.ts'
import { functionByName } from '../../../functions/catalogue.ts'
import { calls, type Call } from '../../workbook/formula/calls.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import { standardByName } from './standard-signatures.ts'

export interface Hint {
  readonly name: string
  readonly gives: string
  readonly parts: readonly HintPart[]
}

export interface HintPart {
  readonly label: string
  /** What it means; none for the arguments of standard functions, whose `accepts` says it. */
  readonly words?: string
  /** What is accepted: dimension and range, from the definition. */
  readonly accepts: string
  readonly optional: boolean
  /** The caret stands in this argument. */
  readonly current: boolean
  /** Of a block: what stands in its rows, in order. */
  readonly rows: readonly HintRow[]
}

export interface HintRow {
  readonly name: string
  readonly words: string
  readonly accepts: string
}

/** The function whose arguments the caret stands in, innermost of those that are known, with the argument at hand marked. */
export function hintAt(formula: string, caret: number): Hint | undefined {
  for (const call of callsAround(formula, caret)) {
    const known = own(call.name) ?? standardFunction(call.name)
    if (!known) continue
    const at = argumentAt(call, caret)
    const current = known.repeats ? Math.min(at, known.parts.length - 1) : at
    return { name: known.name, gives: known.gives, parts: known.parts.map((part, index) => ({ ...part, current: index === current })) }
  }
  return undefined
}

/** The calls in whose brackets the caret stands, from the innermost outwards. */
export function callsAround(formula: string, caret: number): Call[] {
  if (!formula.startsWith('=')) return []
  return calls(tokenise(formula))
    .filter(({ name, start, end, closed }) => caret > start + name.length && (closed ? caret < end : caret <= end))
    .toSorted((one, other) => other.depth - one.depth)
}

/** Which argument of the call the caret stands in, from 0. */
export const argumentAt = (call: Call, caret: number): number => Math.max(0, call.arguments.findIndex(({ start, end }) => caret >= start && caret <= end))

interface Known extends Omit<Hint, 'parts'> {
  readonly parts: readonly Omit<HintPart, 'current'>[]
  readonly repeats: boolean
}

function own(name: string): Known | undefined {
  const definition = functionByName(name)
  return definition && {
    name: definition.name, gives: definition.gives, repeats: false,
    parts: Object.entries(definition.arguments).map(([key, { words, accepts, optional, rows }]) => ({
      label: argumentLabel(key), words, accepts, optional, rows: rows.map((row) => ({ name: row.name, words: row.words, accepts: row.accepts })),
    })),
  }
}

function standardFunction(name: string): Known | undefined {
  const signature = standardByName(name)
  return signature && { ...signature, parts: signature.arguments.map((argument) => ({ ...argument, rows: [] })) }
}
