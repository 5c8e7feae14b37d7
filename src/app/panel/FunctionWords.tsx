import { For, Show, type JSX } from 'solid-js'
import { argumentLabel, signature, type FunctionDefinition } from '../../../functions/define.ts'

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
        <For each={props.definition.examples}>{({ formula, value }) => <p class="function-example">{formula} <span>gives {value}</span></p>}</For>
      </Show>
      <h4>Source</h4>
      <ul class="function-sources">
        <For each={props.definition.sources}>{({ cite, confidence }) => <li>{cite} <span class={`confidence ${confidence === 'confirmed' ? 'sure' : 'unsure'}`}>{confidence}</span></li>}</For>
      </ul>
      <Show when={props.definition.cautions?.length}>
        <h4>Caution</h4>
        <ul class="function-cautions"><For each={props.definition.cautions}>{(caution) => <li>{caution}</li>}</For></ul>
      </Show>
    </section>
  )
}
