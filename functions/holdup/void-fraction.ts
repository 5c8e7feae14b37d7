import type { Mixture } from '../lines/two-phase-loss.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'

/** A mixture of which the share `quality` of the mass flow is vapour, 0 to 1. */
export interface TwoPhaseFlow extends Mixture {
  readonly quality: number
}

interface Model {
  /** What the model needs beside quality and properties. */
  readonly needs: readonly ('mass flux' | 'bore')[]
  /** Share of the cross-section that vapour takes; massFlux in kg/(m²·s). Written so that quality 0 and 1 need no exception. */
  readonly share: (flow: TwoPhaseFlow, massFlux: number, boreM: number) => number
  readonly equation: string
}

/** The numbers of the models, shared with their workings. Powers of Butterworth's general form (1975); the rest as in the equations below. */
export const voidConstants = {
  Smith: { entrained: 0.4 },
  Baroczy: { factor: 1, qualityPower: 0.74, densityPower: 0.65, viscosityPower: 0.13 },
  Lockhart: { factor: 0.28, qualityPower: 0.9 * 0.71, densityPower: 0.5 * 0.71, viscosityPower: 0.1 * 0.71 },
  Rouhani: { spread: 0.2 },
  Steiner: { spread: 0.12 },
  drift: 1.18,
  Premoli: {
    first: { factor: 1.578, reynoldsPower: -0.19, densityPower: 0.22 },
    second: { factor: 0.0273, reynoldsPower: -0.51, densityPower: -0.08 },
  },
} as const

/** The models by the names that formulas use. */
export const voidModels = {
  Zivi: {
    needs: [],
    share: (flow) => slipping(flow, Math.cbrt(densityRatio(flow))),
    equation: 'S = (ρL/ρV)^(1/3)',
  },
  homogeneous: {
    needs: [],
    share: (flow) => slipping(flow, 1),
    equation: 'S = 1',
  },
  Chisholm: {
    needs: [],
    share: (flow) => slipping(flow, Math.sqrt(1 - flow.quality * (1 - densityRatio(flow)))),
    equation: 'S = √[1 − x (1 − ρL/ρV)]',
  },
  Smith: {
    needs: [],
    share: (flow) => {
      const { quality: x } = flow
      const { entrained } = voidConstants.Smith
      return slipping(flow, entrained + (1 - entrained) * Math.sqrt((x * densityRatio(flow) + entrained * (1 - x)) / (x + entrained * (1 - x))))
    },
    equation: 'S = 0.4 + 0.6 √{[ρL/ρV + 0.4 (1 − x)/x] / [1 + 0.4 (1 − x)/x]}',
  },
  Baroczy: {
    needs: [],
    share: (flow) => separated(flow, voidConstants.Baroczy),
    equation: 'α = 1/[1 + ((1 − x)/x)^0.74 (ρV/ρL)^0.65 (μL/μV)^0.13]',
  },
  Lockhart: {
    needs: [],
    share: (flow) => separated(flow, voidConstants.Lockhart),
    equation: 'α = 1/(1 + 0.28 X^0.71), X = ((1 − x)/x)^0.9 (ρV/ρL)^0.5 (μL/μV)^0.1',
  },
  Rouhani: {
    needs: ['mass flux'],
    share: (flow, massFlux) => drifting(flow, massFlux, voidConstants.Rouhani),
    equation: 'α = (x/ρV) / {C0 [x/ρV + (1 − x)/ρL] + v/G}, C0 = 1 + 0.2 (1 − x), v = 1.18 (1 − x) [g σ (ρL − ρV)]^0.25 / ρL^0.5',
  },
  Steiner: {
    needs: ['mass flux'],
    share: (flow, massFlux) => drifting(flow, massFlux, voidConstants.Steiner),
    equation: 'as Rouhani with C0 = 1 + 0.12 (1 − x), for horizontal lines',
  },
  Premoli: {
    needs: ['mass flux', 'bore'],
    share: (flow, massFlux, boreM) => slipping(flow, premoliSlip(flow, massFlux, boreM)),
    equation:
      'S = 1 + E1 √max[0, y/(1 + y E2) − y E2], y = x ρL/[(1 − x) ρV], E1 = 1.578 Re^−0.19 (ρL/ρV)^0.22, ' +
      'E2 = 0.0273 We Re^−0.51 (ρL/ρV)^−0.08, Re = G D/μL, We = G² D/(σ ρL)',
  },
} as const satisfies Readonly<Record<string, Model>>

export type VoidModel = keyof typeof voidModels

/**
 * Void fraction α: the share of a line's cross-section that vapour takes, 0 to 1.
 * `massFlux`, kg/(m²·s), and `boreM` count only in the models whose `needs` name them; there they have to be given.
 */
export function voidFraction(model: VoidModel, given: TwoPhaseFlow & { readonly massFlux?: number | undefined; readonly boreM?: number | undefined }): number {
  const { share }: Model = voidModels[model]
  return share(given, given.massFlux ?? NaN, given.boreM ?? NaN)
}

const densityRatio = ({ liquidDensity, vaporDensity }: TwoPhaseFlow): number => liquidDensity / vaporDensity

/** Vapour S times as fast as liquid: α = 1/[1 + S (1 − x)/x ρV/ρL]. */
const slipping = (flow: TwoPhaseFlow, slip: number): number => {
  const vapor = flow.quality * densityRatio(flow)
  return vapor / (vapor + slip * (1 - flow.quality))
}

/** Drift flux: vapour distributed by C0 and rising through the liquid. */
function drifting({ quality, liquidDensity, vaporDensity, surfaceTension }: TwoPhaseFlow, massFlux: number, { spread }: { spread: number }): number {
  const distribution = 1 + spread * (1 - quality)
  const drift = (voidConstants.drift * (1 - quality) * (STANDARD_GRAVITY * surfaceTension * (liquidDensity - vaporDensity)) ** 0.25) / Math.sqrt(liquidDensity)
  const vapor = quality / vaporDensity
  return vapor / (distribution * (vapor + (1 - quality) / liquidDensity) + drift / massFlux)
}

export interface Powers {
  readonly factor: number
  readonly qualityPower: number
  readonly densityPower: number
  readonly viscosityPower: number
}

/** Powers of quality, density and viscosity ratio (the general form of Butterworth, 1975). */
const separated = (flow: TwoPhaseFlow, { factor, qualityPower, densityPower, viscosityPower }: Powers): number =>
  1 /
  (1 +
    factor *
      ((1 - flow.quality) / flow.quality) ** qualityPower *
      densityRatio(flow) ** -densityPower *
      (flow.liquidViscosity / flow.vaporViscosity) ** viscosityPower)

function premoliSlip(flow: TwoPhaseFlow, massFlux: number, boreM: number): number {
  const reynolds = (massFlux * boreM) / flow.liquidViscosity
  const weber = (massFlux ** 2 * boreM) / (flow.surfaceTension * flow.liquidDensity)
  const [e1, e2] = [voidConstants.Premoli.first, voidConstants.Premoli.second]
  const first = e1.factor * reynolds ** e1.reynoldsPower * densityRatio(flow) ** e1.densityPower
  const second = e2.factor * weber * reynolds ** e2.reynoldsPower * densityRatio(flow) ** e2.densityPower
  const vaporToLiquid = (flow.quality * densityRatio(flow)) / (1 - flow.quality)
  return 1 + first * Math.sqrt(Math.max(0, 1 / (1 / vaporToLiquid + second) - vaporToLiquid * second))
}
