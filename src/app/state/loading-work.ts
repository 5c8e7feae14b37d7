import type { LoadSource, LoadStep } from '../../calc/loading.ts'
import type { Calculation, Loaded } from '../calculation/calculation.ts'
import { inSight } from './in-sight.ts'
import type { LongWork } from './long-work.ts'

/** Reads a workbook on a thread of its own, which the bottom line shows and can stop; rejected with `WorkStopped` then. */
export const loadInSight = ({ service, work }: { readonly service: Pick<Calculation, 'load'>; readonly work: LongWork }, source: LoadSource, name: string): Promise<Loaded> =>
  inSight(work, `Reading ${name}`, (report) => service.load(source, (step, share) => report(share === undefined ? undefined : spanOf(step, share), `${STEP_WORDS[step]} ${name}`)))

const STEP_WORDS: Readonly<Record<LoadStep, string>> = { reading: 'Reading', building: 'Building the calculation of', computing: 'Computing the values of' }

/** Computing cannot say how far it has come, and does not count. */
const SPANS: Readonly<Record<LoadStep, readonly [from: number, to: number]>> = { reading: [0, 0.4], building: [0.4, 1], computing: [1, 1] }
const spanOf = (step: LoadStep, share: number): number => SPANS[step][0] + share * (SPANS[step][1] - SPANS[step][0])
