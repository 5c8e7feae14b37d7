/** Where Lowside is served: this machine only, and always the same, since the browser keeps its store by address. */
export const ADDRESS = { host: '127.0.0.1', port: 7717 } as const
