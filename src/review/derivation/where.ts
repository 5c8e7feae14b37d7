/** Something that a formula works out on the way: what, and what it comes to; or only a remark. */
export interface Where {
  readonly what: string
  readonly comes?: string
}

export const whereWords = ({ what, comes }: Where): string => (comes === undefined ? what : `${what} = ${comes}`)
