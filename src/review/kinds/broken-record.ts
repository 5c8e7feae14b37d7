import { NO_REVIEW } from '../../workbook/review-record.ts'
import { brokenWords, verifyRecord } from '../../workbook/review/verify-record.ts'
import type { FindingKind, Found } from '../finding.ts'

/** Where the record of reviews is not what was written. */
export const brokenRecord: FindingKind = {
  kind: 'broken-record',
  heading: 'The record of reviews does not fit',
  about: 'Each line of the record holds the hash of the one before, so that one that was changed, put in or taken out shows; marks and accepted findings must be as it tells. Lines taken off the end are seen only against a copy of the last hash.',
  find({ workbook: { review = NO_REVIEW, sheets } }) {
    const { brokenAt, unrecorded } = verifyRecord(review)
    const found = (reason: string, key: string): Found => ({ severity: 'error', sheet: sheets[0]?.name ?? '', area: { top: 0, bottom: 0, left: 0, right: 0 }, reason, key })
    return [
      ...(brokenAt === undefined ? [] : [found(brokenWords(brokenAt, review.record), `line ${brokenAt + 1}: ${review.record[brokenAt]?.hash ?? ''}`)]),
      ...unrecorded.map((words) => found(`${words.charAt(0).toUpperCase()}${words.slice(1)}.`, words.replaceAll(/\$?[A-Z]{1,3}\$?\d+/g, '#'))),
    ]
  },
}
