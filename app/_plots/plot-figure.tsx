import type { ReactNode } from 'react';

type PlotFigureProps = {
  /** What the drawing shows, in a sentence: for whoever does not see it, and for whoever would rather read. */
  summary: string;
  children: ReactNode;
};

/** A drawing with its summary in words above it. */
export function PlotFigure({ summary, children }: PlotFigureProps) {
  return (
    <figure className="plot">
      <figcaption>{summary}</figcaption>
      {children}
    </figure>
  );
}
