import type { ReactNode } from 'react';
import { NavLink } from '../_components/nav-link';
import '../_styles/plots.css';
import '../_styles/browse.css';

/** The rooms of the casebook, over every page of it. */
export default function CasebookLayout({ children }: { children: ReactNode }) {
  return (
    <>
      <nav aria-label="Casebook" className="rooms no-print">
        <NavLink href="/cases">Cases</NavLink>
        <NavLink href="/symptoms">Symptoms</NavLink>
        <NavLink href="/devices">Devices</NavLink>
        <NavLink href="/parts">Parts</NavLink>
        <NavLink href="/fixes">Fixes</NavLink>
        <NavLink href="/data">Data</NavLink>
      </nav>
      {children}
    </>
  );
}
