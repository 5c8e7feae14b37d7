import { argumentLabel, type FunctionDefinition } from '../../../functions/define.ts'
import { functionByName } from '../../../functions/catalogue.ts'
import { calls } from '../../workbook/formula/calls.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'

export interface Hint {
  readonly definition: FunctionDefinition
  readonly parts: readonly HintPart[]
}

export interface HintPart {
  readonly label: string
  readonly accepts: string
  readonly optional: boolean
  /** The caret stands in this argument. */
  readonly current: boolean
}

/** The function of the catalogue whose arguments the caret stands in, innermost first. */
export function hintAt(formula: string, caret: number): Hint | undefined {
  if (!formula.startsWith('=')) return undefined
  const around = calls(tokenise(formula)).filter(({ name, start, end, closed }) => caret > start + name.length && (closed ? caret < end : caret <= end))
  const innermost = around.toSorted((one, other) => other.depth - one.depth).find(({ name }) => functionByName(name))
  const definition = innermost && functionByName(innermost.name)
  if (!innermost || !definition) return undefined
  const place = innermost.arguments.findIndex(({ start, end }) => caret >= start && caret <= end)
  return {
    definition,
    parts: Object.entries(definition.arguments).map(([key, { accepts, optional }], index) => ({
      label: argumentLabel(key), accepts, optional, current: index === Math.max(0, place),
    })),
  }
}
