import type { HandedOver } from '../../calc/messages.ts'
import { Survey } from '../survey.ts'
import { derivationFile, derivationReport } from './derivation-report.ts'
import { derive } from './derive.ts'
import { handFile, handPages } from './hand-pages.ts'
import { handSheet } from './hand-sheet.ts'
import type { DerivationAnswer, DerivationQuestion } from './messages.ts'

/** What is asked of a workbook with its values. @throws WorkbookProblem where there is nothing to compute */
export function answerDerivation(question: DerivationQuestion, { workbook, areas }: Pick<HandedOver, 'workbook' | 'areas'>): DerivationAnswer {
  const survey = new Survey(workbook, areas)
  if (question.kind === 'derivation') return { derivation: derive(survey, question.results) }
  if (question.kind === 'report') {
    const input = { ...question, derivation: derive(survey, question.results) }
    return { pages: { report: derivationReport(input), file: derivationFile(input) } }
  }
  const sheets = question.results.map((place) => handSheet(survey, place))
  const input = { ...question, sheets }
  return { pages: { report: handPages(input), file: handFile(input) } }
}
