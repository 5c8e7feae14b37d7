import { FILE_VERSION } from './file-version.ts'

/** From a version to the function that makes the next version's file of it. */
export type Migrations = ReadonlyMap<number, (file: object) => object>

/** Version 1 is the first. */
export const MIGRATIONS: Migrations = new Map()

/** A parsed file, of whatever shape, as the present version writes it; or why it cannot be. */
export function migrate(file: unknown, migrations: Migrations): { readonly file: object } | { readonly problem: string } {
  if (typeof file !== 'object' || file === null || !('lowside' in file)) {
    return { problem: 'this is no workbook of Lowside; accepted: a file that begins with {"lowside": 1' }
  }
  const version = file.lowside
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return { problem: `lowside: ${JSON.stringify(version)} is no version; accepted: a whole number up to ${FILE_VERSION}` }
  }
  if (version > FILE_VERSION) {
    return { problem: `the file was made by a newer Lowside (file version ${version}); this one reads versions up to ${FILE_VERSION}, and leaves the file as it is` }
  }
  let current: object = file
  for (let step = version; step < FILE_VERSION; step++) {
    const next = migrations.get(step)
    if (!next) return { problem: `file version ${version} cannot be read: nothing is known of version ${step}; accepted: ${FILE_VERSION}` }
    current = next(current)
  }
  return { file: current }
}
