import { findNodeAtLocation, parseTree, printParseErrorCode, visit, type JSONPath } from 'jsonc-parser'

/** A place in a text; both count from 1. */
export interface TextPlace {
  readonly line: number
  readonly column: number
}

export interface JsonProblem {
  readonly message: string
  readonly at: TextPlace
  /** The object that has the problem; left out where the text is no JSON. */
  readonly path?: JSONPath
}

/** A workbook file nests to 5; far deeper text would exhaust the parser's stack. */
export const MAX_JSON_DEPTH = 32

/** Members that every object has: as a key they would replace them. */
export const PROTOTYPE_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype'])

const SYNTAX_WORDS: Readonly<Record<string, string>> = {
  InvalidSymbol: 'a word that is not true, false or null',
  InvalidNumberFormat: 'a malformed number',
  PropertyNameExpected: 'a key in "…" is missing',
  ValueExpected: 'a value is missing',
  ColonExpected: '":" is missing',
  CommaExpected: '"," is missing',
  CloseBraceExpected: '"}" is missing',
  CloseBracketExpected: '"]" is missing',
  EndOfFileExpected: 'something follows the end',
  InvalidCommentToken: 'a comment, which JSON has not',
  UnexpectedEndOfString: 'a text without its closing "',
  UnexpectedEndOfNumber: 'a malformed number',
  InvalidUnicode: 'a malformed \\u escape',
  InvalidEscapeCharacter: 'an unknown escape',
  InvalidCharacter: 'a control character in a text',
}

/** What JSON.parse does not tell: the place of each fault of syntax, keys written twice, keys that no object may have, too deep nesting. */
export function jsonProblems(text: string, atMost: number): { readonly broken: boolean; readonly problems: readonly JsonProblem[] } {
  const problems: JsonProblem[] = []
  const lineOfKey: Map<string, number>[] = []
  let broken = false
  let depth = 0

  const enter = (line: number, character: number) => {
    depth++
    if (depth <= MAX_JSON_DEPTH) return
    broken = true
    problems.push({ message: `nested deeper than ${MAX_JSON_DEPTH}`, at: place(line, character) })
    throw STOP
  }
  try {
    visit(
      text,
      {
        onObjectBegin(_offset, _length, line, character) {
          enter(line, character)
          lineOfKey.push(new Map())
        },
        onObjectEnd() {
          depth--
          lineOfKey.pop()
        },
        onArrayBegin: (_offset, _length, line, character) => enter(line, character),
        onArrayEnd() {
          depth--
        },
        onObjectProperty(key, _offset, _length, line, character, path) {
          const keys = lineOfKey.at(-1)
          const first = keys?.get(key)
          keys?.set(key, first ?? line)
          if (first !== undefined) problems.push({ message: `${JSON.stringify(key)} is written twice, first in line ${first + 1}`, at: place(line, character), path: [...path(), key] })
          if (PROTOTYPE_KEYS.has(key)) problems.push({ message: `the key ${JSON.stringify(key)} is not accepted`, at: place(line, character), path: path() })
          if (problems.length >= atMost) throw STOP
        },
        onError(error, _offset, _length, line, character) {
          broken = true
          const word = printParseErrorCode(error)
          problems.push({ message: `the file is no valid JSON: ${SYNTAX_WORDS[word] ?? word}`, at: place(line, character) })
          // What follows a first fault of syntax is mostly its echo.
          throw STOP
        },
      },
      { disallowComments: true },
    )
  } catch (error) {
    if (error !== STOP) throw error
  }
  return { broken, problems }
}

/** Finds where the value at a path, or the nearest thing around it, stands in the text. */
export function placeFinder(text: string): (path: readonly (string | number)[]) => TextPlace {
  const tree = parseTree(text)
  return (path) => {
    for (let length = path.length; tree && length > 0; length--) {
      const node = findNodeAtLocation(tree, path.slice(0, length))
      if (node) return placeAt(text, node.offset)
    }
    return { line: 1, column: 1 }
  }
}

/** Leaves the visitor, which has no other way out. */
const STOP = new Error('stop')

function place(line: number, character: number): TextPlace {
  return { line: line + 1, column: character + 1 }
}

function placeAt(text: string, offset: number): TextPlace {
  const before = text.slice(0, offset)
  const lineStart = before.lastIndexOf('\n') + 1
  return { line: before.split('\n').length, column: offset - lineStart + 1 }
}
