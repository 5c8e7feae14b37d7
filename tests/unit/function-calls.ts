import type { FunctionDefinition } from '../../functions/define.ts'
import { isFault, type Fault } from '../../functions/fault.ts'
import type { Given } from '../../functions/given.ts'

/** Calls of functions by name; a test that asks for one there is not has a mistake of its own. */
export function callsOf(definitions: readonly FunctionDefinition[]) {
  const call = (name: string, ...given: readonly Given[]) => {
    const definition = definitions.find((one) => one.name === name)
    if (definition === undefined) throw new Error(`no function ${name}`)
    return definition.call(given)
  }
  /** The fault that a call gives. */
  const fault = (name: string, ...given: readonly Given[]): Fault => {
    const result = call(name, ...given)
    if (!isFault(result)) throw new Error(`${name} gave ${String(result)}, not a fault`)
    return result
  }
  return { call, fault }
}
