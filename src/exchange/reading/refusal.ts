/** A file that is not read. Thrown inside reading only; its message is for the user. */
export class Refusal extends Error {
  override readonly name = 'Refusal'
}

/** What can be read, as it ends a message. */
export const ACCEPTED = 'Accepted: spreadsheet files (.xlsx, .xlsm, .ods) without a password, and text files (.csv, .tsv).'

export const damaged = (what: string): Refusal => new Refusal(`The file is damaged: ${what}. Get it anew from where it comes from, or save it again in the program that wrote it. ${ACCEPTED}`)

export const tooLarge = (what: string, accepted: string): Refusal => new Refusal(`The file is too large to be read safely: ${what}; accepted: ${accepted}. Leave out what is not needed, and save it again.`)

/** 12 345 678 bytes as "12.3 MB". */
export const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`
