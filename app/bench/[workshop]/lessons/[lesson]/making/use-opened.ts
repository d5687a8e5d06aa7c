import { type ToggleEvent, useState } from 'react';

/**
 * For details that open by themselves when there is cause. They are closed by
 * nobody but the person: a cause that goes away while she reads or types
 * leaves them as they are.
 */
export function useOpened(hasCause: boolean) {
  const [open, setOpen] = useState(hasCause);
  const [had, setHad] = useState(hasCause);
  if (had !== hasCause) {
    setHad(hasCause);
    if (hasCause) setOpen(true);
  }
  return {
    open,
    onToggle: (event: ToggleEvent<HTMLDetailsElement>) => setOpen(event.currentTarget.open),
  };
}
