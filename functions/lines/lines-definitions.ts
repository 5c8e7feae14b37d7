import type { FunctionDefinition } from '../define.ts'
import { lossDefinitions } from './loss-definitions.ts'
import { pipeDefinitions } from './pipe-definitions.ts'

/** Pipe volume, bore and sizes (group "Liquid holdup and charge"), then the lines of the group "Lines and valves", in the order of the guide. */
export const lineFunctions: readonly FunctionDefinition[] = [...pipeDefinitions, ...lossDefinitions]
