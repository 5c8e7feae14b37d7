import { sheetNameProblem } from './sheet-name.ts'

/** Names for sheets that are added: as wanted, with a number after it where another sheet has that name. */
export function newSheetNames(taken: readonly string[]): (wanted: string) => string {
  const all = [...taken]
  return (wanted) => {
    let name = wanted
    for (let number = 2; sheetNameProblem(name, all) !== undefined; number++) name = `${wanted} ${number}`
    all.push(name)
    return name
  }
}
