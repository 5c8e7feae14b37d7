import { createSignal, For, onMount, Show, type JSX } from 'solid-js'
import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import { FIND_PLACES, replace, type FindPlace, type Found } from '../../workbook/find.ts'
import { createFinding, nextFound, type Finding } from '../state/finding.ts'
import { useSession } from '../state/session.ts'
import './Find.css'

/** More would be no list to read. */
const MOST_LISTED = 200

const PLACE_WORDS: Readonly<Record<FindPlace, string>> = { contents: 'what was typed', values: 'what is shown', notes: 'notes' }

const STATE_WORDS: Readonly<Record<ReturnType<Finding['state']>, string>> = { whole: '', searching: ' so far', stopped: ' until the search was stopped' }

/** Finds a text in the cells of the sheet or the workbook, and replaces it. */
export function Find(): JSX.Element {
  const session = useSession()
  const finding = createFinding(session)
  const [replacement, setReplacement] = createSignal('')
  let field: HTMLInputElement | undefined
  onMount(() => field?.focus())

  const goTo = ({ sheet, row, column }: Found) => session.goTo(sheet, { row, column })
  const here = () => ({ sheet: session.sheetName(), ...session.selection.active() })
  const sheets = () => session.document.workbook().sheets.map(({ name }) => name)
  const next = (way: 1 | -1) => nextFound(finding.found(), sheets(), here(), way)
  const isHere = (one: Found) => one.sheet === here().sheet && one.row === here().row && one.column === here().column
  const goOn = (way: 1 | -1) => {
    const one = next(way)
    if (one) goTo(one)
  }

  function replaceIn(places: readonly Found[]): void {
    const query = finding.query()
    const { place } = query
    if (place === 'values' || places.length === 0 || !session.settle()) return
    session.act('Replace', (workbook) => replace(workbook, { ...query, place }, replacement(), places))
    if (session.notice()?.tone !== 'problem') session.setNotice({ tone: 'done', text: places.length === 1 ? 'Replaced in 1 cell' : `Replaced in ${places.length.toLocaleString('en')} cells` })
  }
  /** In the cell at hand if it is one that was found, then on to the next one; else to the next one only. */
  function replaceOne(): void {
    const one = finding.found().find(isHere)
    const following = next(1)
    if (one) replaceIn([one])
    if (following) goTo(following)
  }

  return (
    <div class="find">
      <h2>Find</h2>
      <label>Text<input
        ref={(element) => (field = element)}
        class="find-text" type="text" spellcheck={false} autocomplete="off" value={finding.text()}
        onInput={({ currentTarget }) => finding.setText(currentTarget.value)}
        onKeyDown={(event) => event.key === 'Enter' && goOn(event.shiftKey ? -1 : 1)}
      /></label>
      <fieldset>
        <legend>Look in</legend>
        <For each={FIND_PLACES}>
          {(place) => <label><input type="radio" name="find-place" checked={finding.place() === place} onChange={() => finding.setPlace(place)} />{PLACE_WORDS[place]}</label>}
        </For>
      </fieldset>
      <div class="find-options">
        <label><input type="checkbox" checked={finding.here()} onChange={({ currentTarget }) => finding.setHere(currentTarget.checked)} />this sheet only</label>
        <label><input type="checkbox" checked={finding.whole()} onChange={({ currentTarget }) => finding.setWhole(currentTarget.checked)} />the whole text of a cell</label>
        <label><input type="checkbox" checked={finding.matchCase()} onChange={({ currentTarget }) => finding.setMatchCase(currentTarget.checked)} />same capitals</label>
      </div>
      <Show when={finding.place() !== 'values'} fallback={<p class="panel-empty">What is shown comes from what was typed: to replace, look in what was typed.</p>}>
        <label>Replace by<input type="text" spellcheck={false} autocomplete="off" value={replacement()} onInput={({ currentTarget }) => setReplacement(currentTarget.value)} /></label>
        <div class="find-buttons">
          <button type="button" class="plain-button" disabled={finding.found().length === 0} onClick={replaceOne}>Replace, go on</button>
          <button type="button" class="plain-button" disabled={finding.found().length === 0 || finding.state() !== 'whole'} onClick={() => replaceIn(finding.found())}>Replace all</button>
        </div>
      </Show>
      <Show when={finding.text() !== ''}>
        <p class="find-count" role="status">{countWords(finding.found().length)}{STATE_WORDS[finding.state()]}</p>
        <ul class="find-list" aria-label="Cells found">
          <For each={finding.found().slice(0, MOST_LISTED)}>
            {(one) => (
              <li>
                <button type="button" aria-current={isHere(one)} onClick={() => goTo(one)}>
                  <span class="find-place">{quoteSheetName(one.sheet)}!{printAddress(one.row, one.column)}</span> <span class="find-words">{one.text}</span>
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </div>
  )
}

function countWords(count: number): string {
  const cells = count === 1 ? '1 cell' : `${count.toLocaleString('en')} cells`
  if (count === 0) return 'In no cell'
  return count > MOST_LISTED ? `In ${cells}; the first ${MOST_LISTED} are listed` : `In ${cells}`
}
