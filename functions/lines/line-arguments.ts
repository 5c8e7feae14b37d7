import { optional, quantity, quantityOf } from '../arguments.ts'
import { findUnit } from '../units/units.ts'
import { STEEL_ROUGHNESS_M } from './friction.ts'

const PLANTS = 'the lines of refrigerating plants'

export const boreArgument = quantity('length', 'inside diameter of the pipe (PIPE.BORE gives that of a nominal size)', { min: 0.001, max: 2, limit: PLANTS })

export const lengthArgument = (words: string) => quantity('length', words, { min: 0, max: 10_000, limit: PLANTS })

export const massFlowArgument = (words: string) => quantityOf(['mass flow'], words, { min: 0, max: 1000, limit: PLANTS })

// Non-null: the foot stands in the table of units.
export const roughnessArgument = optional(
  quantityOf(['length'], 'roughness of the pipe’s inside', { min: 0, max: 0.1, limit: 'at most 0.05 of the bore, where Moody’s chart ends' }),
  { si: STEEL_ROUGHNESS_M, unit: findUnit('ft')! },
  '0.00015 ft, commercial steel,',
)
