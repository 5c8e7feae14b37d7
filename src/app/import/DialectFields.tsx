import { For, type JSX } from 'solid-js'
import type { Dialect } from '../../exchange/reading/contents.ts'
import { DECIMAL_WORDS, DELIMITER_WORDS, ENCODING_WORDS } from './import-words.ts'

export type DialectChoice = Partial<Dialect>

/** How a text file is understood; what is chosen otherwise holds for the preview at once. */
export function DialectFields(props: { readonly dialect: Dialect; readonly onChange: (choice: DialectChoice) => void }): JSX.Element {
  const change = (part: DialectChoice) => props.onChange({ ...props.dialect, ...part })
  return (
    <div class="import-dialect" role="group" aria-label="How the text is understood">
      <Choice words="Between columns" value={props.dialect.delimiter} options={DELIMITER_WORDS} onChange={(delimiter) => change({ delimiter })} />
      <Choice words="Decimal mark" value={props.dialect.decimalMark} options={DECIMAL_WORDS} onChange={(decimalMark) => change({ decimalMark })} />
      <Choice words="Characters" value={props.dialect.encoding} options={ENCODING_WORDS} onChange={(encoding) => change({ encoding })} />
    </div>
  )
}

function Choice<Value extends string>(props: {
  readonly words: string; readonly value: Value; readonly options: readonly (readonly [Value, string])[]; readonly onChange: (value: Value) => void
}): JSX.Element {
  return (
    <label>
      {props.words}
      <select
        value={props.value}
        onChange={({ currentTarget: { selectedIndex } }) => {
          const chosen = props.options[selectedIndex]
          if (chosen) props.onChange(chosen[0])
        }}
      >
        <For each={props.options}>{([value, words]) => <option value={value} selected={value === props.value}>{words}</option>}</For>
      </select>
    </label>
  )
}
