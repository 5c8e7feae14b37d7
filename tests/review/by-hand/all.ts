import type { Workbook } from '../../../src/workbook/document.ts'
import { chargeAsTyped } from './charge-as-typed.ts'
import { chargeByHand } from './charge.ts'
import { compressorByHand } from './compressor.ts'
import { drumByHand } from './drum.ts'
import { regulatorsByHand } from './regulators.ts'
import { reliefByHand } from './relief.ts'
import { staticHeadByHand } from './static-head.ts'
import { suctionLineByHand } from './suction-line.ts'

/** Small workbooks of engineers who began with an empty sheet; their numbers are invented, and nothing is wrong with them. */
export const BY_HAND: readonly Workbook[] = [
  drumByHand, suctionLineByHand, regulatorsByHand, chargeByHand, reliefByHand, compressorByHand, staticHeadByHand, chargeAsTyped,
]
