'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import type { ReactNode } from 'react';

type NavLinkProps = {
  href: string;
  children: ReactNode;
  /** Other addresses that it stands for. */
  also?: readonly string[];
};

/** A link of the header that knows whether its page is the one shown. */
export function NavLink({ href, children, also = [] }: NavLinkProps) {
  const path = usePathname();
  const isUnder = (top: string) => path === top || path.startsWith(`${top}/`);
  const current = href === '/' ? path === '/' || path === '/plan' : [href, ...also].some(isUnder);
  return (
    <Link href={href} prefetch={false} aria-current={current ? 'page' : undefined}>
      {children}
    </Link>
  );
}
