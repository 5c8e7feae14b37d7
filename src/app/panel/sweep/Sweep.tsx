import { createMemo, For, Index, on, Show, type JSX } from 'solid-js'
import { units } from '../../../../functions/units/units.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { described, isResult, offeredInputs, placeTyped } from '../../whatif/cells.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { useSession } from '../../state/session.ts'
import { CellField } from '../whatif/CellField.tsx'
import { SweepOutcome } from './SweepOutcome.tsx'
import { createSweepState, takeSelectedCell, type SpacingKind, type SweepState, type VariedText } from './sweep-state.ts'
import '../whatif/whatif.css'

/** Varies one or two inputs on a copy of the workbook, and shows what comes of it. */
export function Sweep(): JSX.Element {
  const session = useSession()
  return <Show when={session.opened()} keyed>{(_times) => <SweepPanel />}</Show>
}

function SweepPanel(): JSX.Element {
  const session = useSession()
  const state = keptState(session, 'Sweep', createSweepState)
  takeSelectedCell(session, state)
  // Followed once for what is watched, not anew after each edit: that would take as long as a frame.
  const offered = createMemo(on(state.watched, (watched) => offeredInputs(session.document.workbook(), watched.flatMap((text) => {
    const place = placeTyped(session.document.workbook(), text, session.sheetName())
    return typeof place === 'string' ? [] : [place]
  }))))
  return (
    <div class="whatif-panel">
      <h2>Sweep</h2>
      <form onSubmit={(event) => {
        event.preventDefault()
        state.run()
      }}>
        <Index each={state.varied()}>
          {(one, at) => (
            <fieldset class="whatif-part">
              <legend>{at === 0 ? 'Vary' : 'And vary'}</legend>
              <CellField label={at === 0 ? 'Input' : 'Second input'} text={one().cell} onText={(text) => state.setCell(at, text)} offered={offered()} offeredLabel="choose one that the watched hang on" />
              <RangeFields one={one()} at={at} state={state} />
              <Show when={at === 1}><div class="whatif-verbs"><button type="button" class="plain-button" onClick={() => state.removeSecond()}>Vary one input only</button></div></Show>
            </fieldset>
          )}
        </Index>
        <Show when={state.varied().length === 1}><div class="whatif-verbs"><button type="button" class="plain-button" onClick={() => state.addSecond()}>Vary a second input</button></div></Show>
        <WatchList state={state} />
        <div class="whatif-verbs">
          <button type="submit" class="main-button" disabled={state.running()}>Run</button>
          <Show when={state.running()}>
            <button type="button" class="plain-button" onClick={() => state.stop()}>Stop</button>
            <span class="whatif-hint">{state.found()?.points.length ?? 0} of {state.found()?.begun.count ?? '…'} points</span>
          </Show>
        </div>
      </form>
      <Show when={state.problem()}>{(words) => <p class="whatif-problem" role="alert">{words()}</p>}</Show>
      <Show when={state.found()}>{(found) => <SweepOutcome state={state} found={found()} />}</Show>
    </div>
  )
}

function RangeFields(props: { readonly one: VariedText; readonly at: number; readonly state: SweepState }): JSX.Element {
  const cell = createMemo(() => props.state.cellOf(props.one.cell))
  const alike = () => {
    const unit = cell()?.unit
    return unit === undefined ? [] : units.filter(({ dimension }) => dimension === unit.dimension)
  }
  const set = (change: Partial<VariedText>) => props.state.setVaried(props.at, { ...change, why: undefined })
  const field = (label: string, key: 'from' | 'to' | 'points' | 'step' | 'list') => (
    <label>{label}<input type="text" autocomplete="off" value={props.one[key]} onInput={({ currentTarget }) => set({ [key]: currentTarget.value })} /></label>
  )
  return (
    <>
      <div class="whatif-row">
        <Show when={props.one.spacing !== 'list'} fallback={field('List, with commas', 'list')}>{field('From', 'from')}{field('To', 'to')}</Show>
        <Show when={props.one.spacing === 'points'}>{field('Values', 'points')}</Show>
        <Show when={props.one.spacing === 'step'}>{field('Step', 'step')}</Show>
        <Show when={alike().length > 0}>
          <label>Unit<select onChange={({ currentTarget }) => set({ unit: currentTarget.value })}>
            <For each={alike()}>{({ code }) => <option value={code} selected={code === (props.one.unit || cell()?.unit?.code)}>{code}</option>}</For>
          </select></label>
        </Show>
        <label>Given by<select onChange={({ currentTarget }) => set({ spacing: currentTarget.value as SpacingKind })}>
          <For each={[['points', 'count'], ['step', 'step'], ['list', 'list']] as const}>{([kind, words]) => <option value={kind} selected={kind === props.one.spacing}>{words}</option>}</For>
        </select></label>
      </div>
      <Show when={props.one.why}>{(words) => <p class="whatif-hint">Usual range: {words()}.</p>}</Show>
    </>
  )
}

function WatchList(props: { readonly state: SweepState }): JSX.Element {
  const session = useSession()
  const selected = createMemo(() => printCellPlace({ sheet: session.sheetName(), ...session.selection.active() }))
  const canWatch = () => isResult(session.activeCell()) && !props.state.watched().includes(selected())
  return (
    <fieldset class="whatif-part">
      <legend>Watch</legend>
      <Show when={props.state.watched().length > 0}>
        <ul class="whatif-list" aria-label="Watched">
          <For each={props.state.watched()}>
            {(text) => (
              <li>
                <span>{words(props.state, text)}<small>{text}</small></span>
                <button type="button" class="plain-button" aria-label={`Remove ${text} from the watched`} onClick={() => props.state.unwatch(text)}>Remove</button>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <div class="whatif-verbs">
        <button type="button" class="plain-button" disabled={!canWatch()} onClick={() => session.settle() && props.state.watch(selected())}>Watch {selected()}</button>
        <Show when={!canWatch() && props.state.watched().length === 0}><span class="whatif-hint">select a result or a check in the grid</span></Show>
      </div>
      <label class="whatif-tick"><input type="checkbox" checked={props.state.allChecks()} onChange={({ currentTarget }) => props.state.setAllChecks(currentTarget.checked)} />all checks that hang on what is varied</label>
    </fieldset>
  )
}

function words(state: SweepState, text: string): string {
  const cell = state.cellOf(text)
  return cell === undefined ? 'no such cell' : described(cell)
}
