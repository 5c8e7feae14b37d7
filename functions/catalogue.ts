import { saturationDefinitions } from './ammonia/saturation-definitions.ts'
import { circulationFunctions } from './circulation/circulation-definitions.ts'
import type { FunctionDefinition } from './define.ts'
import { flowDefinitions } from './flow/flow-definitions.ts'
import { headDefinitions } from './head/head-definitions.ts'
import { holdupFunctions } from './holdup/holdup-definitions.ts'
import { vesselFunctions } from './holdup/vessel-definitions.ts'
import { lossDefinitions } from './lines/loss-definitions.ts'
import { pipeDefinitions } from './lines/pipe-definitions.ts'
import { reliefFunctions } from './relief/relief-definitions.ts'
import { separationFunctions } from './separation/definitions.ts'
import { siteDefinitions } from './site/site-definitions.ts'
import { valveFunctions } from './valves/valves-definitions.ts'

/** Every function of the workbook, in the order of the guide. Registration, hints, guide, errors and export all derive from this list. */
export const catalogue: readonly FunctionDefinition[] = [
  ...siteDefinitions,
  ...saturationDefinitions,
  ...flowDefinitions,
  ...separationFunctions,
  ...headDefinitions,
  ...circulationFunctions,
  ...vesselFunctions,
  ...holdupFunctions,
  ...pipeDefinitions,
  ...lossDefinitions,
  ...valveFunctions,
  ...reliefFunctions,
]

const byName = new Map(catalogue.map((definition) => [definition.name, definition]))

/** The definition of that name, whatever its capitals. */
export const functionByName = (name: string): FunctionDefinition | undefined => byName.get(name) ?? byName.get(name.toUpperCase())
