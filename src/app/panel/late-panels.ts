import type { JSX } from 'solid-js'
import { late } from './late.tsx'

const PANEL = 'This panel'

export const LateFigures = (): JSX.Element => late('The drawings', async () => (await import('./figure/Figures.tsx')).Figures)
export const LateCases = (): JSX.Element => late(PANEL, async () => (await import('./cases/Cases.tsx')).Cases)
export const LateSweep = (): JSX.Element => late(PANEL, async () => (await import('./sweep/Sweep.tsx')).Sweep)
export const LateSolve = (): JSX.Element => late(PANEL, async () => (await import('./solve/Solve.tsx')).Solve)
export const LateMargins = (): JSX.Element => late(PANEL, async () => (await import('./margins/Margins.tsx')).MarginsPanel)
