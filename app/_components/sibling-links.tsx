'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';

type SiblingLinksProps = {
  /** What the pages have in common. */
  name: string;
  pages: readonly { href: string; label: string }[];
};

/** Links between pages that belong together; the one that is shown is marked. */
export function SiblingLinks({ name, pages }: SiblingLinksProps) {
  const path = usePathname();
  return (
    <nav aria-label={name} className="sibling-links">
      {pages.map(({ href, label }) => (
        <Link key={href} href={href} prefetch={false} aria-current={path === href ? 'page' : undefined}>
          {label}
        </Link>
      ))}
    </nav>
  );
}
