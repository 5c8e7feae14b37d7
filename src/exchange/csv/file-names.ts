/** Names that a system keeps for devices, whatever their ending. */
const DEVICES = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])$/i

/**
 * Names of files for names of sheets, without an ending: letters, digits and a few signs that every system takes, no two alike where
 * capitals make no difference.
 */
export function fileNamesOf(sheets: readonly string[]): readonly string[] {
  const taken = new Set<string>()
  return sheets.map((sheet) => {
    const safe = sheet.normalize('NFC').replace(/[^\p{L}\p{N} ._-]+/gu, ' ').replace(/\s+/g, ' ').replace(/^[. ]+|[. ]+$/g, '') || 'Sheet'
    // A device is meant by the part before the first point.
    const wanted = DEVICES.test(safe.split('.')[0] ?? '') ? `Sheet ${safe}` : safe
    let name = wanted
    for (let number = 2; taken.has(folded(name)); number++) name = `${wanted} ${number}`
    taken.add(folded(name))
    return name
  })
}

/** Systems that do not tell capitals apart do not agree on every letter: none is told apart here whose capital is the same. */
const folded = (name: string): string => name.toUpperCase().toLowerCase()
