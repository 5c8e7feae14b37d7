import type { Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { writeWorkbook } from '../workbook/file.ts'
import { restate } from '../workbook/restate.ts'
import type { UnitSystem } from '../workbook/unit-pairs.ts'
import { readArguments } from './arguments.ts'
import { FINE, REFUSED, type ExitCode, type Io } from './io.ts'
import { tabbed } from './print-value.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { templateCalled, templateNames } from './templates.ts'
import { WORKBOOK_ENDING, writeTo } from './workbook-file.ts'

const SYSTEMS: Readonly<Record<string, UnitSystem>> = { us: 'US', si: 'SI' }

const OPTIONS = {
  output: { type: 'string', short: 'o' },
  units: { type: 'string' },
  list: { type: 'boolean' },
  force: { type: 'boolean' },
} as const

/** A workbook from a template. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  if (args.includes('--list')) return list(args, io)
  const { values, positionals: [name = ''] } = readArguments(args, OPTIONS, ['TEMPLATE'])
  const system = values.units === undefined ? undefined : systemOf(values.units)
  const { output } = values
  if (output === undefined) throw new BadUsage('-o FILE missing')
  if (!output.endsWith(WORKBOOK_ENDING)) throw new Refusal(`"${output}": a workbook is written to a file that ends in ${WORKBOOK_ENDING}`)
  const template = await openTemplate(name, io)
  const workbook = system === undefined ? template : applyEdits(template, restate(template, system)).workbook
  await writeTo(output, writeWorkbook(workbook), values.force !== true, io)
  return FINE
}

/** A name and its purpose a line; a template that cannot be read does not hide the others. */
async function list(args: readonly string[], io: Io): Promise<ExitCode> {
  readArguments(args, OPTIONS, [])
  let code: ExitCode = FINE
  for (const name of await templateNames(io)) {
    try {
      io.out(tabbed([name, (await openTemplate(name, io)).purpose]))
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
      io.err(`template ${error.message}`)
      code = REFUSED
    }
  }
  return code
}

function systemOf(text: string): UnitSystem {
  const system = Object.hasOwn(SYSTEMS, text.toLowerCase()) ? SYSTEMS[text.toLowerCase()] : undefined
  if (system === undefined) throw new BadUsage(`--units ${text}: accepted are ${Object.keys(SYSTEMS).join(' and ')}`)
  return system
}

async function openTemplate(name: string, io: Io): Promise<Workbook> {
  const names = await templateNames(io)
  if (!names.includes(name)) throw new Refusal(`there is no template "${name}"; there are: ${names.join(', ') || 'none'}`)
  return templateCalled(name, io)
}
