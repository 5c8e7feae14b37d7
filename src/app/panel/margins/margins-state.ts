import { batch, createSignal, type Accessor } from 'solid-js'
import type { Margins, MarginsReady } from '../../../whatif/margins.ts'
import { readNumber } from '../../../whatif/range-text.ts'
import type { Watched } from '../../../whatif/probe.ts'
import { giveTolerance, type Tolerance } from '../../../workbook/given-tolerances.ts'
import { WorkbookProblem } from '../../../workbook/problem.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { isResult, placeTyped } from '../../whatif/cells.ts'
import { createRunning, type Running } from '../../whatif/running.ts'
import type { Session } from '../../state/session.ts'

export interface MarginsBegun {
  readonly target: Watched
  readonly base: number
  readonly inputs: MarginsReady['inputs']
}

/** What the panel was told, and what came of it. */
export interface MarginsState extends Running {
  readonly target: Accessor<string>
  setTarget(text: string): void
  readonly begun: Accessor<MarginsBegun | undefined>
  readonly found: Accessor<Margins | undefined>
  /** Puts a tolerance as typed into the workbook and works the margins out anew; an empty one brings back the usual. */
  setTolerance(place: CellPlace, typed: string): void
  run(): void
  /** Works the margins out anew where tolerances are all that has changed since: by Undo, say. */
  runForTolerances(): void
}

export function createMarginsState(session: Session): MarginsState {
  const [target, setTarget] = createSignal('')
  const [begun, setBegun] = createSignal<MarginsBegun | undefined>(undefined)
  const [found, setFound] = createSignal<Margins | undefined>(undefined)
  const running = createRunning(session)

  function run(): void {
    if (!session.settle()) return
    const place = placeTyped(session.document.workbook(), target(), session.sheetName())
    if (typeof place === 'string') return running.setProblem(`Result: ${place}`)
    let done = 0
    running.ask('Working out the margins', { kind: 'margins', target: place }, (news) => {
      if (news.kind === 'margins begun') setBegun(news)
      if (news.kind === 'margins') setFound(news.margins)
      if (news.kind !== 'margins part') return undefined
      done += news.found.length
      return done / Math.max(1, begun()?.inputs.length ?? 1)
    })
  }

  const state: MarginsState = {
    ...running, target, begun, found, run, runForTolerances,
    setTarget: (text) => batch(() => {
      setTarget(text)
      setBegun(undefined)
      setFound(undefined)
    }),
    setTolerance(place, typed) {
      try {
        const tolerance = toleranceTyped(typed)
        session.act('Tolerance', (workbook) => giveTolerance(workbook, place, tolerance))
        if (session.notice()?.tone === 'problem') return
        running.setProblem(undefined)
        if (running.isOld()) run()
      } catch (fault) {
        if (!(fault instanceof WorkbookProblem)) throw fault
        running.setProblem(`${printCellPlace(place)}: ${fault.message}`)
      }
    },
  }
  takeSelectedResult(session, state)
  return state

  function runForTolerances(): void {
    const [before, now] = [running.of(), session.document.workbook()]
    if (found() && before && before.tolerances !== now.tolerances && before.sheets === now.sheets && before.names === now.names) run()
  }
}

/** As long as nothing was worked out, the selected result is meant. */
export function takeSelectedResult(session: Session, state: MarginsState): void {
  if (state.target() === '' && isResult(session.activeCell())) state.setTarget(printCellPlace({ sheet: session.sheetName(), ...session.selection.active() }))
}

/** `5 %` is a share of the value, `0.5` so much in the unit of the input. */
function toleranceTyped(typed: string): Tolerance | undefined {
  const text = typed.replace(/^\s*(±|\+\/-)\s*/, '').trim()
  if (text === '') return undefined
  const share = /^(.*?)\s*%$/.exec(text)
  const accepted = 'accepted: a share such as 5 %, or so much in the unit of the input such as 0.5, not negative; empty for the usual one'
  let number: number
  try {
    const read = readNumber(share?.[1] ?? text)
    if (read.unit !== undefined) throw new WorkbookProblem(`"${typed}" has a unit; ${accepted}`)
    number = read.number
  } catch (fault) {
    if (!(fault instanceof WorkbookProblem)) throw fault
    throw new WorkbookProblem(`"${typed}" is no tolerance; ${accepted}`)
  }
  if (number < 0) throw new WorkbookProblem(`"${typed}" is negative; ${accepted}`)
  return share === null ? { kind: 'size', size: number } : { kind: 'share', share: number / 100 }
}
