'use client';

import Link from 'next/link';

type SimilarRowProps = {
  href: string;
  score: string;
  /** Beginning of its text, or what stands for it. */
  title: string;
  /** Its device and month. */
  told: string;
  /** What makes it near, what it shares and what speaks against it; empty where there is nothing. */
  near: string;
  shares: string;
  against: string;
  /** What it was, and how it ended. */
  end: string;
};

/** One similar case, in words. */
export function SimilarRow({ href, score, title, told, near, shares, against, end }: SimilarRowProps) {
  return (
    <li className="row case-row">
      <span className="case-score">{score}</span>
      <div>
        <Link href={href} prefetch={false}>
          {title}
        </Link>
        <p className="case-told">{told}</p>
        <Told name="Near" words={near} />
        <Told name="Shares" words={shares} />
        <Told name="Against" against words={against} />
      </div>
      <p className="case-end">{end}</p>
    </li>
  );
}

function Told({ name, words, against = false }: { name: string; words: string; against?: boolean }) {
  if (words === '') return null;
  return (
    <p className={against ? 'case-told case-against' : 'case-told'}>
      <strong>{name}:</strong> {words}
    </p>
  );
}
