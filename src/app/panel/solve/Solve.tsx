import { createMemo, For, on, Show, type JSX } from 'solid-js'
import { solutionWords, solvedWords } from '../../../whatif/solve-words.ts'
import type { Solution, Solved, Tried } from '../../../whatif/solve.ts'
import { isCellError } from '../../../calc/values.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { withUnit } from '../../../whatif/quantity-words.ts'
import { offeredInputs } from '../../whatif/cells.ts'
import { putIntoGrid } from '../../whatif/put-into-grid.ts'
import { useSession } from '../../state/session.ts'
import { CellField } from '../whatif/CellField.tsx'
import { comeIntoView } from '../whatif/come-into-view.ts'
import { createSolveState, takeSelected, type SolveState } from './solve-state.ts'
import '../whatif/whatif.css'

/** Looks for the input that brings a result to a number, or a check to where it just holds. What it finds is offered. */
export function Solve(): JSX.Element {
  const session = useSession()
  return <Show when={session.opened()} keyed>{(_times) => <SolvePanel />}</Show>
}

function SolvePanel(): JSX.Element {
  const session = useSession()
  const state = keptState(session, 'Solve for', createSolveState)
  takeSelected(session, state)
  // Followed once for a target, not anew after each edit: that would take as long as a frame.
  const offered = createMemo(on(state.target, () => {
    const target = state.targetCell()
    return target === undefined ? [] : offeredInputs(session.document.workbook(), [target.place])
  }))
  const isCheck = () => state.targetCell()?.cell?.role === 'check'
  const goalUnit = () => state.targetCell()?.unitText
  const inputUnit = () => state.byCell()?.unitText
  return (
    <div class="whatif-panel">
      <h2>Solve for</h2>
      <form onSubmit={(event) => {
        event.preventDefault()
        state.run()
      }}>
        <fieldset class="whatif-part">
          <legend>What should come out</legend>
          <CellField label="Target" text={state.target()} onText={state.setTarget} />
          <Show when={!isCheck()} fallback={<p class="whatif-hint">A check: it is to be just met.</p>}>
            <label>Goal{goalUnit() === undefined || goalUnit() === '-' ? '' : `, ${goalUnit()} or with a unit`}<input type="text" autocomplete="off" ref={(element) => queueMicrotask(() => begin(element))} value={state.goal()} onInput={({ currentTarget }) => state.setGoal(currentTarget.value)} /></label>
          </Show>
        </fieldset>
        <fieldset class="whatif-part">
          <legend>Which input may change</legend>
          <CellField label="Input" text={state.by()} onText={state.setBy} offered={offered()} offeredLabel="choose one that the target hangs on" />
          <div class="whatif-row">
            <label>From{inputUnit() === undefined ? '' : `, ${inputUnit()}`}<input type="text" autocomplete="off" value={state.from()} placeholder="usual" onInput={({ currentTarget }) => state.setFrom(currentTarget.value)} /></label>
            <label>To{inputUnit() === undefined ? '' : `, ${inputUnit()}`}<input type="text" autocomplete="off" value={state.to()} placeholder="usual" onInput={({ currentTarget }) => state.setTo(currentTarget.value)} /></label>
          </div>
          <Show when={state.why()}>{(words) => <p class="whatif-hint">Usual bounds: {words()}.</p>}</Show>
        </fieldset>
        <div class="whatif-verbs">
          <button type="submit" class="main-button" disabled={state.running()}>Run</button>
          <Show when={state.running()}><button type="button" class="plain-button" onClick={() => state.stop()}>Stop</button><span class="whatif-hint">Solving on a copy…</span></Show>
        </div>
      </form>
      <Show when={state.problem()}>{(words) => <p class="whatif-problem" role="alert">{words()}</p>}</Show>
      <Show when={state.solved()}>{(solved) => <Outcome solved={solved()} state={state} />}</Show>
    </div>
  )
}

/** Who opens the panel on a result goes on with the goal. */
function begin(goal: HTMLInputElement): void {
  if (document.activeElement?.closest('.side-names')) goal.focus()
}

function Outcome(props: { readonly solved: Solved; readonly state: SolveState }): JSX.Element {
  const session = useSession()
  return (
    <section ref={(element) => comeIntoView(element, props.state)} class="whatif-outcome" aria-label="Outcome">
      <h3>Outcome</h3>
      <p class="whatif-said" role="status">{solvedWords(props.solved)}</p>
      <Show when={props.solved.bounds.why !== 'as given'}><p class="whatif-hint">Looked from {withUnit(props.solved.bounds.from, props.solved.input.unitText)} to {withUnit(props.solved.bounds.to, props.solved.input.unitText)}: {props.solved.bounds.why}.</p></Show>
      <Show when={props.state.isOld()}><p class="whatif-hint">The workbook has changed since; run again for what it holds now.</p></Show>
      <Show when={props.solved.solutions.length > 0}>
        <ul class="whatif-list">
          <For each={props.solved.solutions}>
            {(solution) => (
              <li>
                <span>{solutionWords(props.solved, solution)}<small>{resultWords(props.solved, solution)}</small></span>
                <button type="button" class="plain-button" aria-label={`Put into the grid: ${withUnit(solution.at.input, props.solved.input.unitText)} in ${printCellPlace(props.solved.input)}`} onClick={() => putIntoGrid(session, [{ place: props.solved.input, number: solution.at.input, unitText: props.solved.input.unitText }])}>Put into the grid</button>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <details>
        <summary>The way there: {props.solved.path.length} inputs tried</summary>
        <div class="whatif-scroll">
          <table class="whatif-table">
            <thead><tr><th scope="col">{heading(props.solved.input)}</th><th scope="col">{heading(props.solved.target)}</th></tr></thead>
            <tbody><For each={props.solved.path}>{(tried) => <tr><th scope="row">{tried.input}</th><td>{readingText(tried)}</td></tr>}</For></tbody>
          </table>
        </div>
      </details>
    </section>
  )
}

const resultWords = ({ target }: Solved, { at }: Solution): string => `${target.label ?? printCellPlace(target)}: ${readingText(at)}${typeof at.reading.value === 'number' && target.unitText !== undefined && target.unitText !== '-' ? ` ${target.unitText}` : ''}`

const heading = ({ label, unitText, ...place }: Solved['input'] | Solved['target']): string => `${label ?? printCellPlace(place)}${unitText === undefined || unitText === '-' ? '' : `, ${unitText}`}`

function readingText({ reading: { value, check } }: Tried): string {
  if (check !== undefined) return check.words
  if (isCellError(value)) return value.error
  return typeof value === 'number' ? String(Number(value.toPrecision(10))) : String(value ?? '')
}
