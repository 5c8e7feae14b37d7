import type { FileContents } from '../reading/contents.ts'

/** What a number format shows of a day number: a day, a time of the day, both, or a time that has gone by. */
export type DateKind = 'date' | 'time' | 'date and time' | 'duration'

/**
 * How a file counts days. xlsx: from 1900-01-01 as 1 with a 29 February 1900 that never was, or from 1904-01-01 as 0
 * (ECMA-376, part 1, 18.17.4.1). ods: from 1899-12-30 as 0 (OpenDocument 1.3, part 3, 19.629), which is the same from 1900-03-01 on.
 */
export type DateSystem = 'xlsx 1900' | 'xlsx 1904' | 'ods'

export const dateSystemOf = ({ kind, dateSystem }: FileContents): DateSystem => (kind === 'ods' ? 'ods' : dateSystem === 1904 ? 'xlsx 1904' : 'xlsx 1900')

/** What a format code (ECMA-376, part 1, 18.8.31) shows, if it shows a day or a time. Only its first part is looked at, for positive numbers. */
export function dateKind(format: string | undefined): DateKind | undefined {
  if (format === undefined) return undefined
  const known = kinds.get(format)
  if (known !== undefined) return known ?? undefined
  const found = readKind(format)
  if (kinds.size < FORMATS_KEPT) kinds.set(format, found ?? null)
  return found
}

/** A column repeats its format in every cell. */
const kinds = new Map<string, DateKind | null>()
const FORMATS_KEPT = 1000

function readKind(format: string): DateKind | undefined {
  const plain = firstPart(format)
  if (/\[(?:h+|m+|s+)\]/i.test(plain)) return 'duration'
  const letters = plain.replace(/\[[^\]]*\]/g, '').replace(/general/gi, '').replace(/AM\/PM|A\/P/gi, 'h')
  // The 0, # and ? of numbers come with dates only as parts of a second.
  if (!/[dmyhs]/i.test(letters) || /[#?]|0(?!0*$)|E[+-]/i.test(letters.replace(/s\.?0+/gi, 's'))) return undefined
  const hasDay = /[dy]/i.test(letters) || /m/i.test(letters.replace(/h+[^dmy]*m+|m+[^dmyh]*s+/gi, ''))
  const hasTime = /[hs]/i.test(letters)
  return hasDay && hasTime ? 'date and time' : hasTime ? 'time' : 'date'
}

/** Without quoted words, escaped characters, padding, and what comes after the first semicolon. */
export const firstPart = (format: string): string => (format.replace(/"[^"]*"|\\.|_.|\*./g, '').split(';')[0] ?? '')

/**
 * A day number as text after ISO 8601: `2006-02-01`, `10:05:54`, `1910-02-03T10:05:54`, for a duration `PT30H15M`. Seconds are rounded to
 * whole ones. Undefined where the file's system has no such day: before its first one, or after 9999.
 */
export function dateText(serial: number, kind: DateKind, system: DateSystem): string | undefined {
  const seconds = Math.round(serial * DAY_SECONDS)
  if (!Number.isFinite(serial) || Math.abs(seconds) > MOST_SECONDS) return undefined
  if (kind === 'duration') return durationText(seconds)
  const day = Math.floor(seconds / DAY_SECONDS)
  const time = timeText(seconds - day * DAY_SECONDS)
  if (kind === 'time' && day === 0) return time
  const date = dayText(day, system)
  if (date === undefined) return undefined
  return kind === 'date' && time === '00:00:00' ? date : `${date}T${time}`
}

const DAY_SECONDS = 86_400
const MOST_SECONDS = 3_000_000 * DAY_SECONDS
const DAY_MS = 1000 * DAY_SECONDS

const two = (part: number): string => String(part).padStart(2, '0')

const timeText = (seconds: number): string => `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`

function durationText(seconds: number): string {
  const size = Math.abs(seconds)
  const parts = [[Math.floor(size / 3600), 'H'], [Math.floor(size / 60) % 60, 'M'], [size % 60, 'S']] as const
  return `${seconds < 0 ? '-' : ''}PT${parts.map(([part, letter]) => (part === 0 ? '' : `${part}${letter}`)).join('') || '0S'}`
}

/** 29 February 1900 in the numbers of xlsx: a day that the calendar has not, and that all later day numbers count. */
const NO_SUCH_DAY = 60

function dayText(day: number, system: DateSystem): string | undefined {
  if (system === 'xlsx 1900' && day === NO_SUCH_DAY) return '1900-02-29'
  if (day < (system === 'xlsx 1900' ? 1 : system === 'xlsx 1904' ? 0 : ODS_FIRST)) return undefined
  const zero = system === 'xlsx 1904' ? Date.UTC(1904, 0, 1) : system === 'xlsx 1900' && day < NO_SUCH_DAY ? Date.UTC(1899, 11, 31) : Date.UTC(1899, 11, 30)
  const date = new Date(zero + day * DAY_MS)
  const year = date.getUTCFullYear()
  if (year < 1 || year > 9999) return undefined
  return `${String(year).padStart(4, '0')}-${two(date.getUTCMonth() + 1)}-${two(date.getUTCDate())}`
}

/** 0001-01-01 */
const ODS_FIRST = -693_593
