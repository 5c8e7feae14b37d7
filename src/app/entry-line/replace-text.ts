/**
 * Changes what differs in a text field that has the focus. Done as an insertion, so that the field's own undo goes on
 * over it; the call is deprecated, but nothing else keeps that undo.
 */
export function replaceText(field: HTMLTextAreaElement, text: string): void {
  const before = field.value
  let start = 0
  while (start < before.length && start < text.length && before[start] === text[start]) start++
  let same = 0
  while (same < before.length - start && same < text.length - start && before.at(-1 - same) === text.at(-1 - same)) same++
  field.setSelectionRange(start, before.length - same)
  const inserted = text.slice(start, text.length - same)
  document.execCommand(inserted === '' ? 'delete' : 'insertText', false, inserted)
  if (field.value !== text) field.value = text
}
