import type { Vessel } from '../../functions/holdup/vessel.ts'

/** A height above the lowest inside point. */
export interface Height {
  readonly name: string
  readonly heightM: number
  readonly shown: string
}

export interface Connection {
  readonly is: 'return' | 'suction' | 'leg' | 'drain'
  readonly name: string
  /** Inside; undefined where its size is not known. */
  readonly diameterM?: number
  readonly shown?: string
}

export type Connections = readonly Connection[]

/** What a drum is drawn from. Every height lies in the drum. */
export interface DrumData {
  readonly vessel: Vessel
  readonly level: Height
  readonly levels: readonly Height[]
  readonly floats: readonly Height[]
  readonly connections: Connections
  readonly travelM: number
  readonly lengthShown: string
  readonly diameterShown: string
  readonly remarks: readonly string[]
}
