import type { PinVerdict } from '../../../../shared/domain/readings/judge-part';

/** What a verdict is called; the mark differs by shape, too. */
export const VERDICT_WORDS: Record<PinVerdict, string> = { usual: 'usual', unusual: 'unusual', 'not-enough': 'not enough readings' };

/** A full circle for usual, a triangle with a stroke for unusual, a broken ring for not enough readings. */
export function VerdictMark({ verdict }: { verdict: PinVerdict }) {
  return (
    <svg className={`pin-mark pin-mark-${verdict}`} width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      {verdict === 'usual' ? <circle cx="8" cy="8" r="5.5" fill="currentColor" /> : null}
      {verdict === 'unusual' ? (
        <>
          <path d="M8 1.5 15 14.5H1Z" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="round" />
          <path d="M8 6v4M8 11.5v1.5" stroke="currentColor" strokeWidth="2" />
        </>
      ) : null}
      {verdict === 'not-enough' ? (
        <circle cx="8" cy="8" r="5.5" fill="none" stroke="currentColor" strokeWidth="2" strokeDasharray="3 3" />
      ) : null}
    </svg>
  );
}
