import { createEffect, createMemo, createSignal, For, onCleanup, Show, type JSX } from 'solid-js'
import { isLoss } from '../../exchange/import/import-remark.ts'
import type { Imported } from '../../exchange/import/import-sheets.ts'
import type { ReadSheet } from '../../exchange/reading/contents.ts'
import { isDocumentSheet } from '../../exchange/return/own-workbook.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'
import { WorkStopped } from '../state/long-work.ts'
import { ReplaceDialog } from '../top/ReplaceDialog.tsx'
import { DialectFields, type DialectChoice } from './DialectFields.tsx'
import { bringIn, type Destination } from './import-actions.ts'
import { counted } from '../parts/counted.ts'
import { FILE_KIND_WORDS } from './import-words.ts'
import { RemarkGroups } from './ImportReport.tsx'
import { importingOf, type ImportSource } from './importing.ts'
import { OwnFile } from './OwnFile.tsx'
import { prepareImport } from './preparing.ts'
import { readAgain } from './read-again.ts'
import { SheetPreview } from './SheetPreview.tsx'
import './ImportDialog.css'

/** A file that has been read: what it is, its sheets with their first rows, what will not be as in the file, and where its sheets are to go. */
export function ImportDialog(props: { readonly source: ImportSource; readonly sheet: number; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const { setStage } = importingOf(session)
  // What the file holds may be read again, with another dialect; another file is another dialog.
  const [source, setSource] = createSignal(props.source)
  const [shown, setShown] = createSignal(props.sheet)
  const [chosen, setChosen] = createSignal<ReadonlySet<number>>(new Set(props.source.contents.sheets.flatMap(({ hidden }, position) => (hidden ? [] : [position]))))
  const [problem, setProblem] = createSignal<string | undefined>(undefined)
  const [replaces, setReplaces] = createSignal(false)
  const isOwn = createMemo(() => source().contents.sheets.some(isDocumentSheet))
  const prepared = createPrepared(source, chosen)
  const sheets = () => source().contents.sheets

  const choose = (position: number, isChosen: boolean) => {
    setChosen((before) => new Set(isChosen ? [...before, position] : [...before].filter((one) => one !== position)))
    setShown(position)
  }
  const go = (destination: Destination) => {
    const [from, some, made] = [source(), chosen(), destination === 'this workbook' ? prepared.result() : undefined]
    props.onClose()
    void bringIn(session, from, some, destination, made)
  }
  const asNew = () => {
    if (session.document.unsaved() && session.keeping.problem() !== undefined) setReplaces(true)
    else go('a new workbook')
  }
  const dialect = async (choice: DialectChoice) => {
    try {
      const again = await readAgain(source(), choice)
      if (again === undefined) return
      setProblem('problem' in again ? again.problem : undefined)
      if ('contents' in again) setSource(again)
    } catch (reason) {
      if (!(reason instanceof WorkStopped)) setProblem(reason instanceof Error ? reason.message : String(reason))
    }
  }

  return (
    <Dialog title={`Import ${source().fileName}`} class="wide-import" onClose={props.onClose}>
      <div class="import-dialog">
        <p class="import-facts">{FILE_KIND_WORDS[source().contents.kind]} · {counted(sheets().length, 'sheet')}</p>
        <Show when={isOwn()}><OwnFile source={source()} onClose={props.onClose} /></Show>
        <Show when={source().file && source().contents.dialect}>{(read) => <DialectFields dialect={read()} onChange={(choice) => void dialect(choice)} />}</Show>
        <Show when={problem()}>{(words) => <p class="import-problem" role="alert">{words()}</p>}</Show>
        <div class="import-sheets">
          <fieldset class="import-choice">
            <legend>Sheets to bring in</legend>
            <div class="import-sheet-list">
              <For each={sheets()}>
                {(sheet, position) => (
                  <div class="import-sheet" classList={{ shown: shown() === position() }}>
                    <label>
                      <input type="checkbox" autofocus={position() === 0} checked={chosen().has(position())} onChange={(event) => choose(position(), event.currentTarget.checked)} />
                      <span>{sheet.name || 'without a name'}<small>{sizeWords(sheet)}</small></span>
                    </label>
                    <Show when={sheets().length > 1}><button type="button" class="import-show" aria-pressed={shown() === position()} aria-label={`Show the first rows of ${sheet.name}`} onClick={() => setShown(position())}>Show</button></Show>
                  </div>
                )}
              </For>
            </div>
          </fieldset>
          <Show when={sheets()[shown()]}>{(sheet) => <SheetPreview contents={source().contents} sheet={sheet()} />}</Show>
        </div>
        <section class="import-losses" aria-label="What will not be as in the file">
          <p role="status">{lossWords(prepared.result(), prepared.share(), chosen().size)}</p>
          <Show when={prepared.result()?.remarks.length}>
            <details>
              <summary>See all remarks</summary>
              <div class="import-report" tabindex={0} role="region" aria-label="Remarks"><RemarkGroups remarks={prepared.result()?.remarks ?? []} most={MOST_SHOWN} /></div>
            </details>
          </Show>
        </section>
        <div class="dialog-verbs">
          <button type="button" class="main-button" disabled={chosen().size === 0} onClick={() => go('this workbook')}>As sheets of this workbook</button>
          <button type="button" class="plain-button" disabled={chosen().size === 0} onClick={asNew}>As a new workbook</button>
          <button type="button" class="plain-button" disabled={(sheets()[shown()]?.rows.length ?? 0) === 0} onClick={() => setStage({ stage: 'list', source: source(), sheet: shown() })}>Rows into a list</button>
          <button type="button" class="plain-button" onClick={() => props.onClose()}>Cancel</button>
        </div>
      </div>
      <Show when={replaces()}><ReplaceDialog go={() => go('a new workbook')} onClose={() => setReplaces(false)} /></Show>
    </Dialog>
  )
}

const MOST_SHOWN = 60

function sizeWords({ rows, hidden }: ReadSheet): string {
  let columns = 0
  for (const row of rows) if (row && row.length > columns) columns = row.length
  const size = rows.length === 0 ? 'empty' : `${counted(rows.length, 'row')}, ${counted(columns, 'column')}`
  return hidden ? `${size} · hidden in the file` : size
}

/** The sheets chosen are made ready while the user looks at them: what is lost is told before it is too late. */
function createPrepared(source: () => ImportSource, chosen: () => ReadonlySet<number>) {
  const session = useSession()
  const [result, setResult] = createSignal<Imported | undefined>(undefined)
  const [share, setShare] = createSignal(0)
  createEffect(() => {
    const [{ contents }, sheets, target] = [source(), chosen(), session.document.workbook()]
    let isWanted = true
    onCleanup(() => (isWanted = false))
    setResult(undefined)
    setShare(0)
    void prepareImport(contents, sheets, target, (exact) => setShare(Math.floor(exact * 100)), () => isWanted).then((imported) => {
      if (isWanted && imported) setResult(imported)
    })
  })
  return { result, share }
}

function lossWords(imported: Imported | undefined, share: number, sheets: number): string {
  if (sheets === 0) return 'No sheet is chosen.'
  if (imported === undefined) return `Looking through the sheets: ${share} %`
  const formulas = imported.remarks.filter(({ kind }) => kind === 'kept as text').length
  const others = imported.remarks.filter((one) => isLoss(one) && one.kind !== 'kept as text').length
  const parts = [
    ...(formulas > 0 ? [`${counted(formulas, 'formula')} ${formulas === 1 ? 'is' : 'are'} kept as text, which Lowside does not compute`] : []),
    ...(others > 0 ? [`${counted(others, 'thing')} ${others === 1 ? 'is' : 'are'} left out`] : []),
  ]
  return parts.length === 0 ? 'All formulas and values come along.' : `${parts.join('; ')}.`
}
