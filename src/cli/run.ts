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
  calc: { usage: 'calc FILE [--case NAME | --cases] [--set "Sheet!C5=120"]… [--get "Sheet!C20"]…', does: 'recalculates and prints address, value and unit, in the case of that name or side by side in all cases; a number may be set in another unit than the cell’s, "=120 kW"', load: () => import('./calc.ts') },
  sweep: { usage: 'sweep FILE --vary "Sheet!C5=10:100:10" [--vary "Sheet!C6=1,2,5"] --get "Sheet!C20"… [--points N] [--set "Sheet!C7=40 °F"]…', does: 'varies one or two inputs and prints a table as CSV; says where a check turns', load: () => import('./sweep.ts') },
  solve: { usage: 'solve FILE --target "Sheet!C20=36" --by "Sheet!C5" [--within 10:200] [--set "Sheet!C7=40 °F"]…', does: 'looks for the input that brings a result to a target, or with "=met" to where a check is just met', load: () => import('./solve.ts') },
  check: { usage: 'check FILE [--case NAME] [--kind NAME]… [--accepted] [--json]', does: 'lists what there is to look at before one signs: cells with errors, checks not met, formulas overwritten and more, one a line with severity, place and reason; ends with 1 if an error or a warning is open, remarks alone do not count; --accepted lists those too that were accepted with a note, --kind only those of a kind', load: () => import('./check.ts') },
  why: { usage: 'why FILE "Sheet!C20"… [--case NAME] [--rows] [-o OUT.html [--hand [--blind]]]', does: 'tells how results come about, step by step from the inputs, with values, units and sources; with --rows ranges row by row; with -o as a report to sign, with --hand as a sheet to compute each result on by hand, with --blind without the values, which stand on a page of their own', load: () => import('./why.ts') },
  compare: { usage: 'compare BEFORE NOW [--get "Sheet!C20"]… [--case NAME] [--json] [-o OUT.html]  |  compare FILE --template …', does: 'tells how two workbooks differ, a difference a line with its kind, place and what was and is there: sheets, rows and columns that came and went, inputs, formulas, units, notes, names, cases; then what that does to results and checks, or to the cells of --get; with --template against the template that the workbook came from; with -o as a report to sign; ends with 1 where anything differs', load: () => import('./compare.ts') },
  export: { usage: 'export FILE [--case NAME] -o OUT.xlsx|OUT.ods|OUT.csv|OUT.html', does: 'writes a file for spreadsheet programs; a folder OUT.csv with the values, a file a sheet; or the calculation report as one file to read and print', load: () => import('./export.ts') },
  import: { usage: 'import FILE -o OUT.lowside.json [--sheet NAME]… [--delimiter ";"] [--decimal ","] [--encoding NAME] [--into WORKBOOK] [--accept inputs|all|none] [--force]  |  import FILE --into WORKBOOK --list "Charge" [--mapping NAME|FILE.json] [--sheet NAME] -o OUT.lowside.json [--skip-bad]', does: 'makes a workbook of the sheets of a spreadsheet file (.xlsx, .ods) or a text file (.csv, .tsv, .txt), or puts them into one; what is not as in the file is told on standard error, and ends with 1 if something was kept as text, left out or computed otherwise; a file that Lowside exported becomes the workbook it was, with the inputs that were changed in it (--accept: all changes, or none); with --list, appends the rows of the file to a list of the workbook: problems row by row on standard error, and 1 if rows were left out', load: () => import('./import.ts') },
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
