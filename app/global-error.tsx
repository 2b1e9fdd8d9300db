'use client';

/** Shown when not even the frame of the pages can be drawn; it stands alone, without their styles. */
export default function GlobalError() {
  return (
    <html lang="en-GB">
      <body style={{ font: '18px/1.5 system-ui, sans-serif', margin: '3rem auto', maxWidth: '34rem', padding: '0 1rem' }}>
        <title>Second Bench</title>
        <h1>Second Bench cannot be shown</h1>
        <p>Load the page again. If it fails again, look at the program's log on the machine that serves it.</p>
      </body>
    </html>
  );
}
