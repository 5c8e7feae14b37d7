import { choice, optional } from '../arguments.ts'
import type { Source } from '../define.ts'
import { byName, type Expression } from '../workings/expression.ts'

// The coefficients of each law, as its equation below has them from left to right.
const haider = { a: 0.1806, b: 0.6459, c: 0.4251, d: 6880.95 }
const clift = { a: 0.152, b: 0.677, c: 0.417, d: 5070, e: 0.94 }
const cheng = { a: 0.27, b: 0.43, c: 0.47, d: 0.04, e: 0.38 }

/**
 * Drag coefficient of a rigid sphere for its Reynolds number, law by law. `Haider`, `Clift` and `Cheng` hold to Re 200 000;
 * `Stokes` below about Re 1 only, above which it lets the sphere fall too fast.
 */
export const dragLaws = {
  Haider: (reynolds) => (24 / reynolds) * (1 + haider.a * reynolds ** haider.b) + haider.c / (1 + haider.d / reynolds),
  Clift: (reynolds) => (24 / reynolds) * (1 + clift.a * reynolds ** clift.b) + clift.c / (1 + clift.d * reynolds ** -clift.e),
  Cheng: (reynolds) => (24 / reynolds) * (1 + cheng.a * reynolds) ** cheng.b + cheng.c * (1 - Math.exp(-cheng.d * reynolds ** cheng.e)),
  Stokes: (reynolds) => 24 / reynolds,
} as const satisfies Readonly<Record<string, (reynolds: number) => number>>

export type DragLaw = keyof typeof dragLaws

/** The drag coefficient by the law of a name, in workings; `reynolds` is a cell. */
export const dragCoefficient = (law: Expression, reynolds: Expression): Expression =>
  byName(law, {
    Haider: `24/${reynolds}*(1+${haider.a}*${reynolds}^${haider.b})+${haider.c}/(1+${haider.d}/${reynolds})`,
    Clift: `24/${reynolds}*(1+${clift.a}*${reynolds}^${clift.b})+${clift.c}/(1+${clift.d}/${reynolds}^${clift.e})`,
    Cheng: `24/${reynolds}*(1+${cheng.a}*${reynolds})^${cheng.b}+${cheng.c}*(1-1/EXP(${cheng.d}*${reynolds}^${cheng.e}))`,
    Stokes: `24/${reynolds}`,
  } satisfies Record<DragLaw, Expression>)

export const DRAG_EQUATIONS =
  `Haider: C = 24/Re (1 + ${haider.a} Re^${haider.b}) + ${haider.c}/(1 + ${haider.d}/Re); ` +
  `Clift: C = 24/Re (1 + ${clift.a} Re^${clift.b}) + ${clift.c}/(1 + ${clift.d} Re^−${clift.e}); ` +
  `Cheng: C = 24/Re (1 + ${cheng.a} Re)^${cheng.b} + ${cheng.c} (1 − exp(−${cheng.d} Re^${cheng.e})); ` +
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
