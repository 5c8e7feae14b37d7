import { createSignal, Show, type JSX } from 'solid-js'
import type { UnitSystem } from '../../workbook/unit-pairs.ts'
import { restate } from '../../workbook/restate.ts'
import { chooseFile } from '../files/file-access.ts'
import { exportOpenSpreadsheet, exportReport, exportSpreadsheet, exportValues, openFile, OPENED_ENDINGS, saveWorkbook, type ReadingFailure } from '../files/file-actions.ts'
import { ImportPlace, ImportVerb } from '../import/Import.tsx'
import { Icon } from '../parts/Icon.tsx'
import { Menu } from '../parts/Menu.tsx'
import { PrintVerb } from '../print/PrintVerb.tsx'
import { ReturnPlace } from '../return/ReturnPlace.tsx'
import { useSession } from '../state/session.ts'
import { ReadingFailureDialog } from './ReadingFailureDialog.tsx'
import { RecentDialog } from './RecentDialog.tsx'
import { SavedState } from './SavedState.tsx'
import { TemplateDialog } from './TemplateDialog.tsx'
import { ReplaceDialog } from './ReplaceDialog.tsx'
import { VerbList } from './VerbList.tsx'
import './TopLine.css'

/** The workbook's title and saved state, and the verbs. */
export function TopLine(): JSX.Element {
  const session = useSession()
  const [failure, setFailure] = createSignal<ReadingFailure | undefined>(undefined)
  const [choosesTemplate, setChoosesTemplate] = createSignal(false)
  const [choosesRecent, setChoosesRecent] = createSignal(false)
  const [waiting, setWaiting] = createSignal<(() => void) | undefined>(undefined)

  /** Asks before something takes the place of work that neither this browser nor a file holds. */
  const replacing = (go: () => void) => {
    if (!session.settle()) return
    if (session.document.unsaved() && session.keeping.problem() !== undefined) setWaiting(() => go)
    else go()
  }
  const open = async () => {
    const file = await chooseFile(OPENED_ENDINGS)
    if (file) setFailure(await openFile(session, file))
  }
  const restateIn = (system: UnitSystem, words: string) => {
    if (!session.settle()) return
    session.document.longChange.finish()
    const edits = restate(session.document.workbook(), system)
    if (edits.length > 0) session.act(words, () => edits)
    else session.setNotice({ tone: 'done', text: 'Nothing to restate: no unit of the other system is in use' })
  }

  return (
    <header class="top-line">
      <h1 class="unseen">{session.document.workbook().title}</h1>
      <TitleField />
      <SavedState />
      <div class="verbs" role="group" aria-label="Workbook">
        <StepButton name="undo" words="Undo" step={session.document.undoable()} run={() => session.settle() && session.undo()} />
        <StepButton name="redo" words="Redo" step={session.document.redoable()} run={() => session.settle() && session.redo()} />
        <span class="verb-gap" />
        <VerbList>
          <button type="button" class="verb" onClick={() => replacing(() => void open())}>Open</button>
          <button type="button" class="verb" onClick={() => replacing(() => setChoosesRecent(true))}>Recent</button>
          <button type="button" class="verb" onClick={() => replacing(() => setChoosesTemplate(true))}>Start from a template</button>
          <ImportVerb />
          <button type="button" class="verb" onClick={() => void saveWorkbook(session)}>Save</button>
          <Menu words="Export" items={[
            { words: 'Spreadsheet (.xlsx)', detail: 'Opens in any spreadsheet program', choose: () => void exportSpreadsheet(session) },
            { words: 'Spreadsheet (.ods)', detail: 'The same in OpenDocument, with formulas in OpenFormula', choose: () => void exportOpenSpreadsheet(session) },
            { words: 'Values (.csv, a file a sheet)', detail: 'Comma-separated text without formulas, all sheets in one .zip', choose: () => void exportValues(session) },
            { words: 'Report (.html)', detail: 'All sheets and figures as one file, to read in a browser and to print', choose: () => void exportReport(session) },
          ]} />
          <Menu words="Restate" items={[
            { words: 'Restate in SI', choose: () => restateIn('SI', 'Restate in SI') },
            { words: 'Restate in US units', choose: () => restateIn('US', 'Restate in US units') },
          ]} />
          <PrintVerb />
        </VerbList>
      </div>
      <ImportPlace />
      <ReturnPlace />
      <Show when={failure()}>{(at) => <ReadingFailureDialog failure={at()} onClose={() => setFailure(undefined)} />}</Show>
      <Show when={choosesTemplate()}><TemplateDialog onClose={() => setChoosesTemplate(false)} /></Show>
      <Show when={choosesRecent()}><RecentDialog onClose={() => setChoosesRecent(false)} /></Show>
      <Show when={waiting()}>{(go) => <ReplaceDialog go={go()} onClose={() => setWaiting(undefined)} />}</Show>
    </header>
  )
}

function TitleField(): JSX.Element {
  const session = useSession()
  const title = () => session.document.workbook().title
  return (
    <div class="title-place" data-title={title()}>
      <input
        class="title-field"
        aria-label="Title of the workbook"
        value={title()}
        onChange={(event) => session.act('Title', () => [{ kind: 'title', title: event.currentTarget.value.trim() || 'Untitled' }])}
        onKeyDown={(event) => (event.key === 'Enter' || event.key === 'Escape') && event.currentTarget.blur()}
      />
    </div>
  )
}

function StepButton(props: { readonly name: 'undo' | 'redo'; readonly words: string; readonly step: string | undefined; readonly run: () => void }): JSX.Element {
  return (
    <button type="button" class="verb step" aria-label={props.words} disabled={props.step === undefined} title={props.step === undefined ? props.words : `${props.words}: ${props.step}`} onClick={() => props.run()}>
      <Icon name={props.name} />
    </button>
  )
}
