import { type KeyboardEvent, useState } from 'react';

/**
 * Whether the list of an editable combobox is open, which option is marked, and what the keys do to both, after the ARIA
 * pattern: arrows open and move, Enter takes the marked option, Escape closes.
 *
 * @param most options that there are, shown or not.
 */
export function useOptionKeys(most: number) {
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(-1);
  /** Handles a key at the box. `shown` are the options in sight, `take` is told of the one that Enter takes. */
  const onKey = <T>(event: KeyboardEvent, shown: readonly T[], take: (option: T) => void) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      setOpen(true);
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setActive((now) => Math.max(-1, Math.min(most - 1, now + step)));
    } else if (event.key === 'Enter' && shown[active]) {
      event.preventDefault();
      take(shown[active]);
    } else if (event.key === 'Escape') {
      setOpen(false);
      setActive(-1);
    }
  };
  /** Something was typed: the list opens, and nothing is marked. */
  const onTyped = () => {
    setOpen(true);
    setActive(-1);
  };
  return { open, setOpen, active, onKey, onTyped };
}
