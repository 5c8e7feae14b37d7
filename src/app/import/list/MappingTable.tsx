import { createMemo, createUniqueId, For, Show, type JSX } from 'solid-js'
import { findUnit, unitCodes } from '../../../../functions/units/units.ts'
import type { ListColumn } from '../../../exchange/lists/list.ts'
import { choiceKey, type ColumnMapping } from '../../../exchange/lists/mapping.ts'
import { sourceText } from '../../../exchange/lists/source-table.ts'
import { distinctTexts } from '../../../exchange/lists/suggest-mapping.ts'
import type { ListWizardState } from './list-wizard-state.ts'
import { contentWords } from './list-words.ts'

/** For each column of the list where it comes from, in which unit, and what becomes of the first value. */
export function MappingTable(props: { readonly state: ListWizardState }): JSX.Element {
  return (
    <section class="list-mapping" aria-labelledby="list-mapping-head">
      <h3 id="list-mapping-head">Columns</h3>
      <div class="list-scroll">
        <table>
          <thead>
            <tr><th scope="col">List</th><th scope="col">Column of the file</th><th scope="col">Its unit</th><th scope="col">If empty, or for all</th><th scope="col">First value</th></tr>
          </thead>
          <For each={props.state.list().columns}>{(column, index) => <ColumnRow state={props.state} column={column} at={index()} />}</For>
        </table>
      </div>
    </section>
  )
}

interface RowProps {
  readonly state: ListWizardState
  readonly column: ListColumn
  readonly at: number
}

function ColumnRow(props: RowProps): JSX.Element {
  const id = createUniqueId()
  const mapping = createMemo((): ColumnMapping | undefined => props.state.mapping().columns.get(props.column.column))
  const needed = () => mapping() === undefined && !props.column.isRemark && (props.column.isAlwaysFilled || props.column.isTag)
  const advice = () => mapping()?.unsure ?? (needed() ? 'no column yet: every row of the list has one' : undefined)
  return (
    <tbody classList={{ 'is-unsure': mapping()?.unsure !== undefined, 'is-needed': needed() }}>
      <tr>
        <th scope="row">{props.column.heading}<Show when={props.column.unit}>{(unit) => <span class="list-unit">{unit()}</span>}</Show></th>
        <td>
          <select aria-label={`Column of the file for ${props.column.heading}`} aria-describedby={id} value={String(mapping()?.from ?? '')} onChange={(event) => props.state.chooseSource(props.column, event.currentTarget.value === '' ? undefined : Number(event.currentTarget.value))}>
            <option value="">–</option>
            <For each={props.state.source().columns}>{({ column, name }) => <option value={String(column)} selected={column === mapping()?.from}>{name}</option>}</For>
          </select>
        </td>
        <td><Show when={props.column.unit !== undefined && mapping()?.from !== undefined}><UnitChoice {...props} mapping={mapping()} /></Show></td>
        <td><ConstantField {...props} mapping={mapping()} /></td>
        <td class="list-sample"><Sample {...props} mapping={mapping()} /></td>
      </tr>
      <Show when={advice() !== undefined || (props.column.kind === 'choice' && mapping()?.from !== undefined)}>
        <tr class="list-advice">
          <td colspan={5} id={id}>
            <Show when={advice()}>{(words) => <p><span aria-hidden="true">?</span> {words()}</p>}</Show>
            <Show when={props.column.kind === 'choice' && mapping()?.from}>{(from) => <Meanings {...props} mapping={mapping()} from={from()} />}</Show>
          </td>
        </tr>
      </Show>
    </tbody>
  )
}

type PartProps = RowProps & { readonly mapping: ColumnMapping | undefined }

function UnitChoice(props: PartProps): JSX.Element {
  const dimension = () => findUnit(props.column.unit ?? '')?.dimension
  const codes = () => {
    const [known, own] = [dimension(), props.mapping?.unit]
    const fitting = known ? unitCodes(known) : []
    return own === undefined || fitting.includes(own) ? fitting : [own, ...fitting]
  }
  const beside = () => props.state.source().columns.filter(({ column }) => column !== props.mapping?.from)
  const value = () => (props.mapping?.unitColumn === undefined ? (props.mapping?.unit ?? '') : `column ${props.mapping.unitColumn}`)
  const choose = (text: string) => {
    const column = /^column (\d+)$/.exec(text)?.[1]
    props.state.change(props.column, column === undefined ? { unit: text } : { unit: '', unitColumn: Number(column) })
  }
  return (
    <select aria-label={`Unit of the file for ${props.column.heading}`} value={value()} onChange={(event) => choose(event.currentTarget.value)}>
      <option value="">per cell</option>
      <For each={codes()}>{(code) => <option value={code} selected={code === value()}>{code}</option>}</For>
      <optgroup label="named row by row in">
        <For each={beside()}>{({ column, name }) => <option value={`column ${column}`} selected={`column ${column}` === value()}>{name}</option>}</For>
      </optgroup>
    </select>
  )
}

function ConstantField(props: PartProps): JSX.Element {
  const label = () => `Value for ${props.column.heading} where the file has none${props.column.unit === undefined ? '' : `, in ${props.column.unit}`}`
  return (
    <Show
      when={props.column.kind === 'choice'}
      fallback={<input aria-label={label()} value={props.mapping?.constant ?? ''} onChange={(event) => props.state.change(props.column, { constant: event.currentTarget.value })} />}
    >
      <select aria-label={label()} value={props.mapping?.constant ?? ''} onChange={(event) => props.state.change(props.column, { constant: event.currentTarget.value })}>
        <option value="" />
        <For each={props.column.choices}>{(choice) => <option value={choice} selected={choice === props.mapping?.constant}>{choice}</option>}</For>
      </select>
    </Show>
  )
}

/** Rows that are looked through for a first value. */
const SAMPLES = 60

function Sample(props: PartProps): JSX.Element {
  const sample = createMemo(() => {
    const from = props.mapping?.from
    const row = props.state.rows().slice(0, SAMPLES).find(({ sourceRow }) => (from === undefined ? props.mapping?.constant !== undefined : sourceText(props.state.source().sheet.rows[sourceRow]?.[from]) !== ''))
    if (!row) return undefined
    const before = from === undefined ? '' : sourceText(props.state.source().sheet.rows[row.sourceRow]?.[from])
    const value = row.values[props.at] ?? null
    const after = value === null ? undefined : `${contentWords(value)}${props.column.unit === undefined ? '' : ` ${props.column.unit}`}`
    return { before, after }
  })
  return (
    <Show when={sample()}>
      {(one) => (
        <>
          <span>{one().before}</span>
          <Show when={one().after} fallback={<span class="list-bad">cannot be taken</span>}>
            {(after) => <Show when={after() !== one().before}><span class="list-after"><span aria-hidden="true">→ </span><span class="unseen">becomes </span>{after()}</span></Show>}
          </Show>
        </>
      )}
    </Show>
  )
}

/** What each text of the file stands for, where it is not the choice itself. */
function Meanings(props: PartProps & { readonly from: number }): JSX.Element {
  const texts = createMemo(() => distinctTexts(props.state.source(), props.from).filter((text) => !props.column.choices.includes(text)))
  const meant = (text: string) => props.mapping?.choices.get(choiceKey(text)) ?? ''
  return (
    <Show when={texts().length > 0}>
      <div class="list-meanings" role="group" aria-label={`What texts of the file mean for ${props.column.heading}`}>
        <For each={texts()}>
          {(text) => (
            <label>{text}
              <select value={meant(text)} onChange={(event) => props.state.chooseMeaning(props.column, choiceKey(text), event.currentTarget.value || undefined)}>
                <option value="">no choice</option>
                <For each={props.column.choices}>{(choice) => <option value={choice} selected={choice === meant(text)}>{choice}</option>}</For>
              </select>
            </label>
          )}
        </For>
      </div>
    </Show>
  )
}
