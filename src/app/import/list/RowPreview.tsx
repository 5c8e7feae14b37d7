import { createEffect, createMemo, createSignal, For, Index, on, Show, type Accessor, type JSX } from 'solid-js'
import type { ListColumn } from '../../../exchange/lists/list.ts'
import { mendKey, type CellRemark, type MappedRow } from '../../../exchange/lists/map-rows.ts'
import type { ListWizardState, Shown } from './list-wizard-state.ts'
import { counted } from '../../parts/counted.ts'
import { contentWords } from './list-words.ts'

/** Rows on a page of the preview: more would only be scrolled past. */
const ON_PAGE = 100

/** The rows as they would be appended; beside what is wrong, why, what is accepted, and a place to mend it. */
export function RowPreview(props: { readonly state: ListWizardState }): JSX.Element {
  const [chosen, setChosen] = createSignal<Shown | undefined>(undefined)
  const [page, setPage] = createSignal(0)
  const withProblems = createMemo(() => props.state.rows().filter(({ problems }) => problems.length > 0))
  const withMarks = createMemo(() => props.state.rows().filter(({ marks, problems }) => marks.length > 0 && problems.length === 0))
  // What is wrong comes first, as long as something is.
  const shown = (): Shown => chosen() ?? 'all'
  const rows = createMemo(() => (shown() === 'problems' ? withProblems() : shown() === 'marks' ? withMarks() : props.state.rows()))
  const pages = () => Math.max(1, Math.ceil(rows().length / ON_PAGE))
  createEffect(on([shown, () => props.state.source()], () => setPage(0), { defer: true }))
  createEffect(() => page() >= pages() && setPage(pages() - 1))
  const onPage = createMemo(() => rows().slice(page() * ON_PAGE, (page() + 1) * ON_PAGE))
  const columns = createMemo(() => props.state.list().columns.flatMap((column, at) => (props.state.mapping().columns.has(column.column) || withProblems().some(({ problems }) => problems.some((one) => one.at === at)) ? [{ column, at }] : [])))
  const ways = (): readonly (readonly [Shown, string])[] => [
    ['all', counted(props.state.rows().length, 'row')],
    ['problems', `${withProblems().length} with problems`],
    ['marks', `${withMarks().length} to look at`],
  ]

  return (
    <section class="list-preview" aria-labelledby="list-preview-head">
      <div class="list-preview-head">
        <h3 id="list-preview-head">In the list</h3>
        <fieldset>
          <legend class="unseen">Rows shown</legend>
          <For each={ways()}>
            {([way, words]) => <label><input type="radio" name="list-shown" checked={shown() === way} onChange={() => setChosen(way)} />{words}</label>}
          </For>
        </fieldset>
        <Show when={withProblems().length > 0}>
          <label class="list-skip"><input type="checkbox" checked={props.state.skipsBad()} onChange={(event) => props.state.setSkipsBad(event.currentTarget.checked)} />Leave out rows with problems</label>
        </Show>
        <Show when={pages() > 1}>
          <span class="list-pages">
            <button type="button" class="plain-button" disabled={page() === 0} onClick={() => setPage(page() - 1)}>Previous</button>
            <span>{page() * ON_PAGE + 1} to {Math.min(rows().length, (page() + 1) * ON_PAGE)} of {rows().length}</span>
            <button type="button" class="plain-button" disabled={page() >= pages() - 1} onClick={() => setPage(page() + 1)}>Next</button>
          </span>
        </Show>
        <p class="unseen" role="status">{props.state.working() ? 'The rows are being worked out' : `${counted(props.state.rows().length, 'row')}, ${withProblems().length} with problems, ${withMarks().length} to look at`}</p>
      </div>
      <div class="list-scroll" tabindex={0} role="region" aria-label="Rows as they would be appended" aria-busy={props.state.working()}>
        <table>
          <thead>
            <tr>
              <th scope="col">Take</th>
              <For each={columns()}>{({ column }) => <th scope="col">{column.heading}<Show when={column.unit}>{(unit) => <span class="list-unit">{unit()}</span>}</Show></th>}</For>
            </tr>
          </thead>
          <Index each={onPage()}>{(row) => <Row state={props.state} row={row} columns={columns()} />}</Index>
        </table>
        <Show when={rows().length === 0}><p class="list-none">{props.state.working() ? 'The rows are being worked out.' : 'No such rows.'}</p></Show>
      </div>
    </section>
  )
}

interface RowProps {
  readonly state: ListWizardState
  readonly row: Accessor<MappedRow>
  readonly columns: readonly { readonly column: ListColumn; readonly at: number }[]
}

function Row(props: RowProps): JSX.Element {
  const isLeftOut = () => props.state.leftOut().has(props.row().sourceRow) || (props.row().problems.length > 0 && props.state.skipsBad())
  const remarkAt = (at: number): 'problem' | 'mark' | undefined =>
    props.row().problems.some((one) => one.at === at) ? 'problem' : props.row().marks.some((one) => one.at === at) ? 'mark' : undefined
  const found = (at: number) => props.row().problems.find((one) => one.at === at)?.found
  return (
    <tbody classList={{ 'is-left-out': isLeftOut() }}>
      <tr>
        <th scope="row">
          <label>
            <input type="checkbox" aria-label={`Take row ${props.row().sourceRow + 1} of the file`} checked={!isLeftOut()} disabled={props.row().problems.length > 0 && props.state.skipsBad()} onChange={(event) => props.state.leaveOut(props.row().sourceRow, !event.currentTarget.checked)} />
            {props.row().sourceRow + 1}
          </label>
        </th>
        <For each={props.columns}>
          {({ column, at }) => (
            <td classList={{ 'is-number': column.kind === 'number', 'is-problem': remarkAt(at) === 'problem', 'is-mark': remarkAt(at) === 'mark' }}>
              <Show when={remarkAt(at)}>{(kind) => <><span class="list-sign" aria-hidden="true">{kind() === 'problem' ? '✕' : '?'}</span><span class="unseen">{kind() === 'problem' ? 'problem: ' : 'to look at: '}</span></>}</Show>
              {remarkAt(at) === 'problem' ? found(at) || 'nothing' : contentWords(props.row().values[at])}
            </td>
          )}
        </For>
      </tr>
      <Show when={props.row().problems.length + props.row().marks.length > 0}>
        <tr class="list-remarks">
          <td colspan={props.columns.length + 1}>
            <ul>
              <Index each={props.row().problems}>{(remark) => <li><Words remark={remark()} sign="✕" /><MendField state={props.state} row={props.row().sourceRow} remark={remark()} /></li>}</Index>
              <Index each={props.row().marks}>{(remark) => <li class="is-mark"><Words remark={remark()} sign="?" /></li>}</Index>
            </ul>
          </td>
        </tr>
      </Show>
    </tbody>
  )
}

function Words(props: { readonly remark: CellRemark; readonly sign: string }): JSX.Element {
  return (
    <span>
      <span class="list-sign" aria-hidden="true">{props.sign}</span> <strong>{props.remark.heading}</strong>
      <Show when={props.remark.found}> “{props.remark.found}”</Show>: {props.remark.why}<Show when={props.sign === '✕'}>; accepted: {props.remark.accepted}</Show>
    </span>
  )
}

function MendField(props: { readonly state: ListWizardState; readonly row: number; readonly remark: CellRemark }): JSX.Element {
  const value = () => props.state.mended().get(mendKey(props.row, props.remark.at)) ?? props.remark.found
  return (
    <input
      class="list-mend"
      aria-label={`${props.remark.heading} in row ${props.row + 1}, mended`}
      value={value()}
      onChange={(event) => props.state.mend(props.row, props.remark.at, event.currentTarget.value)}
      onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}
    />
  )
}
