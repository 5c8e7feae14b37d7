import { choice, optional } from '../arguments.ts'
import type { Source } from '../define.ts'

/**
 * Drag coefficient of a rigid sphere for its Reynolds number, law by law. `Haider`, `Clift` and `Cheng` hold to Re 200 000;
 * `Stokes` below about Re 1 only, above which it lets the sphere fall too fast.
 */
export const dragLaws = {
  Haider: (reynolds) => (24 / reynolds) * (1 + 0.1806 * reynolds ** 0.6459) + 0.4251 / (1 + 6880.95 / reynolds),
  Clift: (reynolds) => (24 / reynolds) * (1 + 0.152 * reynolds ** 0.677) + 0.417 / (1 + 5070 * reynolds ** -0.94),
  Cheng: (reynolds) => (24 / reynolds) * (1 + 0.27 * reynolds) ** 0.43 + 0.47 * (1 - Math.exp(-0.04 * reynolds ** 0.38)),
  Stokes: (reynolds) => 24 / reynolds,
} as const satisfies Readonly<Record<string, (reynolds: number) => number>>

export type DragLaw = keyof typeof dragLaws

export const DRAG_EQUATIONS =
  'Haider: C = 24/Re (1 + 0.1806 Re^0.6459) + 0.4251/(1 + 6880.95/Re); ' +
  'Clift: C = 24/Re (1 + 0.152 Re^0.677) + 0.417/(1 + 5070 Re^−0.94); ' +
  'Cheng: C = 24/Re (1 + 0.27 Re)^0.43 + 0.47 (1 − exp(−0.04 Re^0.38)); ' +
  'Stokes: C = 24/Re'

export const DRAG_SOURCES: readonly Source[] = [
  { cite: 'Haider and Levenspiel, Powder Technology 58, 63 (1989): drag of a sphere to Re 200 000', confidence: 'confirmed' },
  { cite: 'Clift and Gauvin (1970): drag of a sphere to Re 200 000', confidence: 'confirmed' },
  { cite: 'Cheng, Powder Technology 189, 395 (2009): drag of a sphere to Re 200 000', confidence: 'confirmed' },
  { cite: 'Stokes (1851): drag of a sphere below about Re 1', confidence: 'common practice' },
]

export const STOKES_CAUTION =
  'Stokes’ law holds below about Re 1. It is there for comparison: at 20 °F it lets a droplet of 150 µm fall 2.2 times too fast and one of 300 µm four times.'

export const lawArgument = optional(
  choice('law of the droplet’s drag', Object.keys(dragLaws) as DragLaw[]), // the keys are the laws
  'Haider',
  '"Haider"',
)
