import type { FunctionDefinition } from '../define.ts'
import { demisterFactor } from './demister.ts'
import { dropletDiameter, dropletVelocity } from './droplet.ts'
import { liquidArea, vaporArea } from './drum-area.ts'
import { drumDiameter } from './drum-diameter.ts'
import { drumTravel } from './drum-travel.ts'
import { separationFactor, separationVelocity } from './souders-brown.ts'

/** The group "Vapour–liquid separation", in the order of the guide. */
export const separationFunctions: readonly FunctionDefinition[] = [
  dropletVelocity, dropletDiameter, separationVelocity, separationFactor, demisterFactor, drumDiameter, liquidArea, vaporArea, drumTravel,
]
