import { createEffect, createMemo, For, on, Show, type JSX } from 'solid-js'
import { drawMarginBars } from '../../../figures/margin-bars.ts'
import type { Margin, Margins } from '../../../whatif/margins.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { withUnitText } from '../../../whatif/sweep-words.ts'
import { toleranceUnit, toleranceWords } from '../../../whatif/tolerances.ts'
import { formatNumber } from '../../../workbook/number-format.ts'
import { withUnit } from '../../../whatif/quantity-words.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { useSession } from '../../state/session.ts'
import { createRoomWidth } from '../figure/room-width.ts'
import { SceneView } from '../figure/SceneView.tsx'
import { CellField } from '../whatif/CellField.tsx'
import { comeIntoView } from '../whatif/come-into-view.ts'
import { createMarginsState, takeSelectedResult, type MarginsState } from './margins-state.ts'
import '../../../figures/figures.css'
import '../figure/Figures.css'
import '../whatif/whatif.css'
import './Margins.css'

/** Which inputs move a result, and by how much when each is off by its tolerance. */
export function MarginsPanel(): JSX.Element {
  const session = useSession()
  return <Show when={session.opened()} keyed>{(_times) => <Panel />}</Show>
}

function Panel(): JSX.Element {
  const session = useSession()
  const state = keptState(session, 'Margins', createMarginsState)
  takeSelectedResult(session, state)
  // Told of edits once the calculation has them, which hands out its workbook.
  createEffect(on(session.recalculation.version, () => state.runForTolerances(), { defer: true }))
  return (
    <div class="whatif-panel">
      <h2>Margins</h2>
      <form onSubmit={(event) => {
        event.preventDefault()
        state.run()
      }}>
        <CellField label="Result" text={state.target()} onText={state.setTarget} />
        <div class="whatif-verbs">
          <button type="submit" class="main-button" disabled={state.running()}>Run</button>
          <Show when={state.running()}><button type="button" class="plain-button" onClick={() => state.stop()}>Stop</button><span class="whatif-hint">Every input is moved on a copy…</span></Show>
        </div>
      </form>
      <Show when={state.problem()}>{(words) => <p class="whatif-problem" role="alert">{words()}</p>}</Show>
      <Show when={state.found()}>{(found) => <Outcome found={found()} state={state} />}</Show>
    </div>
  )
}

function Outcome(props: { readonly found: Margins; readonly state: MarginsState }): JSX.Element {
  const unit = () => props.found.target.unitText
  const changes = (up: number, down: number) => `+${withUnit(up, unit())} / ${withUnit(down, unit())}`.replaceAll('-', '−')
  const worst = () => {
    const { up, down } = props.found.together
    return up === undefined || down === undefined ? 'no number with every input at its worst end' : `${withUnit(down, unit())} to ${withUnit(up, unit())}`
  }
  return (
    <section ref={(element) => comeIntoView(element, props.state)} class="whatif-outcome" aria-label="Outcome">
      <h3>{props.found.target.label ?? printCellPlace(props.found.target)}: {withUnit(props.found.base, unit())}</h3>
      <div class="whatif-said" role="status"><dl class="margins-sums">
        <dt>Root of the sum of squares</dt><dd>{changes(props.found.rootSumSquare.up, props.found.rootSumSquare.down)}</dd>
        <dt>Worst case, all changes added</dt><dd>{changes(props.found.sum.up, props.found.sum.down)}</dd>
        <dt>Worst case, computed together</dt><dd>{worst()}</dd>
      </dl></div>
      <p class="whatif-hint">The first holds where inputs are off independently of each other. An engineering estimate.</p>
      <Show when={props.found.failing > 0}><p class="whatif-hint whatif-wrong">{props.found.failing === 1 ? 'One input' : `${props.found.failing} inputs`} at an end of the tolerance give no number there; that end is missing in the sums.</p></Show>
      <Show when={props.state.isOld()}><p class="whatif-hint">The workbook has changed since; run again for what it holds now.</p></Show>
      <Bars found={props.found} />
      <h3>Tolerances</h3>
      <p class="whatif-hint">Type 5 % for a share of the value, or a number in the unit of the input; empty brings back the usual one. They are kept with the workbook.</p>
      <div class="whatif-scroll">
        <table class="whatif-table margins-table">
          <thead><tr><th scope="col">Input</th><th scope="col">Tolerance ±</th><th scope="col">With less</th><th scope="col">With more</th></tr></thead>
          <tbody>
            <For each={props.found.moving}>{(margin) => <Row margin={margin} base={props.found.base} state={props.state} />}</For>
          </tbody>
        </table>
      </div>
      <Show when={props.found.still.length > 0}>
        <details>
          <summary>{props.found.still.length} inputs upstream that do not move it</summary>
          <table class="whatif-table margins-table"><tbody><For each={props.found.still}>{(margin) => <Row margin={margin} base={props.found.base} state={props.state} />}</For></tbody></table>
        </details>
      </Show>
    </section>
  )
}

function Row(props: { readonly margin: Margin; readonly base: number; readonly state: MarginsState }): JSX.Element {
  const input = () => props.margin.input
  const name = () => input().label ?? printCellPlace(input())
  const size = () => {
    const { tolerance } = props.margin
    return tolerance.kind === 'share' ? `${formatNumber(tolerance.share * 100)} %` : formatNumber(tolerance.size)
  }
  const unit = () => {
    const known = input().unit
    return props.margin.tolerance.kind === 'share' || known === undefined || known.code === '-' ? '' : toleranceUnit(known)
  }
  return (
    <tr>
      <th scope="row">{name()}<small>{withUnit(input().value, input().unitText)} · {printCellPlace(input())} · {props.margin.source ?? 'given here'}</small></th>
      <td><span class="margins-size"><input type="text" autocomplete="off" aria-label={`Tolerance of ${name()}`} value={size()} onChange={({ currentTarget }) => props.state.setTolerance({ sheet: input().sheet, row: input().row, column: input().column }, currentTarget.value)} /> {unit()}</span></td>
      <td>{moveText(withoutNoise(props.margin.less.change, props.base))}</td>
      <td>{moveText(withoutNoise(props.margin.more.change, props.base))}</td>
    </tr>
  )
}

function Bars(props: { readonly found: Margins }): JSX.Element {
  const { width, measured } = createRoomWidth()
  const name = () => withUnitText(props.found.target.label ?? printCellPlace(props.found.target), props.found.target.unitText)
  const drawn = createMemo(() => (width() === 0 ? undefined : drawMarginBars({
    title: name(), base: props.found.base,
    inputs: props.found.moving.map(({ input, tolerance, less, more }) => ({ name: `${input.label ?? printCellPlace(input)} ${toleranceWords(tolerance, input.unit)}`, less: withoutNoise(less.change, props.found.base), more: withoutNoise(more.change, props.found.base) })),
  }, width())))
  const drawing = () => {
    const now = drawn()
    return now !== undefined && 'scene' in now ? now : undefined
  }
  return (
    <div ref={measured} class="figure-view">
      <Show when={drawing()} fallback={<p class="whatif-hint">No input moves it.</p>}>
        {(one) => (
          <>
            <SceneView scene={one().scene} name={`What moves ${name()}`} description={one().description} />
            <Show when={one().remarks.length > 0}><ul class="figure-remarks"><For each={one().remarks}>{(words) => <li>{words}</li>}</For></ul></Show>
          </>
        )}
      </Show>
    </div>
  )
}

/** A change this small a share of the result is the arithmetic’s own. */
const withoutNoise = (change: number | undefined, base: number): number | undefined => (change !== undefined && Math.abs(change) <= 1e-12 * Math.abs(base) ? 0 : change)

const moveText = (change: number | undefined): string => (change === undefined ? 'no number' : `${change > 0 ? '+' : ''}${formatNumber(change)}`.replace('-', '−'))
