import type { ReactNode } from 'react';
import { CautionIcon, NoteIcon } from './icons';

/** A plain remark, or a warning that the reader should heed; told apart by icon and word as well as colour. */
export function Note({ kind, children }: { kind: 'remark' | 'warning'; children: ReactNode }) {
  return (
    <div className={kind === 'warning' ? 'note note-warning' : 'note'}>
      {kind === 'warning' ? <CautionIcon size={20} /> : <NoteIcon size={20} />}
      <p>
        {kind === 'warning' ? <strong>Mind this. </strong> : null}
        {children}
      </p>
    </div>
  );
}
