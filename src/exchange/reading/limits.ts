/**
 * What a file may be at most before it is refused. The file's own statements are checked first, and then what comes out is counted, since
 * statements may lie. For size: an inventory of 10 000 vessels that Lowside exported with its workings has 16 MB, 174 MB of XML in nine
 * sheets (measured), and 76 MB in the largest of its parts.
 */

const MB = 1_000_000

/** Bytes of a file: four times that export; more than a mailbox takes. */
export const MAX_FILE_BYTES = 64 * MB

/** Parts in a package: 256 sheets with notes, drawings and pictures have some thousand. */
export const MAX_PARTS = 10_000

/** Bytes of one part when expanded, and of all: six times that export. It goes through in pieces, so what is at stake is time: some 30 s. */
export const MAX_PART_BYTES = 512 * MB
export const MAX_EXPANDED_BYTES = 1_024 * MB

/** Expanded to packed size. XML of sheets comes to 10 to 30, of a sheet of all the same rows to about 150; deflate's utmost, and so a bomb's, is 1032. */
export const MAX_RATIO = 300
/** Below this size any ratio is harmless. */
export const RATIO_FROM_BYTES = 4 * MB

/** Elements in one another: a sheet has 6, a text in a drawing some 20. */
export const MAX_XML_DEPTH = 128

/** Characters of one tag with its attributes: a formula of 32 767 characters may have six for one. */
export const MAX_TAG = 400_000

/** Cells that hold something, of all sheets: that export has 2.4 million, and each takes about 250 bytes of memory with its texts (measured). */
export const MAX_READ_CELLS = 5_000_000

/** Characters of all texts, formulas and notes together: what fits into memory beside the cells. */
export const MAX_READ_CHARACTERS = 400_000_000

/** Sheets: a full workbook's 256, and its workings. */
export const MAX_READ_SHEETS = 1_024

/** Cell formats, and styles of any kind: other programs stop at 65 490. */
export const MAX_STYLES = 100_000

/** Remarks, each of which is a line for someone to read. */
export const MAX_REMARKS = 200

/** Time for one file in the app: that export takes 12 s in Node, and 52 s in a browser on two cores that eight others were at work on (measured). */
export const MAX_READING_SECONDS = 300
