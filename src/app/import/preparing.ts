import { createSlices } from '../../storage/next-task.ts'
import type { FileContents } from '../../exchange/reading/contents.ts'
import { importingSheets, type Imported } from '../../exchange/import/import-sheets.ts'
import type { Workbook } from '../../workbook/document.ts'

/**
 * A file's sheets made into sheets of a workbook in slices of half a frame, so that the screen goes on.
 * @param isWanted once false, the work ends without a result
 */
export async function prepareImport(
  contents: FileContents, sheets: ReadonlySet<number>, target: Workbook | undefined, report: (share: number) => void, isWanted: () => boolean,
): Promise<Imported | undefined> {
  const slice = createSlices()
  const steps = importingSheets(contents, { sheets }, target)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    report(step.value)
    await slice()
    if (!isWanted()) return undefined
  }
}
