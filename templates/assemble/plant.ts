import type { Workbook } from '../../src/workbook/document.ts'
import { withAccepted } from './accepted.ts'
import type { Demo } from './demo-inputs.ts'
import { joinTemplates } from './join.ts'
import { applyLinks, type Linked } from './link.ts'
import { LINKS } from './links.ts'
import type { NamedTemplate } from './order.ts'
import { PLANT_INPUTS } from './plant-inputs.ts'
import { withCases } from './typed-cases.ts'
import { withInputs } from './typed-inputs.ts'

const TITLE = 'Plant'
const PURPOSE = 'The whole low side in one workbook: basis, zones, drums, circulation, feed, accumulators, relief, charge, each linked to the next.'

/** The plant made of those templates that there are, in the order given. @throws WorkbookProblem where they do not fit together. */
export function assemblePlant(templates: readonly NamedTemplate[]): Linked {
  const { workbook, waiting } = applyLinks(joinTemplates(templates, TITLE, PURPOSE), LINKS)
  return { workbook: withInputs(workbook, PLANT_INPUTS), waiting }
}

/** The plant with a demo's inputs, cases, what is compared and what is accepted. @throws WorkbookProblem where the plant has no such cell. */
export const demoOf = (plant: Workbook, { title, purpose, inputs, cases, compared, accepted }: Demo): Workbook =>
  withAccepted(withCases({ ...withInputs(plant, inputs), title, purpose }, cases, compared), accepted)
