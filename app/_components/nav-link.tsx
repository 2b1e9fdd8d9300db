'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';

/** A link of the header that knows whether its page is the one shown. */
export function NavLink({ href, children }: { href: string; children: ReactNode }) {
  const path = usePathname();
  const current = href === '/' ? path === '/' || path === '/plan' : path === href || path.startsWith(`${href}/`);
  return (
    <Link href={href} prefetch={false} aria-current={current ? 'page' : undefined}>
      {children}
    </Link>
  );
}
