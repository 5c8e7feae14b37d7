import { createMemo, For, Show, type JSX } from 'solid-js'
import { comparedText, differenceText, type CaseOutcome, type ComparedValue, type UnmetCheck } from '../../../calc/case-outcomes.ts'
import { isCellError } from '../../../calc/values.ts'
import { compareCells, stopComparing } from '../../../workbook/case-commands.ts'
import { casesOf } from '../../../workbook/cases.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { cellAt, isFormula } from '../../../workbook/document.ts'
import { Icon } from '../../parts/Icon.tsx'
import type { CaseResults } from '../../state/case-results.ts'
import { useSession } from '../../state/session.ts'
import { CaseHeads } from './CaseHeads.tsx'

/** Results and checks that were chosen, a row each, a column a case, with their differences from the base. */
export function ResultsTable(props: { readonly results: CaseResults }): JSX.Element {
  const session = useSession()
  const workbook = session.document.workbook
  let section: HTMLElement | undefined
  const compared = createMemo(() => new Map(casesOf(workbook()).compared.map((place) => [printCellPlace(place), place])))
  /** Where in the outcomes a compared cell stands. */
  const places = createMemo(() => new Map((props.results.of()?.cases?.compared ?? []).map((place, index) => [printCellPlace(place), index])))
  const columns = createMemo(() => [0, ...casesOf(workbook()).list.map((_, index) => index + 1)])
  const outcome = (column: number): CaseOutcome | undefined => props.results.outcomes()?.[column]
  const active = (): CellPlace => ({ sheet: session.sheetName(), ...session.selection.active() })
  const canAdd = () => {
    const cell = session.activeCell()
    return cell !== undefined && (cell.role === 'result' || cell.role === 'check' || isFormula(cell.content)) && !compared().has(printCellPlace(active()))
  }
  const isStale = () => props.results.of() !== undefined && props.results.of() !== workbook()
  const state = () => {
    const problem = props.results.problem()
    if (problem !== undefined) return problem
    if (props.results.working()) return 'Working out the cases…'
    return isStale() ? 'As before the last change' : ''
  }
  const notMet = () => columns().flatMap((column) => (outcome(column)?.notMet ?? []).map((check) => ({ check, name: outcome(column)?.name ?? '' })))

  return (
    <section ref={(element) => (section = element)} tabindex={-1} aria-label="Results compared">
      <div class="cases-head">
        <h3>Results compared</h3>
        <span class="cases-state" role="status">{state()}</span>
        <Show when={props.results.problem() !== undefined}><button type="button" class="plain-button" onClick={() => props.results.again()}>Work out again</button></Show>
      </div>
      <Show when={compared().size > 0 || casesOf(workbook()).list.length > 0}>
        <div class="cases-scroll" tabindex={0} role="region" aria-label="Results by case">
          <table class="cases-table" classList={{ 'cases-stale': isStale() }}>
            <CaseHeads first="Result" />
            <tbody>
              <tr>
                <th scope="row">All checks of the workbook</th>
                <For each={columns()}>{(column) => <td><ChecksCell outcome={outcome(column)} /></td>}</For>
              </tr>
              <For each={[...compared().keys()]}>
                {(key) => <Row place={compared().get(key) ?? active()} values={columns().map((column) => outcome(column)?.compared[places().get(key) ?? -1])} onRemoved={() => section?.focus()} />}
              </For>
            </tbody>
          </table>
        </div>
      </Show>
      <Show when={canAdd()} fallback={<p class="cases-hint">To compare a result or a check, select its cell in the grid.</p>}>
        <button type="button" class="plain-button case-add" onClick={() => session.act('Compare', (before) => compareCells(before, [active()]))}>Compare {printCellPlace(active())}</button>
      </Show>
      <Show when={notMet().length > 0}>
        <h3>Checks not met</h3>
        <ul class="case-unmet">
          <For each={notMet().slice(0, MOST_LISTED)}>{({ check, name }) => <li><Unmet check={check} name={name} /></li>}</For>
        </ul>
        <Show when={notMet().length > MOST_LISTED}><p class="cases-hint">and {notMet().length - MOST_LISTED} more</p></Show>
      </Show>
    </section>
  )
}

/** More would be no list to read. */
const MOST_LISTED = 40

function Row(props: { readonly place: CellPlace; readonly values: readonly (ComparedValue | undefined)[]; readonly onRemoved: () => void }): JSX.Element {
  const session = useSession()
  const format = () => cellAt(session.document.workbook(), props.place.sheet, props.place.row, props.place.column) ?? {}
  const address = () => printCellPlace(props.place)
  const label = () => props.values[0]?.label ?? address()
  return (
    <tr>
      <th scope="row">
        <button type="button" class="case-place" title={address()} onClick={() => session.goTo(props.place.sheet, props.place)}>{label()}</button>
        <small>{props.values[0]?.unit ?? ''}</small>
        <button type="button" class="case-drop" aria-label={`Compare ${label()} no longer`} title="Compare no longer" onClick={() => {
          session.act('Compare no longer', (workbook) => stopComparing(workbook, props.place))
          props.onRemoved()
        }}><Icon name="close" /></button>
      </th>
      <For each={[...props.values.keys()]}>
        {(column) => (
          <td>
            <Show when={props.values[column]} fallback="…">
              {(value) => <><ValueText value={value()} text={comparedText(value(), format())} /><Difference base={props.values[0]} value={value()} isBase={column === 0} /></>}
            </Show>
          </td>
        )}
      </For>
    </tr>
  )
}

function ValueText(props: { readonly value: ComparedValue; readonly text: string }): JSX.Element {
  const kind = () => (isCellError(props.value.value) ? 'error' : props.value.check ? (props.value.check.met ? 'met' : 'not-met') : '')
  const title = () => (isCellError(props.value.value) ? props.value.value.message : undefined)
  return <span class={`case-result ${kind()}`} title={title()}>{props.text || '—'}</span>
}

function Difference(props: { readonly base: ComparedValue | undefined; readonly value: ComparedValue; readonly isBase: boolean }): JSX.Element {
  const words = () => (props.isBase || !props.base ? undefined : differenceText(props.base, props.value))
  return <Show when={words()}>{(text) => <small class="case-difference">{text()}</small>}</Show>
}

function ChecksCell(props: { readonly outcome: CaseOutcome | undefined }): JSX.Element {
  return (
    <Show when={props.outcome} fallback="…">
      {(outcome) => (
        <>
          <span class={`case-result ${outcome().checks === 0 ? '' : outcome().notMet.length === 0 ? 'met' : 'not-met'}`}>{checksWords(outcome())}</span>
          <Show when={outcome().errors > 0}><small>{outcome().errors === 1 ? '1 error' : `${outcome().errors} errors`}</small></Show>
        </>
      )}
    </Show>
  )
}

function checksWords({ checks, notMet }: CaseOutcome): string {
  if (checks === 0) return 'no checks'
  return notMet.length === 0 ? `all ${checks} met` : `${notMet.length} of ${checks} not met`
}

function Unmet(props: { readonly check: UnmetCheck; readonly name: string }): JSX.Element {
  const session = useSession()
  return (
    <button type="button" class="case-place" onClick={() => session.goTo(props.check.sheet, props.check)}>
      <b>{props.name}</b> {props.check.sheet}, {props.check.label ?? printCellPlace(props.check)}: {props.check.words}
    </button>
  )
}
