import type { Workbook } from '../workbook/document.ts'
import type { ReportSettings } from '../workbook/report-settings.ts'
import { unitsInUse } from '../workbook/units-in-use.ts'

/** What the workbook says of its report; where it says nothing, no names, and the paper that goes with its units. */
export const reportSettingsOf = (workbook: Workbook): ReportSettings =>
  workbook.report ?? { preparedBy: '', checkedBy: '', paper: unitsInUse(workbook) === 'SI' ? 'A4' : 'Letter' }
