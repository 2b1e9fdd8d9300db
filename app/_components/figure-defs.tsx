/**
 * Hatching and the shapes of the icons, however many are drawn of them; it must be on the page once, and drawn, not hidden by
 * `display: none`.
 */
export function FigureDefs() {
  return (
    <svg className="figure-defs" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <symbol id="icon-caution" viewBox="0 0 18 18">
          <path d="M9 1.6 17 16.4H1Z" strokeLinejoin="round" />
          <path d="M9 6.4v4.8M9 13v1.5" />
        </symbol>
        <symbol id="icon-note" viewBox="0 0 18 18">
          <path d="M2 2h14v14H2Z" />
          <path d="M9 7.8v5M9 4.7v1.6" />
        </symbol>
        <symbol id="icon-remove" viewBox="0 0 18 18">
          <path d="m3.5 3.5 11 11M14.5 3.5l-11 11" />
        </symbol>
        <symbol id="icon-flip" viewBox="0 0 18 18">
          <path d="M1.5 6h13M11 2.5 14.5 6M16.5 12h-13M7 15.5 3.5 12" />
        </symbol>
        <symbol id="icon-add" viewBox="0 0 18 18">
          <path d="M9 2v14M2 9h14" />
        </symbol>
        <symbol id="icon-menu" viewBox="0 0 18 18">
          <path d="m4 6.5 5 5.5 5-5.5" />
        </symbol>
        <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className="hatch-line" width="3" height="7" />
        </pattern>
      </defs>
    </svg>
  );
}
