/** Why a command cannot be done, in one line for standard error; exit code 2. */
export class Refusal extends Error {
  override readonly name: string = 'Refusal'
}

/** The arguments are not what the command takes: its usage is shown after the reason. */
export class BadUsage extends Refusal {
  override readonly name = 'BadUsage'
}
