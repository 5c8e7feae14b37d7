import { parseArgs, type ParseArgsConfig } from 'node:util'
import { BadUsage } from './refusal.ts'

type Options = NonNullable<ParseArgsConfig['options']>

/**
 * A command's options, and its other arguments, of which there must be as many as `named`; more only where `more` says so.
 * @throws BadUsage
 */
export function readArguments<const O extends Options>(args: readonly string[], options: O, named: readonly string[], more = false) {
  const { values, positionals } = parsed(args, options)
  if (positionals.length < named.length) throw new BadUsage(`${named.slice(positionals.length).join(' and ')} missing`)
  const [extra] = positionals.slice(named.length)
  if (extra !== undefined && !more) throw new BadUsage(`"${extra}" is one argument too many`)
  return { values, positionals }
}

function parsed<const O extends Options>(args: readonly string[], options: O) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true })
  } catch (error) {
    // Node's messages go on with advice for programmers after the first sentence.
    const message = error instanceof Error ? error.message : String(error)
    throw new BadUsage(message.split(/\.\s|\n/)[0] ?? message)
  }
}
