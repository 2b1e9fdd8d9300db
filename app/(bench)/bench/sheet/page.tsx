import type { Metadata } from 'next';
import { SheetApp } from './_parts/sheet-app';
import '../bench.css';
import './sheet.css';

export const metadata: Metadata = { title: 'Bench sheet', robots: { index: false } };

export default function SheetPage() {
  return (
    <div className="sheet-page">
      <noscript>
        <p className="note">The bench sheet needs scripts: the log is kept in this browser.</p>
      </noscript>
      <SheetApp />
    </div>
  );
}
