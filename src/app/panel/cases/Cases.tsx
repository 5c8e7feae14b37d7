import { createMemo, createSignal, Show, type JSX } from 'solid-js'
import { casesOf } from '../../../workbook/cases.ts'
import { createCaseResults } from '../../state/case-results.ts'
import { useSession } from '../../state/session.ts'
import { CaseList } from './CaseList.tsx'
import { InputsTable } from './InputsTable.tsx'
import { NewCase } from './NewCase.tsx'
import { ResultsTable } from './ResultsTable.tsx'
import './Cases.css'

/** The cases of the workbook, their inputs side by side, and what comes out in each. */
export function Cases(): JSX.Element {
  const session = useSession()
  const results = createCaseResults(session)
  const [making, setMaking] = createSignal(false)
  const count = createMemo(() => casesOf(session.document.workbook()).list.length)
  let button: HTMLButtonElement | undefined

  return (
    <div class="cases-panel">
      <div class="cases-head">
        <h2>Cases</h2>
        <button ref={(element) => (button = element)} type="button" class="plain-button" aria-expanded={making()} onClick={() => setMaking(!making())}>New case</button>
      </div>
      <Show when={making()}>
        <NewCase onEnd={() => {
          setMaking(false)
          button?.focus()
        }} />
      </Show>
      <Show when={count() > 0} fallback={<p class="panel-empty">No case yet: the inputs are as they stand in the cells. A case is a set of other values for some of them, under a name. Make one, change inputs while it is current, and compare what comes out.</p>}>
        <CaseList />
        <InputsTable />
      </Show>
      <ResultsTable results={results} />
    </div>
  )
}
