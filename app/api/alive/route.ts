/** Whether the process answers at all; it looks at nothing else. */
export function GET(): Response {
  return new Response('alive\n', { headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' } });
}
