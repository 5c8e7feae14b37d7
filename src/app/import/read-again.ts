import type { Dialect } from '../../exchange/reading/contents.ts'
import { startReading } from '../files/reading-client.ts'
import type { ImportSource } from './importing.ts'

let under: { stop(): void } | undefined

/** Reads a text file once more, as the user says that it is to be understood; undefined if a later reading has taken its place. */
export async function readAgain({ fileName, file }: ImportSource, dialect: Partial<Dialect>): Promise<ImportSource | { readonly problem: string } | undefined> {
  if (file === undefined) return undefined
  under?.stop()
  const reading = startReading(file, () => undefined, { dialect })
  under = reading
  const contents = await reading.result
  if (under !== reading) return undefined
  return 'problem' in contents ? contents : { fileName, contents, file }
}
