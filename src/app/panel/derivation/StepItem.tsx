import { For, Show, type JSX } from 'solid-js'
import { functionByName } from '../../../../functions/catalogue.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { areaText } from '../../../review/derivation/area-text.ts'
import { aside } from '../../../review/derivation/derivation-text.ts'
import type { Step } from '../../../review/derivation/derivation.ts'
import { whereWords } from '../../../review/derivation/where.ts'
import { shownEqualities, shownWords } from '../../../review/derivation/shown-lines.ts'

interface Props {
  readonly step: Step
  readonly steps: readonly Step[]
  readonly isOpen: boolean
  readonly isAt: boolean
  readonly isResult: boolean
  readonly onToggle: () => void
  readonly onGo: () => void
  readonly onStep: (number: number) => void
}

/** So many rows of a range are listed beside the grid, which shows the others. */
const ROWS_LISTED = 40

/** One step: in a line its number, name and value; open, how it is computed. */
export function StepItem(props: Props): JSX.Element {
  return (
    <li role="treeitem" class="derivation-step" classList={{ result: props.isResult, given: props.step.formula === undefined }} data-step={props.step.number}
      aria-expanded={props.isOpen} aria-label={`${props.step.number}, ${props.step.label}, ${props.step.value}, ${areaText(props.step.cells)}`} tabindex={props.isAt ? 0 : -1}>
      <div class="derivation-line">
        <span class="derivation-fold-mark" aria-hidden="true" onClick={() => props.onToggle()}>{props.isOpen ? '▾' : '▸'} {props.step.number}</span>
        <span class="derivation-go" onClick={() => props.onGo()}>
          <span class="derivation-label">{props.step.label}</span> <span class="derivation-address">{areaText(props.step.cells)}</span> <span class="derivation-value" classList={{ wrong: props.step.error !== undefined || props.step.met === false }}>{props.step.value}</span>
        </span>
      </div>
      <Show when={props.isOpen}><Opened {...props} /></Show>
    </li>
  )
}

function Opened(props: Props): JSX.Element {
  const step = () => props.step
  const equalities = () => shownEqualities(step())
  return (
    <div class="derivation-opened">
      <For each={shownWords(step())}>{(words) => <p>= <Linked text={words} {...props} /></p>}</For>
      <For each={equalities()}>{(line, at) => <p classList={{ comes: at() === equalities().length - 1 }}>= <Linked text={line} {...props} /><Show when={at() === 0 && step().kind !== 'computed'}><small> (the first, {printCellPlace(step().formula?.at ?? step().place)})</small></Show></p>}</For>
      <Show when={aside(step())}>{(words) => <p class="derivation-small">{words()}</p>}</Show>
      <For each={step().formula?.reasons}>{(reason) => <p class="derivation-small"><Linked text={reason} {...props} /></p>}</For>
      <For each={step().formula?.wheres}>{(where) => <p class="derivation-small">where <Linked text={whereWords(where)} {...props} /></p>}</For>
      <Show when={step().error}>{(words) => <p class="derivation-wrong">{words()}</p>}</Show>
      <Show when={step().circular}><p class="derivation-wrong">Hangs on itself: its references go in a circle.</p></Show>
      <For each={step().functions}>{(name) => <p class="derivation-small">{name}: {functionByName(name)?.equation}</p>}</For>
      <For each={step().remarks}>{({ heading, text }) => <p class="derivation-small">{heading ?? 'Remark'}: {text}</p>}</For>
      <Show when={step().note}>{(note) => <p class="derivation-small">Note: {note()}</p>}</Show>
      <Show when={step().passedOn.length > 0}><p class="derivation-small">Passed on at {step().passedOn.map(({ place, value }) => `${printCellPlace(place)} (${value})`).join(', ')}</p></Show>
      <Show when={step().formula?.raw}>{(raw) => <p class="derivation-raw">{raw()}</p>}</Show>
      <Show when={step().rows.length > 0}>
        <ul class="derivation-rows">
          <For each={step().rows.slice(0, ROWS_LISTED)}>{({ place, label, value }) => <li><span>{printCellPlace(place)}</span> {label}: {value}</li>}</For>
          <Show when={step().count > ROWS_LISTED}><li>and {step().count - ROWS_LISTED} more</li></Show>
        </ul>
      </Show>
    </div>
  )
}

/** A text in which the numbers of steps lead to them. By keyboard the arrow keys of the list do. */
function Linked(props: { readonly text: string; readonly steps: readonly Step[]; readonly onStep: (number: number) => void }): JSX.Element {
  const parts = () => props.text.split(/(\[\d+\])/)
  return (
    <For each={parts()}>
      {(part) => {
        const number = Number(/^\[(\d+)\]$/.exec(part)?.[1] ?? 0)
        return number >= 1 && number <= props.steps.length ? <span class="derivation-number" onClick={() => props.onStep(number)}>{part}</span> : part
      }}
    </For>
  )
}
