import { batch, createSignal, onCleanup, type Accessor } from 'solid-js'
import type { Derivation } from '../../../review/derivation/derivation.ts'
import type { CellPlace } from '../../../workbook/cell-place.ts'
import type { Workbook } from '../../../workbook/document.ts'
import { inSight, type ThreadWork } from '../../state/in-sight.ts'
import { WorkStopped } from '../../state/long-work.ts'
import type { Session } from '../../state/session.ts'
import { askDerivation } from './derivation-thread.ts'

/** The derivation that the panel walks: of one result, whichever cell is active meanwhile. */
export interface DerivationState {
  readonly derivation: Accessor<Derivation | undefined>
  readonly running: Accessor<boolean>
  readonly problem: Accessor<string | undefined>
  /** Whether the workbook has changed since. */
  readonly isOld: Accessor<boolean>
  readonly of: Accessor<CellPlace | undefined>
  derive(place: CellPlace): void
  readonly resultFirst: Accessor<boolean>
  setResultFirst(isFirst: boolean): void
  readonly isOpen: (number: number) => boolean
  setOpen(number: number, isOpen: boolean): void
  setAllOpen(isOpen: boolean): void
  /** The step that the keyboard is at. */
  readonly at: Accessor<number | undefined>
  setAt(number: number): void
}

export function createDerivationState(session: Session): DerivationState {
  const [derivation, setDerivation] = createSignal<Derivation | undefined>(undefined)
  const [running, setRunning] = createSignal(false)
  const [problem, setProblem] = createSignal<string | undefined>(undefined)
  const [from, setFrom] = createSignal<Workbook | undefined>(undefined)
  const [of, setOf] = createSignal<CellPlace | undefined>(undefined)
  const [resultFirst, setResultFirst] = createSignal(true)
  const [open, setOpenSteps] = createSignal<ReadonlySet<number>>(new Set())
  const [at, setAt] = createSignal<number | undefined>(undefined)
  let current: ThreadWork<unknown> | undefined
  onCleanup(() => current?.stop())
  return {
    derivation, running, problem, of, resultFirst, setResultFirst, at, setAt,
    isOld: () => from() !== undefined && from() !== session.document.workbook(),
    derive(place) {
      current?.stop()
      const asked = askDerivation(session.service, { kind: 'derivation', results: [place] })
      current = asked
      batch(() => {
        setOf(place)
        setFrom(session.document.workbook())
        setRunning(true)
        setProblem(undefined)
      })
      inSight(session.work, 'Deriving', () => asked).then(
        (answer) => asked === current && 'derivation' in answer && batch(() => {
          setDerivation(answer.derivation)
          const [result] = answer.derivation.results
          setAt(result)
          setOpenSteps(new Set(result === undefined ? [] : [result]))
        }),
        (fault: unknown) => asked === current && setProblem(fault instanceof WorkStopped ? 'Stopped.' : fault instanceof Error ? fault.message : String(fault)),
      ).finally(() => asked === current && setRunning(false))
    },
    isOpen: (number) => open().has(number),
    setOpen: (number, isOpen) => setOpenSteps((some) => new Set(isOpen ? [...some, number] : [...some].filter((one) => one !== number))),
    setAllOpen: (isOpen) => setOpenSteps(new Set(isOpen ? derivation()?.steps.map(({ number }) => number) : [])),
  }
}
