'use client';

import Link, { useLinkStatus } from 'next/link';
import type { ReactNode } from 'react';
import { Counting } from './counting';

type AddressLinkProps = {
  href: string;
  children: ReactNode;
  className?: string;
  /** Whether the page goes back to its top, or to the address's anchor. */
  scroll?: boolean;
  label?: string;
  current?: boolean;
};

function LinkCounting() {
  const { pending } = useLinkStatus();
  return <Counting shown={pending} />;
}

/**
 * A link that changes the address without loading the page anew where scripts run, and is a plain link where
 * they do not. Never fetched ahead: a page holds dozens, and each one is a look-up.
 */
export function AddressLink({ href, children, className, scroll = false, label, current }: AddressLinkProps) {
  return (
    <Link
      href={href}
      prefetch={false}
      scroll={scroll}
      className={className}
      aria-label={label}
      aria-current={current ? 'true' : undefined}
    >
      {children}
      <LinkCounting />
    </Link>
  );
}
