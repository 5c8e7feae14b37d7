import { batch, createEffect, createSignal, on, type Accessor } from 'solid-js'
import { findUnit } from '../../../../functions/units/units.ts'
import type { SweepBegun, SweepQuestion } from '../../../whatif/messages.ts'
import type { Spacing } from '../../../whatif/spacing.ts'
import type { SweepLimit, SweepPoint } from '../../../whatif/sweep.ts'
import { usualSweep } from '../../../whatif/usual-sweep.ts'
import { contentOf } from '../../../workbook/entry.ts'
import { WorkbookProblem } from '../../../workbook/problem.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { cellWords, isNumberInput, isResult, placeTyped, type CellWords } from '../../whatif/cells.ts'
import { createRunning, type Running } from '../../whatif/running.ts'
import type { Session } from '../../state/session.ts'

export type SpacingKind = 'points' | 'step' | 'list'

/** One varied input, as typed. */
export interface VariedText {
  readonly cell: string
  readonly spacing: SpacingKind
  readonly from: string
  readonly to: string
  readonly points: string
  readonly step: string
  readonly list: string
  /** Of the numbers; empty for the unit of the cell. */
  readonly unit: string
  /** Why the usual range is this one; undefined where it was changed. */
  readonly why: string | undefined
}

export interface SweepFound {
  readonly begun: SweepBegun
  readonly points: readonly SweepPoint[]
  readonly limits: readonly SweepLimit[]
}

/** What the panel was told, as typed, and what came of it. */
export interface SweepState extends Running {
  /** One, or two. */
  readonly varied: Accessor<readonly VariedText[]>
  setVaried(at: number, change: Partial<VariedText>): void
  setCell(at: number, text: string): void
  addSecond(): void
  removeSecond(): void
  /** Addresses of watched results and checks. */
  readonly watched: Accessor<readonly string[]>
  watch(text: string): void
  unwatch(text: string): void
  readonly allChecks: Accessor<boolean>
  setAllChecks(all: boolean): void
  readonly cellOf: (text: string) => CellWords | undefined
  readonly found: Accessor<SweepFound | undefined>
  /** The point whose values are shown. */
  readonly chosen: Accessor<number | undefined>
  setChosen(at: number | undefined): void
  /** Of two inputs: the watched cell that the figure shows; undefined for the first. */
  readonly pictured: Accessor<number | undefined>
  setPictured(at: number | undefined): void
  run(): void
}

const NOTHING: VariedText = { cell: '', spacing: 'points', from: '', to: '', points: '41', step: '', list: '', unit: '', why: undefined }
const POINTS_OF_TWO = '21'

/** Drawing takes the longer the more points there are: while they come, it has a small share of the time. */
const POINTS_IN_MS = 20

export function createSweepState(session: Session): SweepState {
  const [varied, setAll] = createSignal<readonly VariedText[]>([NOTHING])
  const [watched, setWatched] = createSignal<readonly string[]>([])
  const [allChecks, setAllChecks] = createSignal(true)
  const [found, setFound] = createSignal<SweepFound | undefined>(undefined)
  const [chosen, setChosen] = createSignal<number | undefined>(undefined)
  const [pictured, setPictured] = createSignal<number | undefined>(undefined)
  const running = createRunning(session)

  const placeOf = (text: string): CellPlace | string => placeTyped(session.document.workbook(), text, session.sheetName())
  const cellOf = (text: string): CellWords | undefined => {
    const place = placeOf(text)
    return typeof place === 'string' ? undefined : cellWords(session.document.workbook(), place)
  }
  const setVaried = (at: number, change: Partial<VariedText>): void => void setAll((before) => before.map((one, index) => (index === at ? { ...one, ...change } : one)))

  function setCell(at: number, text: string): void {
    const cell = cellOf(text)
    const value = cell?.cell?.content
    if (cell === undefined || typeof value !== 'number') return setVaried(at, { cell: text })
    const { from, to, why } = usualSweep(value, cell.unit)
    setVaried(at, { cell: text, from: String(from), to: String(to), unit: '', why })
  }

  function run(): void {
    if (!session.settle()) return
    try {
      const question: SweepQuestion = {
        kind: 'sweep', allChecks: allChecks(),
        vary: varied().map((one, at) => {
          const place = placeOf(one.cell)
          if (typeof place === 'string') throw new WorkbookProblem(`${at === 0 ? 'Input' : 'Second input'}: ${place}`)
          const unit = one.unit === '' ? undefined : findUnit(one.unit)
          return { place, spacing: spacingTyped(one), ...(unit === undefined ? {} : { unit: unit.code }) }
        }),
        watch: watched().map((text) => {
          const place = placeOf(text)
          if (typeof place === 'string') throw new WorkbookProblem(`Watched ${text}: ${place}`)
          return place
        }),
      }
      if (question.watch.length === 0 && !allChecks()) throw new WorkbookProblem('Nothing is watched; accepted: one result or check at least')
      start(question)
    } catch (fault) {
      if (!(fault instanceof WorkbookProblem)) throw fault
      running.setProblem(fault.message)
    }
  }

  function start(question: SweepQuestion): void {
    // One pair of lists that grows; whoever looks is told by a new object round them.
    const points: SweepPoint[] = []
    const limits: SweepLimit[] = []
    let shownAt = 0
    batch(() => {
      setFound(undefined)
      setChosen(undefined)
      setPictured(undefined)
    })
    running.ask('Sweeping', question, (news) => {
      if (news.kind === 'sweep begun') setFound({ begun: news.begun, points, limits })
      if (news.kind !== 'sweep part') return undefined
      for (const point of news.points) points.push(point)
      for (const limit of news.limits) limits.push(limit)
      const now = performance.now()
      if (now - shownAt > points.length / POINTS_IN_MS) {
        shownAt = now
        setFound((before) => before && { ...before })
      }
      return points.length / (found()?.begun.count ?? points.length)
    })
  }

  createEffect(on(running.running, (isRunning) => {
    if (!isRunning) setFound((before) => before && { ...before })
  }, { defer: true }))

  const state: SweepState = {
    ...running, varied, setVaried, setCell, watched, allChecks, setAllChecks, cellOf, found, chosen, setChosen, pictured, setPictured, run,
    addSecond: () => void setAll(([first = NOTHING]) => [{ ...first, points: first.points === NOTHING.points ? POINTS_OF_TWO : first.points }, { ...NOTHING, points: POINTS_OF_TWO }]),
    removeSecond: () => void setAll(([first = NOTHING]) => [{ ...first, points: first.points === POINTS_OF_TWO ? NOTHING.points : first.points }]),
    watch(text) {
      // Who names a result looks at that, and asks for checks if they matter.
      if (watched().length === 0) setAllChecks(false)
      if (!watched().includes(text)) setWatched((before) => [...before, text])
    },
    unwatch: (text) => batch(() => {
      setWatched((before) => before.filter((one) => one !== text))
      if (watched().length === 0) setAllChecks(true)
    }),
  }
  takeSelectedCell(session, state)
  return state
}

/** As long as nothing was said, the selected cell is what is varied, or what is watched. */
export function takeSelectedCell(session: Session, state: SweepState): void {
  const cell = session.activeCell()
  const here = printCellPlace({ sheet: session.sheetName(), ...session.selection.active() })
  if (isNumberInput(cell) && state.varied()[0]?.cell === '') state.setCell(0, here)
  else if (isResult(cell) && state.watched().length === 0 && state.varied()[0]?.cell === '') state.watch(here)
}

function spacingTyped({ spacing, from, to, points, step, list }: VariedText): Spacing {
  if (spacing === 'list') return { list: list.split(/[,;\s]+/).filter(Boolean).map((one) => numberTyped(one, 'List')) }
  const ends = { from: numberTyped(from, 'From'), to: numberTyped(to, 'To') }
  return spacing === 'step' ? { ...ends, step: numberTyped(step, 'Step') } : { ...ends, points: numberTyped(points, 'Values') }
}

function numberTyped(text: string, field: string): number {
  const number = contentOf(text.trim())
  if (typeof number !== 'number') throw new WorkbookProblem(`${field}: "${text}" is no number; accepted: numbers alone, their unit is chosen beside them`)
  return number
}
