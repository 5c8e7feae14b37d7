import { createResource, For, Show, type JSX } from 'solid-js'
import { argumentLabel, signature, type Example, type FunctionDefinition, type Source } from '../../../functions/define.ts'
import type { CellValue } from '../../calc/values.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { valueText } from '../../calc/cell-value.ts'
import { useSession } from '../state/session.ts'

/** A function of the catalogue in words; `brief` leaves out what only someone who writes a formula needs. */
export function FunctionWords(props: { readonly definition: FunctionDefinition; readonly brief?: boolean }): JSX.Element {
  return (
    <section class="function-words">
      <h3 class="function-name">{props.definition.name}</h3>
      <p class="function-gives">{props.definition.gives}</p>
      <Show when={!props.brief}>
        <p class="function-signature">{signature(props.definition)}</p>
        <p>{props.definition.use}</p>
        <dl class="function-arguments">
          <For each={Object.entries(props.definition.arguments)}>
            {([key, { words, accepts }]) => <><dt>{argumentLabel(key)}</dt><dd>{words}<small>{accepts}</small></dd></>}
          </For>
        </dl>
      </Show>
      <h4>Equation</h4>
      <p class="function-equation">{props.definition.equation}</p>
      <Show when={!props.brief}>
        <h4>Example</h4>
        <For each={props.definition.examples}>{(example) => <LiveExample example={example} />}</For>
      </Show>
      <h4>Source</h4>
      <Sources sources={props.definition.sources} />
      <Show when={props.definition.cautions?.length}>
        <h4>Caution</h4>
        <ul class="function-cautions"><For each={props.definition.cautions}>{(caution) => <li>{caution}</li>}</For></ul>
      </Show>
    </section>
  )
}

/** The example computed here and now, so that the guide cannot say what the graph does not. */
function LiveExample(props: { readonly example: Example }): JSX.Element {
  const session = useSession()
  const [value] = createResource(() => session.service.evaluate(props.example.formula, session.sheet().name).catch(() => null))
  return <p class="function-example">{props.example.formula} <span>gives {value.latest === undefined ? props.example.value : exampleText(value.latest, props.example)}</span></p>
}

/** As many significant digits as the definition prints. */
function exampleText(value: CellValue | undefined, { value: printed }: Example): string {
  if (typeof value !== 'number') return valueText(value)
  const digits = printed.replace(/^-?0*\.?0*|[-.]/g, '').length
  return formatNumber(value, { digits: Math.max(1, digits) })
}

export function Sources(props: { readonly sources: readonly Source[] }): JSX.Element {
  return (
    <ul class="function-sources">
      <For each={props.sources}>{({ cite, confidence }) => <li>{cite} <span class={`confidence ${confidence === 'confirmed' ? 'sure' : 'unsure'}`}>{confidence}</span></li>}</For>
    </ul>
  )
}
