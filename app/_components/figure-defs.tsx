/** Hatching that the figures of a page share; it must be on the page once, and drawn, not hidden by `display: none`. */
export function FigureDefs() {
  return (
    <svg className="figure-defs" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className="hatch-line" width="3" height="7" />
        </pattern>
      </defs>
    </svg>
  );
}
