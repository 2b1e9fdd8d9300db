/** The strip that says that an answer is on its way; it shows only where that takes more than a moment. */
export function Counting({ shown }: { shown: boolean }) {
  return shown ? <span className="counting">Counting the cases…</span> : null;
}
