import { batch, createSignal, type Accessor } from 'solid-js'
import { usualBounds } from '../../../whatif/bounds.ts'
import { readNumber } from '../../../whatif/range-text.ts'
import type { Solved } from '../../../whatif/solve.ts'
import { WorkbookProblem } from '../../../workbook/problem.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { cellWords, isNumberInput, isResult, placeTyped, type CellWords } from '../../whatif/cells.ts'
import { createRunning, type Running } from '../../whatif/running.ts'
import type { Session } from '../../state/session.ts'

/** What the panel was told, as typed, and what came of it. */
export interface SolveState extends Running {
  readonly target: Accessor<string>
  setTarget(text: string): void
  readonly goal: Accessor<string>
  setGoal(text: string): void
  readonly by: Accessor<string>
  /** Another input brings its own usual bounds. */
  setBy(text: string): void
  readonly from: Accessor<string>
  setFrom(text: string): void
  readonly to: Accessor<string>
  setTo(text: string): void
  /** Why the usual bounds are these; undefined where they were changed. */
  readonly why: Accessor<string | undefined>
  readonly targetCell: Accessor<CellWords | undefined>
  readonly byCell: Accessor<CellWords | undefined>
  readonly solved: Accessor<Solved | undefined>
  run(): void
}

export function createSolveState(session: Session): SolveState {
  const [target, setTarget] = createSignal('')
  const [goal, setGoal] = createSignal('')
  const [by, setByText] = createSignal('')
  const [from, setFromText] = createSignal('')
  const [to, setToText] = createSignal('')
  const [why, setWhy] = createSignal<string | undefined>(undefined)
  const [solved, setSolved] = createSignal<Solved | undefined>(undefined)
  const running = createRunning(session)
  const cellOf = (text: string): CellWords | undefined => {
    const place = placeTyped(session.document.workbook(), text, session.sheetName())
    return typeof place === 'string' ? undefined : cellWords(session.document.workbook(), place)
  }
  const targetCell = () => cellOf(target())
  const byCell = () => cellOf(by())

  function setBy(text: string): void {
    setByText(text)
    const found = byCell()
    const value = found?.cell?.content
    if (found === undefined || typeof value !== 'number') return
    // Gauge pressures go by the site's atmosphere, which the copy knows: left empty, they are found there.
    const bounds = found.unit?.gauge === true ? undefined : usualBounds({ value, unit: found.unit }, 0)
    batch(() => {
      setFromText(bounds === undefined ? '' : String(Number(bounds.from.toPrecision(12))))
      setToText(bounds === undefined ? '' : String(Number(bounds.to.toPrecision(12))))
      setWhy(bounds?.why ?? 'left empty: a fifth to five times the absolute pressure')
    })
  }

  function run(): void {
    if (!session.settle()) return
    try {
      const [toReach, input] = [targetCell(), byCell()]
      if (toReach === undefined) throw new WorkbookProblem(`Target: ${wordsOf(target())}`)
      if (input === undefined) throw new WorkbookProblem(`Input: ${wordsOf(by())}`)
      const isCheck = toReach.cell?.role === 'check'
      if (!isCheck && goal().trim() === '') throw new WorkbookProblem('Goal: no number yet; accepted: what the target should come to, such as 3 or 36 psig')
      const number = isCheck ? undefined : readNumber(goal())
      const within = boundsTyped(from(), to())
      setSolved(undefined)
      running.ask('Solving', {
        kind: 'solve', by: input.place, target: toReach.place,
        ...(number === undefined ? {} : { goal: { number: number.number, ...(number.unit === undefined ? {} : { unit: number.unit.code }) } }),
        ...(within === undefined ? {} : { within }),
      }, (news) => {
        if (news.kind === 'solved') setSolved(news.solved)
      })
    } catch (fault) {
      if (!(fault instanceof WorkbookProblem)) throw fault
      running.setProblem(fault.message)
    }
  }
  const wordsOf = (text: string): string => {
    const place = placeTyped(session.document.workbook(), text, session.sheetName())
    return typeof place === 'string' ? place : ''
  }

  const state: SolveState = {
    ...running, target, setTarget, goal, setGoal, by, setBy, from, to, why, targetCell, byCell, solved, run,
    setFrom: (text) => batch(() => (setFromText(text), setWhy(undefined))),
    setTo: (text) => batch(() => (setToText(text), setWhy(undefined))),
  }
  takeSelected(session, state)
  return state
}

/** An empty field takes the selected cell, if it is of the kind. */
export function takeSelected(session: Session, state: SolveState): void {
  const cell = session.activeCell()
  const here = printCellPlace({ sheet: session.sheetName(), ...session.selection.active() })
  if (state.target() === '' && isResult(cell)) state.setTarget(here)
  else if (state.by() === '' && isNumberInput(cell)) state.setBy(here)
}

/** Both empty: the usual ones. */
function boundsTyped(from: string, to: string): { readonly from: number; readonly to: number } | undefined {
  if (from.trim() === '' && to.trim() === '') return undefined
  const [low, high] = [bound(from, 'From'), bound(to, 'To')]
  return { from: low, to: high }
}

function bound(text: string, field: string): number {
  try {
    const { number, unit } = readNumber(text)
    if (unit === undefined) return number
  } catch (fault) {
    if (!(fault instanceof WorkbookProblem)) throw fault
  }
  throw new WorkbookProblem(`${field}: "${text}" is no number; accepted: a number in the unit of the input, or both bounds empty for the usual ones`)
}
