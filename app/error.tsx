'use client';

import { Trouble } from './_components/trouble';

/** Shown when a page fails in a way that it did not see coming. What went wrong is in the server's log, not here. */
export default function ErrorPage() {
  return (
    <>
      <h1>This page failed</h1>
      <Trouble kind="failed" again="" />
    </>
  );
}
