/** Resolves once the next frame has been drawn: for what may come after what the user is waiting for. */
export const frameDrawn = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)))
