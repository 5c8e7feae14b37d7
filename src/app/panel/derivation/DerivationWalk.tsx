import { createSignal, For, onMount, Show, type JSX } from 'solid-js'
import { printCellPlace, samePlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { isFormula } from '../../../workbook/document.ts'
import type { Derivation } from '../../../review/derivation/derivation.ts'
import { areaText } from '../../../review/derivation/area-text.ts'
import { counted } from '../../parts/counted.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { useSession } from '../../state/session.ts'
import { createDerivationState, type DerivationState } from './derivation-state.ts'
import { DerivationDialog, type DerivationKind } from './DerivationDialog.tsx'
import { StepItem } from './StepItem.tsx'
import './Derivation.css'

/** The steps of a derivation to walk through: each leads to its cell and opens to what it is computed from. */
export function DerivationWalk(): JSX.Element {
  const session = useSession()
  const state = keptState(session, 'Derivation', createDerivationState)
  const [dialog, setDialog] = createSignal<DerivationKind | undefined>(undefined)
  const active = (): CellPlace => ({ sheet: session.sheetName(), ...session.selection.active() })
  const canDerive = () => isFormula(session.activeCell()?.content)
  onMount(() => {
    if (state.of() === undefined && canDerive()) state.derive(active())
  })
  const isOther = () => {
    const of = state.of()
    return of !== undefined && canDerive() && !samePlace(of, active())
  }
  return (
    <div class="derivation-walk">
      <Show when={state.running()}><p class="derivation-hint" role="status">Deriving…</p></Show>
      <Show when={state.problem()}>{(words) => <p class="derivation-wrong" role="alert">{words()}</p>}</Show>
      <div class="derivation-verbs">
        <Show when={isOther() || state.isOld()}>
          <button type="button" class="plain-button" onClick={() => state.derive(isOther() ? active() : (state.of() ?? active()))}>{isOther() ? 'Derive the selected cell' : 'Derive again'}</button>
        </Show>
        <button type="button" class="plain-button" onClick={() => session.settle() && setDialog('report')}>Derivation report…</button>
        <button type="button" class="plain-button" onClick={() => session.settle() && setDialog('hand')}>Hand calculation sheet…</button>
      </div>
      <Show when={state.derivation()}>{(derivation) => <Steps derivation={derivation()} state={state} />}</Show>
      <Show when={dialog()}>{(kind) => <DerivationDialog kind={kind()} of={state.of()} onClose={() => setDialog(undefined)} />}</Show>
    </div>
  )
}

function Steps(props: { readonly derivation: Derivation; readonly state: DerivationState }): JSX.Element {
  const session = useSession()
  let tree: HTMLUListElement | undefined
  const inOrder = () => (props.state.resultFirst() ? props.derivation.steps.toReversed() : props.derivation.steps)
  const result = () => props.derivation.steps[(props.derivation.results[0] ?? 1) - 1]
  const at = () => props.state.at() ?? inOrder()[0]?.number
  const goTo = (number: number) => {
    const step = props.derivation.steps[number - 1]
    if (step === undefined) return
    props.state.setAt(number)
    session.trail.follow(step.place)
  }
  const focusOn = (number: number | undefined) => {
    if (number === undefined) return
    props.state.setAt(number)
    const item = tree?.querySelector<HTMLElement>(`[data-step="${number}"]`)
    item?.focus()
    item?.scrollIntoView({ block: 'nearest' })
  }
  /** Up and down the list; right opens, then leads to what a step is computed from; left closes, then leads to what uses it. */
  const onKeyDown = (event: KeyboardEvent) => {
    const here = at()
    if (here === undefined || event.ctrlKey || event.metaKey || event.altKey) return
    const step = props.derivation.steps[here - 1]
    const numbers = inOrder().map(({ number }) => number)
    const place = numbers.indexOf(here)
    const moves: Readonly<Record<string, () => void>> = {
      ArrowDown: () => focusOn(numbers[place + 1]),
      ArrowUp: () => focusOn(numbers[place - 1]),
      Home: () => focusOn(numbers[0]),
      End: () => focusOn(numbers.at(-1)),
      ArrowRight: () => (props.state.isOpen(here) ? focusOn(step?.uses[0]) : props.state.setOpen(here, true)),
      ArrowLeft: () => (props.state.isOpen(here) ? props.state.setOpen(here, false) : focusOn(props.derivation.steps.find(({ uses }) => uses.includes(here))?.number)),
      Enter: () => goTo(here),
      ' ': () => props.state.setOpen(here, !props.state.isOpen(here)),
    }
    const move = moves[event.key]
    if (move === undefined) return
    event.preventDefault()
    move()
  }
  return (
    <>
      <p class="derivation-of">{result()?.label} <span>{result() === undefined ? '' : printCellPlace(result()?.place ?? { sheet: '', row: 0, column: 0 })}</span> <b>{result()?.value}</b></p>
      <p class="derivation-hint">
        {counted(props.derivation.steps.length, 'step')}, {props.derivation.steps.filter(({ formula }) => formula === undefined).length} of them given.
        {props.state.isOld() ? ' The workbook has changed since.' : ''}{props.derivation.caseWords === undefined ? '' : ` Case: ${props.derivation.caseWords}.`}
      </p>
      <div class="derivation-verbs">
        <label><input type="checkbox" checked={props.state.resultFirst()} onChange={(event) => props.state.setResultFirst(event.currentTarget.checked)} />Result first</label>
        <button type="button" class="plain-button" onClick={() => props.state.setAllOpen(true)}>Open all</button>
        <button type="button" class="plain-button" onClick={() => props.state.setAllOpen(false)}>Close all</button>
      </div>
      <ul ref={(element) => (tree = element)} class="derivation-steps" role="tree" aria-label="Steps of the derivation" onKeyDown={onKeyDown}>
        <For each={inOrder()}>
          {(step) => <StepItem step={step} steps={props.derivation.steps} isOpen={props.state.isOpen(step.number)} isAt={at() === step.number} isResult={props.derivation.results.includes(step.number)}
            onToggle={() => { props.state.setAt(step.number); props.state.setOpen(step.number, !props.state.isOpen(step.number)) }} onGo={() => goTo(step.number)} onStep={focusOn} />}
        </For>
      </ul>
      <Show when={props.derivation.noPart.length > 0}>
        <details>
          <summary>Without part in these numbers</summary>
          <p class="derivation-hint">Formulas refer to these cells too, in branches that were not taken and rows that were not looked up: {props.derivation.noPart.map(areaText).join(', ')}.</p>
        </details>
      </Show>
      <Show when={props.derivation.cut > 0}><p class="derivation-hint">{props.derivation.cut} references were not gone into: a derivation has up to {props.derivation.steps.length} steps.</p></Show>
    </>
  )
}
