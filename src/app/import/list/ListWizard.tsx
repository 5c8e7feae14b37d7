import { createMemo, createResource, createSignal, For, Show, untrack, type JSX } from 'solid-js'
import type { FileContents, ReadSheet } from '../../../exchange/reading/contents.ts'
import type { WorkbookList } from '../../../exchange/lists/list.ts'
import { sitePressureFormula } from '../../../exchange/lists/site-pressure.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { useSession } from '../../state/session.ts'
import { appendToList } from './append-to-list.ts'
import { KeptMappings } from './KeptMappings.tsx'
import { createListWizard, listsByFit, type ListWizardState } from './list-wizard-state.ts'
import { counted } from '../../parts/counted.ts'
import { MappingTable } from './MappingTable.tsx'
import { RowPreview } from './RowPreview.tsx'
import { SourceRows } from './SourceRows.tsx'
import './ListWizard.css'

interface Props {
  readonly contents: FileContents
  readonly sheetName: string
  readonly fileName: string
  readonly onBack: () => void
  readonly onClose: () => void
}

/** Rows of someone's file go into a list of the workbook: which list, which columns in which units, what comes of it, and what is wrong, all at once. */
export function ListWizard(props: Props): JSX.Element {
  const session = useSession()
  const sheet = () => props.contents.sheets.find(({ name }) => name === props.sheetName)
  const title = () => `Rows into a list: ${props.fileName}${props.contents.sheets.length > 1 ? `, ${props.sheetName}` : ''}`
  // Keeping a mapping changes the workbook, but none of its lists: what has been chosen here stays.
  const found = createMemo(() => {
    const from = sheet()
    const [first, ...others] = from ? listsByFit(untrack(session.document.workbook), from) : []
    return from && first ? { sheet: from, lists: [first, ...others] as const } : undefined
  })
  const [isWorkedOn, setIsWorkedOn] = createSignal(false)
  const [isWarned, setIsWarned] = createSignal(false)
  const mayClose = () => {
    if (!isWorkedOn() || isWarned()) return true
    setIsWarned(true)
    return false
  }
  /** What was in focus before belonged to the dialog of the import, which is gone. */
  const close = () => {
    props.onClose()
    if (document.activeElement === document.body) document.querySelector<HTMLElement>('[role=grid]')?.focus()
  }
  return (
    <Dialog title={title()} class="list-wizard-dialog" mayClose={mayClose} onClose={close}>
      <Show when={found()} keyed fallback={<NoList onBack={props.onBack} />}>
        {(one) => <Wizard {...props} sheet={one.sheet} lists={one.lists} isWarned={isWarned()} onWork={() => setIsWorkedOn(true)} />}
      </Show>
    </Dialog>
  )
}

function NoList(props: { readonly onBack: () => void }): JSX.Element {
  return (
    <>
      <p>No sheet of this workbook has a list to append to. A list has headings side by side, perhaps units below them, and at least one row of inputs, such as the sheet Charge of the charge inventory.</p>
      <div class="dialog-verbs"><button type="button" class="plain-button" autofocus onClick={() => props.onBack()}>Back</button></div>
    </>
  )
}

function Wizard(props: Props & { readonly sheet: ReadSheet; readonly lists: readonly [WorkbookList, ...WorkbookList[]]; readonly isWarned: boolean; readonly onWork: () => void }): JSX.Element {
  const session = useSession()
  const [sitePa] = createResource(async () => {
    const formula = sitePressureFormula(session.document.workbook())
    if (formula === undefined) return undefined
    const value = await session.recalculation.ask((service) => service.evaluate(formula, session.sheetName()))
    return typeof value === 'number' ? value : undefined
  })
  // The dialog is about one file and one workbook from beginning to end.
  const { contents, sheet, lists } = props
  const state = createListWizard({ workbook: session.document.workbook, contents, sheet, lists, sitePa: () => sitePa.latest })
  const append = () => {
    const [list, rows] = [state.list(), state.taken()]
    props.onClose()
    void appendToList(session, list, rows)
  }
  return (
    <form class="list-wizard" onSubmit={(event) => event.preventDefault()} onChange={() => props.onWork()}>
      <Choices state={state} sheet={sheet} />
      <MappingTable state={state} />
      <div class="list-wizard-right">
        <SourceRows state={state} sheet={sheet} />
        <RowPreview state={state} />
      </div>
      <Foot state={state} append={append} onBack={props.onBack} isWarned={props.isWarned} />
    </form>
  )
}

function Choices(props: { readonly state: ListWizardState; readonly sheet: ReadSheet }): JSX.Element {
  const rows = () => Array.from({ length: Math.min(HEADING_ROWS, props.sheet.rows.length) }, (_, row) => row)
  return (
    <div class="list-choices">
      <label>Append to
        <select autofocus value={props.state.list().name} onChange={(event) => props.state.chooseList(event.currentTarget.value)}>
          <For each={props.state.lists}>{({ name }) => <option value={name}>{name}</option>}</For>
        </select>
      </label>
      <label>Headings of the file
        <select value={String(props.state.source().headingRow ?? '')} onChange={(event) => props.state.chooseHeadingRow(event.currentTarget.value === '' ? null : Number(event.currentTarget.value))}>
          <option value="">none</option>
          <For each={rows()}>{(row) => <option value={String(row)}>in row {row + 1}</option>}</For>
        </select>
      </label>
      <KeptMappings state={props.state} />
    </div>
  )
}

/** Further down nobody has headings. */
const HEADING_ROWS = 60

function Foot(props: { readonly state: ListWizardState; readonly append: () => void; readonly onBack: () => void; readonly isWarned: boolean }): JSX.Element {
  const session = useSession()
  const count = () => props.state.taken().length
  const hindrance = () => {
    const { state } = props
    const tag = state.list().columns.find(({ isTag }) => isTag)
    if (session.document.refusal() !== undefined) return session.document.refusal()
    if (tag && !state.mapping().columns.has(tag.column)) return `Choose the column of the file for ${tag.heading}`
    if (state.working()) return 'The rows are being worked out'
    if (state.bad().length > 0 && !state.skipsBad()) return `${counted(state.bad().length, 'row')} with problems: mend ${state.bad().length === 1 ? 'it' : 'them'}, or leave ${state.bad().length === 1 ? 'it' : 'them'} out`
    return count() === 0 ? 'There is no row to append' : undefined
  }
  const isHindered = createMemo(() => hindrance() !== undefined)
  const [touched, setTouched] = createSignal(false)
  const press = () => {
    setTouched(true)
    if (!isHindered()) props.append()
  }
  const leftOut = () => props.state.rows().length - count()
  const summary = () => `${counted(props.state.rows().length, 'row')} in the file${leftOut() > 0 ? `, ${leftOut()} left out` : ''}`
  return (
    <div class="list-foot">
      <button type="button" class="main-button" aria-disabled={isHindered()} aria-describedby="list-hindrance" onClick={press}>
        Append {counted(count(), 'row')}
      </button>
      <button type="button" class="plain-button" onClick={() => props.onBack()}>Back</button>
      <p id="list-hindrance" role="status" classList={{ 'list-hindrance': true, pressed: touched() && isHindered() }}>
        {props.isWarned ? 'Escape once more puts all this away, with what was chosen and mended' : (hindrance() ?? summary())}
      </p>
    </div>
  )
}
