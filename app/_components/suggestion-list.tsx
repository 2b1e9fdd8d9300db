'use client';

import { useEffect } from 'react';

type SuggestionListProps = {
  /** Id of the box that the list belongs to; the list is `<id>-list`, its options are `<id>-0`, `<id>-1`, … */
  id: string;
  label: string;
  options: readonly { key: string; label: string; meaning?: string }[];
  /** Position of the marked option, -1 for none. It is scrolled into sight. */
  active: number;
  onChoose: (position: number) => void;
};

/** The list of an editable combobox, after the ARIA pattern: the box keeps the focus and handles the keys. */
export function SuggestionList({ id, label, options, active, onChoose }: SuggestionListProps) {
  useEffect(() => {
    document.getElementById(`${id}-${active}`)?.scrollIntoView({ block: 'nearest' });
  }, [id, active]);
  return (
    <div className="suggestions" id={`${id}-list`} role="listbox" aria-label={label} hidden={options.length === 0}>
      {options.map((option, position) => (
        // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are handled at the box, which keeps the focus
        // biome-ignore lint/a11y/useFocusableInteractive: the focus stays at the box
        <div
          key={option.key}
          id={`${id}-${position}`}
          role="option"
          aria-selected={position === active}
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => onChoose(position)}
        >
          {option.meaning === undefined ? (
            option.label
          ) : (
            <span>
              {option.label} <span className="small">{option.meaning}</span>
            </span>
          )}
        </div>
      ))}
    </div>
  );
}
