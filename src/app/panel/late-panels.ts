import type { JSX } from 'solid-js'
import { late } from './late.tsx'

const PANEL = 'This panel'

export const LateFigures = (): JSX.Element => late('The drawings', async () => (await import('./figure/Figures.tsx')).Figures)
export const LateCases = (): JSX.Element => late(PANEL, async () => (await import('./cases/Cases.tsx')).Cases)
export const LateSweep = (): JSX.Element => late(PANEL, async () => (await import('./sweep/Sweep.tsx')).Sweep)
export const LateSolve = (): JSX.Element => late(PANEL, async () => (await import('./solve/Solve.tsx')).Solve)
export const LateMargins = (): JSX.Element => late(PANEL, async () => (await import('./margins/Margins.tsx')).MarginsPanel)
export const LateFindings = (): JSX.Element => late(PANEL, async () => (await import('./findings/Findings.tsx')).Findings)
export const LateDifferences = (): JSX.Element => late(PANEL, async () => (await import('./differences/Differences.tsx')).DifferencesPanel)
export const LateDerivation = (): JSX.Element => late('What derives', async () => (await import('./derivation/DerivationWalk.tsx')).DerivationWalk)
export const LateChecked = (): JSX.Element => late(PANEL, async () => (await import('./checked/Checked.tsx')).Checked)
