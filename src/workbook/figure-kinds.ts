import type { Dimension } from '../../functions/units/units.ts'

/**
 * What a part of a figure is bound to. A quantity is a value cell with its unit cell, or a value cell alone whose unit stands beside it or at the
 * head of its table; lists run along a column or a row, and several columns of value and unit are read row by row.
 */
export type PartContent = 'text' | 'texts' | 'number' | 'numbers' | 'quantity' | 'quantities' | 'truths'

export interface FigurePart {
  /** What it is, for the panel, messages and the table beside the drawing. */
  readonly label: string
  readonly holds: PartContent
  /** Of quantities. */
  readonly dimension?: Dimension
  /** Without it there is no drawing. */
  readonly required?: true
}

export interface FigureOption {
  readonly label: string
  /** The first is taken where nothing is said. */
  readonly accepted: readonly string[]
}

export interface FigureKindDescription {
  readonly label: string
  /** One line for whoever chooses a kind. */
  readonly shows: string
  readonly parts: Readonly<Record<string, FigurePart>>
  readonly options: Readonly<Record<string, FigureOption>>
}

const SITE: FigurePart = { label: 'Atmospheric pressure of the site, for gauge units', holds: 'quantity', dimension: 'pressure' }

/** Every kind of figure: its parts in the order in which a panel asks for them. */
export const FIGURE_KINDS = {
  drum: {
    label: 'Drum section',
    shows: 'a surge drum in section, with its levels, floats and connections to scale',
    parts: {
      diameter: { label: 'Inside diameter', holds: 'quantity', dimension: 'length', required: true },
      length: { label: 'Tangent length', holds: 'quantity', dimension: 'length', required: true },
      heads: { label: 'Heads', holds: 'text', required: true },
      level: { label: 'Level of the liquid drawn', holds: 'quantity', dimension: 'length', required: true },
      levels: { label: 'Heights of the levels marked', holds: 'quantities', dimension: 'length' },
      levelNames: { label: 'Names of the levels marked', holds: 'texts' },
      operatingFloat: { label: 'Height of the operating float', holds: 'quantity', dimension: 'length' },
      highFloat: { label: 'Height of the high float', holds: 'quantity', dimension: 'length' },
      returns: { label: 'Number of wet returns', holds: 'number' },
      travel: { label: 'Distance from wet return to dry suction', holds: 'quantity', dimension: 'length' },
      returnSize: { label: 'Inside diameter of the wet return', holds: 'quantity', dimension: 'length' },
      suctionSize: { label: 'Inside diameter of the dry suction', holds: 'quantity', dimension: 'length' },
      legSize: { label: 'Inside diameter of the liquid leg', holds: 'quantity', dimension: 'length' },
      drainSize: { label: 'Inside diameter of the oil drain', holds: 'quantity', dimension: 'length' },
    },
    options: { position: { label: 'Drum', accepted: ['horizontal', 'vertical'] } },
  },
  zones: {
    label: 'Zone ladder',
    shows: 'each zone from room through coil and drum down to house suction, in temperature and pressure',
    parts: {
      names: { label: 'Names of the zones', holds: 'texts', required: true },
      room: { label: 'Room temperatures', holds: 'quantities', dimension: 'temperature', required: true },
      coil: { label: 'Coil temperatures', holds: 'quantities', dimension: 'temperature' },
      drum: { label: 'Drum temperatures', holds: 'quantities', dimension: 'temperature', required: true },
      suction: { label: 'House suction, one for all or one a zone', holds: 'quantities', dimension: 'temperature', required: true },
      feasible: { label: 'Whether each zone is served', holds: 'truths' },
      pressures: { label: 'Drum pressures, whose unit the pressure scale takes', holds: 'quantities', dimension: 'pressure' },
      site: SITE,
    },
    options: {},
  },
  circulation: {
    label: 'Circulation balance',
    shows: 'driving head against losses over the circulation number, with the points where they meet',
    parts: {
      number: { label: 'Circulation numbers of the curves', holds: 'numbers', required: true },
      driving: { label: 'Driving head, one or one a circulation number', holds: 'quantities', dimension: 'pressure', required: true },
      losses: { label: 'Losses at full load', holds: 'quantities', dimension: 'pressure', required: true },
      partLosses: { label: 'Losses at part load', holds: 'quantities', dimension: 'pressure' },
      operating: { label: 'Circulation number at full load', holds: 'number' },
      partOperating: { label: 'Circulation number at part load', holds: 'number' },
    },
    options: {},
  },
  charge: {
    label: 'Charge bars',
    shows: 'charge by part, zone or type as bars, with the total against thresholds',
    parts: {
      names: { label: 'Names; rows of one name are added up', holds: 'texts', required: true },
      amounts: { label: 'Charge in operation', holds: 'quantities', dimension: 'mass', required: true },
      maximums: { label: 'Maximum intended charge', holds: 'quantities', dimension: 'mass' },
      thresholds: { label: 'Thresholds', holds: 'quantities', dimension: 'mass' },
      thresholdNames: { label: 'Names of the thresholds', holds: 'texts' },
      thresholdWords: { label: 'Trigger words of the thresholds', holds: 'texts' },
    },
    options: {},
  },
  setPoints: {
    label: 'Set points',
    shows: 'regulator set point against room temperature, a point a zone',
    parts: {
      names: { label: 'Names of the zones', holds: 'texts' },
      room: { label: 'Room temperatures', holds: 'quantities', dimension: 'temperature', required: true },
      setPoints: { label: 'Set points', holds: 'quantities', dimension: 'pressure', required: true },
      suction: { label: 'House suction', holds: 'quantity', dimension: 'temperature' },
      site: SITE,
    },
    options: {},
  },
  saturation: {
    label: 'Saturation curve',
    shows: 'the saturation curve of ammonia with the levels of the plant on it',
    parts: {
      names: { label: 'Names of the levels', holds: 'texts', required: true },
      levels: { label: 'Saturation temperatures of the levels', holds: 'quantities', dimension: 'temperature', required: true },
      pressures: { label: 'Pressures, whose unit the scale takes', holds: 'quantities', dimension: 'pressure' },
      site: SITE,
    },
    options: {},
  },
} as const satisfies Readonly<Record<string, FigureKindDescription>>

export type FigureKind = keyof typeof FIGURE_KINDS

export const figureKinds = Object.keys(FIGURE_KINDS) as readonly FigureKind[]

export const isFigureKind = (kind: string): kind is FigureKind => Object.hasOwn(FIGURE_KINDS, kind)

/** A kind's description with its parts and options by any name. */
export const figureKind = (kind: FigureKind): FigureKindDescription => FIGURE_KINDS[kind]
