import Link from 'next/link';

type BreadcrumbsProps = {
  /** The pages above this one, from the top. */
  above: readonly { href: string; label: string }[];
  here: string;
};

/** Where this page stands, and the ways up from it. */
export function Breadcrumbs({ above, here }: BreadcrumbsProps) {
  return (
    <nav aria-label="Breadcrumb" className="crumbs">
      <ol>
        {above.map(({ href, label }) => (
          <li key={href}>
            <Link href={href} prefetch={false}>
              {label}
            </Link>
          </li>
        ))}
        <li aria-current="page">{here}</li>
      </ol>
    </nav>
  );
}
