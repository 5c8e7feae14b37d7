import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { isCellError, type CellValue } from '../../../calc/values.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import type { Watched } from '../../../whatif/probe.ts'
import { keepSweep } from '../../../whatif/sweep-sheet.ts'
import { axisTitle, sweepWords, withUnitText } from '../../../whatif/sweep-words.ts'
import { formatNumber } from '../../../workbook/number-format.ts'
import { withUnit } from '../../../whatif/quantity-words.ts'
import { putIntoGrid } from '../../whatif/put-into-grid.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { useSession } from '../../state/session.ts'
import { comeIntoView } from '../whatif/come-into-view.ts'
import type { SweepFound, SweepState } from './sweep-state.ts'
import { SweepFigures } from './SweepFigures.tsx'

const WORDS_SHOWN = 8
const ROWS_SHOWN = 100
const MOST_VALUES = 12

/** What came of a sweep: limits in words, figures, the values of one point, the table. */
export function SweepOutcome(props: { readonly state: SweepState; readonly found: SweepFound }): JSX.Element {
  const session = useSession()
  const [large, setLarge] = createSignal(false)
  const words = createMemo(() => sweepWords(props.found.begun, props.found.points, props.found.limits))
  const none = () => props.found.points.length === 0
  function keep(): void {
    if (!session.settle()) return
    const { name, edits } = keepSweep(session.document.workbook(), props.found, new Date())
    session.act('Keep the sweep as a sheet', () => edits)
    if (session.notice()?.tone === 'problem') return
    session.show(name)
    session.setNotice({ tone: 'done', text: `The sweep is kept as the sheet ${name}; Undo takes it away` })
  }
  return (
    <section ref={(element) => comeIntoView(element, props.state)} class="whatif-outcome" aria-label="Outcome">
      <h3>Outcome</h3>
      <Show when={words().length > 0 && !none()}>
        <div class="whatif-said" role="status"><For each={words().slice(0, WORDS_SHOWN)}>{(one) => <p>{one}</p>}</For></div>
        <Show when={words().length > WORDS_SHOWN}><details><summary>{words().length - WORDS_SHOWN} more</summary><For each={words().slice(WORDS_SHOWN)}>{(one) => <p class="whatif-hint">{one}</p>}</For></details></Show>
      </Show>
      <Show when={props.found.begun.unwatched > 0}><p class="whatif-hint">{props.found.begun.unwatched} more checks hang on it and are not watched: they are too many.</p></Show>
      <Show when={props.state.isOld()}><p class="whatif-hint">The workbook has changed since; run again for what it holds now.</p></Show>
      <Show when={!none()}>
        <SweepFigures state={props.state} found={props.found} />
        <ChosenPoint state={props.state} found={props.found} />
        <div class="whatif-verbs">
          <button type="button" class="plain-button" onClick={() => setLarge(true)}>Larger</button>
          <button type="button" class="plain-button" disabled={props.state.running()} onClick={keep}>Keep as a sheet</button>
        </div>
        <PointTable found={props.found} state={props.state} />
        <Show when={large()}>
          <Dialog title="Sweep" onClose={() => setLarge(false)}>
            <div class="figure-large"><SweepFigures state={props.state} found={props.found} /><ChosenPoint state={props.state} found={props.found} /></div>
          </Dialog>
        </Show>
      </Show>
    </section>
  )
}

function ChosenPoint(props: { readonly state: SweepState; readonly found: SweepFound }): JSX.Element {
  const session = useSession()
  const point = () => props.found.points[props.state.chosen() ?? -1]
  /** Results, then checks that turn, then the others, as far as they can be taken in. */
  const shown = createMemo(() => {
    const turning = new Set(props.found.limits.map(({ watched }) => watched))
    const rank = ({ watched, at }: { readonly watched: Watched; readonly at: number }): number => (watched.isCheck ? (turning.has(at) ? 1 : 2) : 0)
    return props.found.begun.watched.map((watched, at) => ({ watched, at })).toSorted((one, other) => rank(one) - rank(other)).slice(0, MOST_VALUES)
  })
  return (
    <Show when={point()} fallback={<p class="whatif-hint">Point at a figure, or move on it by the arrow keys, for the values there.</p>}>
      {(one) => (
        <div class="sweep-point">
          <table class="whatif-table">
            <caption class="unseen">Values at the point</caption>
            <tbody>
              <For each={props.found.begun.axes}>{(axis, at) => <tr><th scope="row">{axis.input.label ?? printCellPlace(axis.input)}</th><td><b>{withUnit(one().given[at()] ?? Number.NaN, axis.unitText)}</b></td></tr>}</For>
              <For each={shown()}>{({ watched, at }) => <tr><th scope="row">{watched.label ?? printCellPlace(watched)}</th><td class={lookOf(one().readings[at]?.value)}>{readingWords(watched, one().readings[at]?.value, one().readings[at]?.check?.words)}</td></tr>}</For>
            </tbody>
          </table>
          <button type="button" class="plain-button" onClick={() => putIntoGrid(session, props.found.begun.axes.map((axis, at) => ({ place: axis.input, number: axis.inCell[one().at[at] ?? 0] ?? Number.NaN, unitText: axis.input.unitText })))}>Put this point into the grid</button>
        </div>
      )}
    </Show>
  )
}

function PointTable(props: { readonly state: SweepState; readonly found: SweepFound }): JSX.Element {
  const [from, setFrom] = createSignal(0)
  const shown = () => props.found.points.slice(from(), from() + ROWS_SHOWN)
  return (
    <details class="sweep-table">
      <summary>The points as a table: {props.found.points.length}</summary>
      <Show when={props.found.points.length > ROWS_SHOWN}>
        <div class="whatif-verbs">
          <button type="button" class="plain-button" disabled={from() === 0} onClick={() => setFrom(Math.max(0, from() - ROWS_SHOWN))}>Earlier</button>
          <button type="button" class="plain-button" disabled={from() + ROWS_SHOWN >= props.found.points.length} onClick={() => setFrom(from() + ROWS_SHOWN)}>Later</button>
          <span class="whatif-hint">{from() + 1} to {Math.min(from() + ROWS_SHOWN, props.found.points.length)}</span>
        </div>
      </Show>
      <div class="whatif-scroll" tabindex={0} role="group" aria-label="Points of the sweep">
        <table class="whatif-table">
          <thead><tr><For each={props.found.begun.axes}>{(axis) => <th scope="col">{axisTitle(axis)}</th>}</For><For each={props.found.begun.watched}>{(one) => <th scope="col">{one.isCheck ? (one.label ?? printCellPlace(one)) : withUnitText(one.label ?? printCellPlace(one), one.unitText)}</th>}</For></tr></thead>
          <tbody>
            <For each={shown()}>
              {(point) => (
                <tr>
                  <For each={point.given}>{(number) => <th scope="row">{formatNumber(number)}</th>}</For>
                  <For each={point.readings}>{({ value }) => <td class={lookOf(value)}>{valueWords(value)}</td>}</For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </div>
    </details>
  )
}

const lookOf = (value: CellValue | undefined): string => (isCellError(value) ? 'error' : value === false ? 'not-met' : '')

function valueWords(value: CellValue | undefined): string {
  if (isCellError(value)) return value.error
  if (typeof value === 'boolean') return value ? 'met' : 'not met'
  return typeof value === 'number' ? formatNumber(value) : (value ?? '')
}

function readingWords(watched: Watched, value: CellValue | undefined, words: string | undefined): string {
  if (isCellError(value)) return `${value.error}: ${value.message}`
  return typeof value === 'number' ? withUnit(value, watched.unitText) : (words ?? valueWords(value))
}
