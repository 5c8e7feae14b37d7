import { Graph } from '../../../src/calc/graph.ts'
import type { TemplateMatch } from '../../../src/review/template-match.ts'
import { Survey } from '../../../src/review/survey.ts'
import type { Finding, FindingKind } from '../../../src/review/finding.ts'
import { findFindings } from '../../../src/review/find-findings.ts'
import { findingPlace } from '../../../src/review/finding-words.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { workbookOf, type Put } from '../workbook-of.ts'

/** A calculated workbook as findings look at it. */
export const surveyOfWorkbook = (workbook: Workbook, template?: TemplateMatch): Survey => new Survey(workbook, new Graph(workbook).allAreas(), template)

/** The same of sheets, each with its cells by address: `{ Duty: { A1: ['Load', 'label'], B1: 42, C1: ['TR', 'unit'] } }`. */
export const surveyOf = (sheets: Readonly<Record<string, Readonly<Record<string, Put>>>>, names: Readonly<Record<string, string>> = {}): Survey =>
  surveyOfWorkbook(workbookOf(sheets, names))

/** What one kind finds, in the order of lists. */
export const findOf = (kind: FindingKind, survey: Survey): Finding[] => findFindings(survey, undefined, [kind])

/** Where it finds something: "Duty!C5", "Duty!C5:C9". */
export const placesOf = (kind: FindingKind, survey: Survey): string[] => findOf(kind, survey).map(findingPlace)
