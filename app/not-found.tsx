import type { Metadata } from 'next';
import Link from 'next/link';

export const metadata: Metadata = { title: 'Not found' };

export default function NotFound() {
  return (
    <>
      <h1>Nothing under this address</h1>
      <p className="lead">The address may be mistyped, or the case was withdrawn.</p>
      <p className="onward">
        <Link href="/" prefetch={false} className="press">
          Look up
        </Link>
        <Link href="/cases" prefetch={false}>
          Cases
        </Link>
      </p>
    </>
  );
}
