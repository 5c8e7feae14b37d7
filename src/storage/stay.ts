const ASKED = 'lowside-asked-to-stay'

/** Asks the browser, once ever, not to evict what is kept. It may say no, so nothing relies on the answer. */
export async function askToStay(): Promise<void> {
  try {
    if (localStorage.getItem(ASKED) !== null) return
    localStorage.setItem(ASKED, 'yes')
    await navigator.storage.persist()
  } catch {
    // Where even asking is refused, the saved state says what is kept and what is not.
  }
}
