import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { catalogue } from '../../../functions/catalogue.ts'
import { methodPages } from '../../../functions/guide/methods.ts'
import { units, type Unit } from '../../../functions/units/units.ts'
import { CAUTIONS } from '../../../functions/cautions.ts'
import { FunctionWords, Sources } from './FunctionWords.tsx'
import { KEYS_IN_WORDS } from './keys-in-words.ts'

/** Functions, methods, units, keys and cautions, to look up while working. */
export function Guide(): JSX.Element {
  const [wanted, setWanted] = createSignal('')
  const groups = createMemo(() => grouped(catalogue.filter((definition) => hasWords(`${definition.name} ${definition.gives} ${definition.use}`, wanted())), ({ group }) => group))
  const pages = createMemo(() => methodPages.filter(({ title, paragraphs }) => hasWords(`${title} ${paragraphs.join(' ')}`, wanted())))
  const dimensions = grouped(units, ({ dimension }) => dimension)

  return (
    <>
      <input class="guide-find" type="search" placeholder="Find in the guide" aria-label="Find in the guide" value={wanted()} onInput={(event) => setWanted(event.currentTarget.value)} />
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
      <Show when={pages().length > 0}>
        <h2>Methods</h2>
        <For each={pages()}>
          {(page) => (
            <Folded head={<b>{page.title}</b>}>
              <section class="function-words">
                <For each={page.paragraphs}>{(paragraph) => <p>{paragraph}</p>}</For>
                <Show when={page.sources.length > 0}>
                  <h3>Source</h3>
                  <Sources sources={page.sources} />
                </Show>
              </section>
            </Folded>
          )}
        </For>
      </Show>
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

function hasWords(text: string, wanted: string): boolean {
  const words = text.toLowerCase()
  return wanted.toLowerCase().split(/\s+/).every((word) => words.includes(word))
}

const unitWords = ({ code, aliases }: Unit): string => (aliases.length > 0 ? `${code} (${aliases.join(', ')})` : code)

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): [string, Item[]][] {
  const groups = new Map<string, Item[]>()
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item])
  return [...groups]
}
