/** Name of the session's cookie; it is `Secure` wherever the request came over TLS. */
export const SESSION_COOKIE = 'second-bench.session_token';
