import Link from 'next/link';

/** The reminder that stands once on every page of counted figures. */
export function Volunteered() {
  return (
    <p className="soft small volunteered">
      Counted from accepted cases. Cases are volunteered, not sampled, and a symptom that nobody wrote down is not absent.
      Brackets are 90% intervals.{' '}
      <Link href="/method" prefetch={false}>
        How it is counted
      </Link>
    </p>
  );
}
