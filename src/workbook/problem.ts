/** An edit or a command that cannot be done; the message says what, where and what is accepted, and may be shown as it is. */
export class WorkbookProblem extends Error {
  override readonly name = 'WorkbookProblem'
}
