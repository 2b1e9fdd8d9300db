/**
 * For what somebody waits on: it is tried at once and fails at once without a connection. Left to itself the library
 * would hold it back until there is one, and the form could not say so.
 */
export const EVEN_OFFLINE = { networkMode: 'always' } as const;
