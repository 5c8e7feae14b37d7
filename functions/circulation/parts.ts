import type { Dimension } from '../units/units.ts'
import type { Balance } from './balance.ts'

/** What of the balance each part that CIRCULATION.PART gives is, and how it is measured. */
export const PARTS = {
  'driving head': ['drivingHeadPa', 'pressure'],
  'leg loss': ['legLossPa', 'pressure'],
  'coil friction': ['coilFrictionPa', 'pressure'],
  'coil acceleration': ['coilAccelerationPa', 'pressure'],
  'coil column': ['coilColumnPa', 'pressure'],
  'return friction': ['returnFrictionPa', 'pressure'],
  'return column': ['returnColumnPa', 'pressure'],
  'leg velocity': ['legVelocity', 'velocity'],
  'return velocity': ['returnVelocity', 'velocity'],
  'fed flow': ['fedFlowKgPerS', 'mass flow'],
} as const satisfies Readonly<Record<string, readonly [keyof Balance, Dimension]>>

export type Part = keyof typeof PARTS

export const partNames = Object.keys(PARTS) as readonly Part[] // the keys are the parts
