import { createMemo, For, Show, type JSX } from 'solid-js'
import { functionByName } from '../../../functions/catalogue.ts'
import type { FunctionDefinition } from '../../../functions/define.ts'
import { isCellError } from '../../calc/values.ts'
import { printAddress } from '../../workbook/address.ts'
import { isFormula, type Cell } from '../../workbook/document.ts'
import { entryOf } from '../../workbook/entry.ts'
import { calls } from '../../workbook/formula/calls.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { misfit } from '../../workbook/misfit.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import { ColouredFormula } from '../entry-line/ColouredFormula.tsx'
import { cellView } from '../grid/cell-view.ts'
import { valueText } from '../../calc/cell-value.ts'
import { useSession } from '../state/session.ts'
import { DerivationFold } from './derivation/DerivationFold.tsx'
import { CheckedBy } from './CheckedBy.tsx'
import { FunctionWords } from './FunctionWords.tsx'
import { SelectionTotal } from './SelectionTotal.tsx'
import { createWalk, FedBy, FormulaInWords, UsedBy, WayBack } from './Walk.tsx'
import { labelOf, remarksOf } from '../../workbook/words-beside.ts'

/** The active cell in words: what it is, what it shows and why. */
export function Why(): JSX.Element {
  const session = useSession()
  let head: HTMLDivElement | undefined
  const walk = createWalk(() => head?.focus())
  const at = session.selection.active
  const cell = session.activeCell
  const value = () => session.value(at().row, at().column)
  const check = () => session.values.checkAt(session.sheet().name, at().row, at().column)
  const shown = createMemo(() => cellView(cell(), value(), check()).text)
  const label = createMemo(() => labelOf(session.sheet(), at()))
  const formula = () => {
    const content = cell()?.content
    return isFormula(content) ? content : undefined
  }
  const functions = createMemo(() => functionsOf(formula()))
  const message = () => {
    const found = value()
    return isCellError(found) ? found.message : undefined
  }
  const inFull = () => {
    const found = value()
    return typeof found === 'number' && valueText(found) !== shown() ? valueText(found) : undefined
  }

  /** As the cell would show it. */
  const baseWords = (content: Cell['content']) => {
    const text = typeof content === 'number' ? formatNumber(content, cell() ?? {}) : entryOf(content)
    return text === '' ? 'nothing' : [text, typeof content === 'number' ? session.unit(at().row, at().column) : undefined].filter(Boolean).join(' ')
  }

  const withUnit = () => [shown(), session.unit(at().row, at().column)].filter(Boolean).join(' ')

  return (
    <>
      <h2 class="unseen">Why</h2>
      <WayBack trail={walk.trail} />
      <div ref={(element) => (head = element)} class="why-here" tabindex={-1} role="group" aria-label={label() ?? printAddress(at().row, at().column)}>
        <SelectionTotal />
        <Show when={cell()} fallback={<p class="panel-empty">{printAddress(at().row, at().column)} is empty. Type a number, a text, or a formula that begins with =.</p>}>
          {(held) => (
            <>
              <header class="why-head">
                <p class="why-place">{printAddress(at().row, at().column)} <span>{held().role}</span></p>
                <Show when={isValue(held()) ? label() : shown()}>{(words) => <h2>{words()}</h2>}</Show>
                <Show when={isValue(held())}>
                  <p class="why-value" classList={{ error: message() !== undefined, met: check()?.met === true, 'not-met': check()?.met === false }}>
                    {shown() || '—'} <span class="why-unit">{session.unit(at().row, at().column)}</span>
                  </p>
                </Show>
                <Show when={inFull()}>{(text) => <p class="why-full">in full {text()}</p>}</Show>
                <Show when={session.baseOf(at().row, at().column)}>{(base) => <p class="why-base">base: {baseWords(base().content)}</p>}</Show>
              </header>
              <Show when={message()}>{(text) => <p class="why-message" role="alert">{text()}</p>}</Show>
              <Show when={formula()}>{(text) => <section><h3>Formula</h3><p class="why-formula"><ColouredFormula text={text()} breaks /></p><FormulaInWords formula={text()} walk={walk} result={withUnit()} /></section>}</Show>
              <CheckedBy />
            </>
          )}
        </Show>
        {/* Between, since it stays while the walk goes over cells that are empty. */}
        <DerivationFold />
        <Show when={cell()}>
          {(held) => (
            <>
              <FedBy walk={walk} />
              <UsedBy walk={walk} />
              <For each={remarksOf(session.sheet(), at())}>{({ heading, text }) => <section><h3>{heading ?? 'Remark'}</h3><p>{text}</p></section>}</For>
              <Show when={misfit(session.sheet().rows[at().row], at().column)}>{(words) => <section><h3>Does not fit</h3><p>{words()}</p></section>}</Show>
              <Show when={held().note}>{(note) => <section><h3>Note</h3><p>{note()}</p></section>}</Show>
              <For each={functions()}>{(definition) => <FunctionWords definition={definition} brief />}</For>
            </>
          )}
        </Show>
      </div>
    </>
  )
}

const isValue = ({ role, content }: Cell): boolean => role === 'input' || role === 'result' || role === 'check' || isFormula(content)

/** Each function of the catalogue that a formula calls, once, in the order of writing. */
function functionsOf(formula: string | undefined): FunctionDefinition[] {
  if (formula === undefined) return []
  const found = calls(tokenise(formula)).flatMap(({ name }) => functionByName(name) ?? [])
  return [...new Set(found)]
}
