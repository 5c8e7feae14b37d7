import { WorkbookProblem } from '../workbook/problem.ts'
import { FINE, REFUSED, type Command, type ExitCode, type Io } from './io.ts'
import { BadUsage, Refusal } from './refusal.ts'

interface Listed {
  readonly usage: string
  readonly does: string
  /** Loaded on use: the calculation engine takes longer to load than most commands take to run. */
  readonly load: () => Promise<Command>
}

const COMMANDS: ReadonlyMap<string, Listed> = new Map(Object.entries({
  eval: { usage: 'eval FORMULA…  |  eval -', does: 'prints the value of each formula; "-" reads them from standard input', load: () => import('./eval.ts') },
  new: { usage: 'new TEMPLATE [--units us|si] -o FILE [--force]  |  new --list', does: 'makes a workbook from a template', load: () => import('./new.ts') },
  calc: { usage: 'calc FILE [--set "Sheet!C5=120"]… [--get "Sheet!C20"]…', does: 'recalculates and prints address, value and unit', load: () => import('./calc.ts') },
  check: { usage: 'check FILE [--json]', does: 'lists checks that are not met and cells with errors', load: () => import('./check.ts') },
  export: { usage: 'export FILE -o OUT.xlsx|OUT.html', does: 'writes a file for spreadsheet programs, or the calculation report as one file to read and print', load: () => import('./export.ts') },
}))

/** Runs a command line; whatever goes wrong ends in one line on standard error and an exit code. */
export async function run([name, ...args]: readonly string[], io: Io): Promise<ExitCode> {
  if (name === 'help' || name === '--help' || name === '-h') return help(io)
  const command = name === undefined ? undefined : COMMANDS.get(name)
  if (command === undefined) {
    const reason = name === undefined ? 'no command given' : `there is no command "${name}"`
    io.err(`lowside: ${reason}; there are: ${[...COMMANDS.keys()].join(', ')}, help`)
    return REFUSED
  }
  if (args[0] === '--help' || args[0] === '-h') {
    io.out(`lowside ${command.usage}\n${command.does}`)
    return FINE
  }
  try {
    const { run: runCommand } = await command.load()
    return await runCommand(args, io)
  } catch (error) {
    io.err(`lowside ${name}: ${reasonOf(error, command)}`)
    return REFUSED
  }
}

function help(io: Io): ExitCode {
  io.out('Lowside on the command line: npm run -s lowside -- COMMAND …\n')
  for (const { usage, does } of COMMANDS.values()) io.out(`  ${usage}\n      ${does}`)
  io.out('\nExit codes: 0 fine; 1 an error value, a finding or a failed check; 2 bad usage or a bad file.')
  return FINE
}

function reasonOf(error: unknown, { usage }: Listed): string {
  if (error instanceof BadUsage) return `${error.message}; usage: ${usage}`
  if (error instanceof Refusal || error instanceof WorkbookProblem) return error.message
  return `failed: ${(error instanceof Error ? error.message : String(error)).split('\n')[0]}`
}
