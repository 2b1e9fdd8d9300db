import Link from 'next/link';
import { NoteIcon } from './icons';
import { NavLink } from './nav-link';
import { SiteSearch } from './site-search';

/** Pages that belong to the casebook, by the first part of their address. */
const ROOMS = ['/cases', '/symptoms', '/devices', '/parts', '/fixes', '/data'];

type SiteHeaderProps = {
  demo: boolean;
  /** Who is signed in; null for nobody. */
  name: string | null;
  /** Whether they look at what others send in. */
  mayReview: boolean;
};

/** Name, ways to the other pages and to the account, and in the demo the notice that all of it is invented. */
export function SiteHeader({ demo, name, mayReview }: SiteHeaderProps) {
  return (
    <header className="site-header">
      <div className="site-bar">
        <Link href="/" className="site-name" prefetch={false}>
          Second Bench
        </Link>
        <nav aria-label="Pages">
          <NavLink href="/">Look up</NavLink>
          <NavLink href="/bench">Bench</NavLink>
          <NavLink href="/post">Post a case</NavLink>
          <NavLink href="/casebook" also={ROOMS}>
            Casebook
          </NavLink>
          <NavLink href="/method">Method</NavLink>
        </nav>
        <SiteSearch />
        <nav aria-label="Account" className="site-account">
          {mayReview ? <NavLink href="/review">Review</NavLink> : null}
          {name === null ? <NavLink href="/sign-in">Sign in</NavLink> : <NavLink href="/account">{name}</NavLink>}
        </nav>
      </div>
      {demo ? (
        <p className="demo-notice">
          <NoteIcon /> Demo of the Marrow Lane Workshops: every machine and case is invented.
        </p>
      ) : null}
    </header>
  );
}
