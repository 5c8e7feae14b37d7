import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { catalogue } from '../../../functions/catalogue.ts'
import type { FunctionDefinition } from '../../../functions/define.ts'
import { units, type Unit } from '../../../functions/units/units.ts'
import { CAUTIONS } from '../../../functions/cautions.ts'
import { FunctionWords } from './FunctionWords.tsx'
import { KEYS_IN_WORDS } from './keys-in-words.ts'

/** Functions, units, keys and cautions, to look up while working. */
export function Guide(): JSX.Element {
  const [wanted, setWanted] = createSignal('')
  const groups = createMemo(() => grouped(catalogue.filter((definition) => matches(definition, wanted())), ({ group }) => group))
  const dimensions = grouped(units, ({ dimension }) => dimension)

  return (
    <>
      <input class="guide-find" type="search" placeholder="Find a function" aria-label="Find a function" value={wanted()} onInput={(event) => setWanted(event.currentTarget.value)} />
      <h2>Functions</h2>
      <For each={groups()} fallback={<p class="panel-empty">No function has “{wanted()}” in its words.</p>}>
        {([group, definitions]) => (
          <section class="guide-group">
            <h3>{group}</h3>
            <For each={definitions}>
              {(definition) => (
                <Folded head={<><b>{definition.name}</b> <span>{definition.gives}</span></>}><FunctionWords definition={definition} /></Folded>
              )}
            </For>
          </section>
        )}
      </For>
      <Show when={wanted() === ''}>
        <h2>Units</h2>
        <For each={dimensions}>
          {([dimension, list]) => <p class="guide-units"><b>{dimension}</b> {list.map(unitWords).join('  ')}</p>}
        </For>
        <h2>Keys</h2>
        <dl class="guide-keys"><For each={KEYS_IN_WORDS}>{([keys, words]) => <><dt>{keys}</dt><dd>{words}</dd></>}</For></dl>
        <h2>Cautions</h2>
        <ul class="function-cautions"><For each={CAUTIONS}>{(caution) => <li>{caution}</li>}</For></ul>
      </Show>
    </>
  )
}

/** What is folded away is not made before it is wanted: the guide has some hundred functions. */
function Folded(props: { readonly head: JSX.Element; readonly children: JSX.Element }): JSX.Element {
  const [isOpen, setOpen] = createSignal(false)
  return (
    <details class="guide-entry" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{props.head}</summary>
      <Show when={isOpen()}>{props.children}</Show>
    </details>
  )
}

function matches({ name, gives, use }: FunctionDefinition, wanted: string): boolean {
  const words = `${name} ${gives} ${use}`.toLowerCase()
  return wanted.toLowerCase().split(/\s+/).every((word) => words.includes(word))
}

const unitWords = ({ code, aliases }: Unit): string => (aliases.length > 0 ? `${code} (${aliases.join(', ')})` : code)

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): [string, Item[]][] {
  const groups = new Map<string, Item[]>()
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item])
  return [...groups]
}
