import Link from 'next/link';
import { SlashKey } from './slash-key';

/** The standing words on safety and licence, and the setting for the one key that the pages listen to. */
export function SiteFooter() {
  return (
    <footer className="site-footer">
      <p>
        Shared experience, not a certified procedure. Follow your local codes, and leave mains-side and picture-tube work to
        qualified people.{' '}
        <Link href="/safety" prefetch={false}>
          Safety
        </Link>
      </p>
      <p>
        Casebook data: CC BY 4.0. Program: MIT.{' '}
        <Link href="/log" prefetch={false}>
          Log of decisions
        </Link>
      </p>
      <SlashKey />
    </footer>
  );
}
