/** A workbook that comes with Lowside; its file is fetched when it is asked for. */
export interface OwnWorkbook {
  readonly title: string
  readonly purpose: string
  /** @throws Error with words for the user if the file cannot be had */
  file(): Promise<File>
}

const TITLES = import.meta.glob<string>('../../../{templates,demo-data}/*.lowside.json', { import: 'title', eager: true })
const PURPOSES = import.meta.glob<string>('../../../{templates,demo-data}/*.lowside.json', { import: 'purpose', eager: true })
const ADDRESSES = import.meta.glob<string>('../../../{templates,demo-data}/*.lowside.json', { query: '?url&no-inline', import: 'default', eager: true })

const own = Object.entries(ADDRESSES).map(([path, address]) => ({
  path,
  workbook: {
    title: TITLES[path] ?? '',
    purpose: PURPOSES[path] ?? '',
    async file() {
      const answer = await fetch(address).catch(() => undefined)
      if (!answer?.ok) throw new Error(`“${TITLES[path]}” could not be loaded. Is Lowside still running?`)
      return new File([await answer.blob()], `${TITLES[path]}.lowside.json`)
    },
  } satisfies OwnWorkbook,
}))

/** The demo; undefined if there is none. */
export const demo: OwnWorkbook | undefined = own.find(({ path }) => path.includes('/demo-data/'))?.workbook

/** The templates in the order of their titles. */
export const templates: readonly OwnWorkbook[] = own
  .filter(({ path }) => path.includes('/templates/'))
  .map(({ workbook }) => workbook)
  .toSorted((one, other) => one.title.localeCompare(other.title))
