import { createMemo, createResource, createSignal, For, Show, type JSX } from 'solid-js'
import { MANY_ROWS, printedRows } from '../../report/print-size.ts'
import { reportSettingsOf } from '../../pages/settings-of.ts'
import { PAPERS, sameReportSettings, type Paper, type ReportSettings } from '../../workbook/report-settings.ts'
import { counted } from '../parts/counted.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { WorkStopped } from '../state/long-work.ts'
import { useSession } from '../state/session.ts'
import './PrintDialog.css'

/** By whom, on which paper, and which sheets; then the browser's own printing. */
export function PrintDialog(props: { readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const workbook = session.document.workbook
  const before = workbook().report
  const proposed = reportSettingsOf(workbook())
  const [preparedBy, setPreparedBy] = createSignal(proposed.preparedBy)
  const [checkedBy, setCheckedBy] = createSignal(proposed.checkedBy)
  const [paper, setPaper] = createSignal<Paper>(proposed.paper)
  const [withReview, setWithReview] = createSignal(true)
  const [leftOut, setLeftOut] = createSignal<ReadonlySet<string>>(new Set())

  // Loaded while the dialog is filled in: most work begins without.
  const loading = import('./print-report.ts').catch(() => undefined)

  const chosen = createMemo(() => workbook().sheets.filter(({ name }) => !leftOut().has(name)))
  const rows = createMemo(() => printedRows(chosen()))
  const [estimate] = createResource(() => import('../../report/page-estimate.ts').catch(() => undefined))
  const pages = createMemo(() => estimate()?.estimatedPages(workbook(), { sheets: chosen(), paper: paper(), withReview: withReview() }))
  const sizeWords = () => `${counted(rows(), 'row')}${pages() === undefined ? '' : `, about ${counted(pages() ?? 0, 'page')}`}`
  const leaveOut = (names: readonly string[], isLeftOut: boolean) => {
    setLeftOut((some) => {
      const others = [...some].filter((name) => !names.includes(name))
      return new Set(isLeftOut ? [...others, ...names] : others)
    })
  }
  const allNames = () => workbook().sheets.map(({ name }) => name)

  const print = async (event: SubmitEvent) => {
    event.preventDefault()
    const settings: ReportSettings = { preparedBy: preparedBy().trim(), checkedBy: checkedBy().trim(), paper: paper() }
    const sheets = new Set(chosen().map(({ name }) => name))
    // Where another tab writes the workbook, it is printed all the same.
    if (!sameReportSettings(settings, before) && session.document.refusal() === undefined) session.act('Report', () => [{ kind: 'report', report: settings }])
    props.onClose()
    try {
      const module = await loading
      if (module === undefined) throw new Error('what makes it cannot be loaded, as Lowside is served no more. Start it again where it was started, then print again; nothing of the workbook is lost.')
      await module.printReport(session, { settings, sheets, withReview: withReview() })
    } catch (problem) {
      if (problem instanceof WorkStopped) return session.setNotice({ tone: 'done', text: 'Stopped: nothing was printed' })
      session.setNotice({ tone: 'problem', text: `The report could not be made: ${problem instanceof Error ? problem.message : String(problem)}` })
    }
  }

  return (
    <Dialog title="Print the calculation report" onClose={props.onClose}>
      <form class="print-form" onSubmit={(event) => void print(event)}>
        <label class="print-field">Prepared by<input autofocus value={preparedBy()} onInput={(event) => setPreparedBy(event.currentTarget.value)} /></label>
        <label class="print-field">Checked by<input value={checkedBy()} onInput={(event) => setCheckedBy(event.currentTarget.value)} /></label>
        <p class="print-hint">Kept in the workbook. A name left empty is room to write on; beside each there is room to sign.</p>
        <fieldset class="print-papers">
          <legend>Paper</legend>
          <For each={PAPERS}>{(one) => <label><input type="radio" name="paper" checked={paper() === one} onChange={() => setPaper(one)} />{one}</label>}</For>
        </fieldset>
        <label class="print-review">
          <input type="checkbox" checked={withReview()} onChange={(event) => setWithReview(event.currentTarget.checked)} />
          With the review: findings, open and accepted
        </label>
        <fieldset class="print-sheets">
          <legend>Sheets</legend>
          <div class="print-sheet-list">
            <For each={workbook().sheets}>
              {(sheet) => (
                <label>
                  <input type="checkbox" checked={!leftOut().has(sheet.name)} onChange={(event) => leaveOut([sheet.name], !event.currentTarget.checked)} />
                  <span>{sheet.name}</span>
                  <small>{counted(printedRows([sheet]), 'row')}</small>
                </label>
              )}
            </For>
          </div>
          <div class="dialog-verbs">
            <button type="button" class="plain-button" disabled={leftOut().size === 0} onClick={() => setLeftOut(new Set<string>())}>All sheets</button>
            <button type="button" class="plain-button" disabled={chosen().length === 0} onClick={() => leaveOut(allNames(), true)}>None</button>
          </div>
        </fieldset>
        <p role="status">{sizeWords()}</p>
        <Show when={rows() > MANY_ROWS}>
          <p class="print-warning" role="alert">
            That is long for paper: {sizeWords()}, and making them takes a while. Untick the sheets that need not be printed; the report names them, with the state of their checks.
          </p>
        </Show>
        <div class="dialog-verbs">
          <button type="submit" class="main-button" disabled={chosen().length === 0}>Print</button>
          <button type="button" class="plain-button" onClick={() => props.onClose()}>Cancel</button>
        </div>
      </form>
    </Dialog>
  )
}
